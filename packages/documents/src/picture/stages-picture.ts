import type { LiftStage } from '@castwright/engine/lift'
import type { Point } from '@castwright/engine/panel'
import { LEAST_SCREEN_TEXT } from './layout.ts'
import type { Frame, Picture, Shape } from './picture.ts'
import { centredText, wordLines } from './words.ts'

export type StageSketch = 'hoisted' | 'turned' | 'hanging' | 'lying' | 'carried' | 'leaning'

export interface StagesPictureInput {
  readonly stages: readonly {
    readonly sketch: StageSketch
    readonly name: string
    /** Under the name. Example: `tension 82 % of its limit`. */
    readonly words: string
  }[]
  readonly frame: Frame
}

/** What a stage looks like from the side. */
export function sketchOf({
  id,
  angle,
  supports,
  how,
}: Pick<LiftStage, 'id' | 'angle' | 'supports' | 'how'>): StageSketch {
  const onEdge = supports.some(({ kind }) => kind === 'edge')
  const held = supports.some(({ kind }) => kind === 'insert')
  if (id === 'store' || id === 'travel') {
    if (angle > 45) return 'leaning'
    return id === 'travel' ? 'carried' : 'lying'
  }
  if (id === 'hang') return 'hanging'
  return id === 'turn' || (onEdge && held) || how.startsWith('pitched') ? 'turned' : 'hoisted'
}

/** Least width of a cell, in sizes of the text. */
const CELL = 10
const LINE = 1.35

/** The stages of handling side by side, each as a sketch from the side, not to scale, with its name and a line of words. */
export function stagesPicture({ stages, frame }: StagesPictureInput): Picture {
  const text = frame.paper === undefined ? Math.max(LEAST_SCREEN_TEXT, frame.text) : frame.text
  const columns = Math.max(1, Math.min(stages.length, Math.floor(frame.width / (CELL * text))))
  const wide = frame.width / columns
  const shapes: Shape[] = []
  let y = 0
  for (let first = 0; first < stages.length; first += columns) {
    const row = stages.slice(first, first + columns)
    const size = Math.min(wide * 0.8, text * 8)
    let lowest = y + size
    row.forEach(({ sketch, name, words }, i) => {
      const middle = wide * (i + 0.5)
      shapes.push(...SKETCHES[sketch].map((part) => placed(part, [middle - size / 2, y], size)))
      let at = y + size + text * 0.9
      for (const [line, bold] of [
        ...wordLines(name, text * BOLD, wide - text).map((one) => [one, true] as const),
        ...wordLines(words, text, wide - text).map((one) => [one, false] as const),
      ]) {
        if (line !== '')
          shapes.push(centredText({ role: 'label', text: line, size: text, x: middle, y: at, bold }))
        at += text * LINE
      }
      lowest = Math.max(lowest, at)
    })
    y = lowest + text * 0.4
  }
  return {
    width: frame.width,
    height: y,
    scale: 1,
    ratio: null,
    origin: [0, 0],
    shapes,
    title: `Stages of handling, sketched and not to scale: ${stages.map(({ name, words }) => (words === '' ? name : `${name}, ${words}`)).join('; ')}.`,
    key: [],
    notes: [],
  }
}

const BOLD = 1.03

/** Parts of a sketch in a square of side 1, y down. */
type Part =
  | { readonly role: Shape['role']; readonly points: readonly Point[]; readonly filled?: boolean }
  | { readonly hook: Point }

function placed(part: Part, [x, y]: Point, size: number): Shape {
  const at = ([u, v]: Point): Point => [x + u * size, y + v * size]
  if ('hook' in part) return { kind: 'circle', role: 'sling', at: at(part.hook), radius: size * 0.025 }
  const points = part.points.map(at)
  return part.filled === true
    ? { kind: 'polygon', role: part.role, rings: [points] }
    : { kind: 'line', role: part.role, points }
}

function slab(points: readonly Point[]): Part[] {
  return [
    { role: 'concrete', points, filled: true },
    { role: 'outline', points, filled: true },
  ]
}

function box(left: number, top: number, right: number, bottom: number): Point[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]
}

/** A bar of a length and thickness from its lower left corner, turned by degrees from level. */
function bar([x, y]: Point, length: number, thickness: number, degrees: number): Point[] {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return [
    [x, y],
    [x + length * c, y - length * s],
    [x + length * c - thickness * s, y - length * s - thickness * c],
    [x - thickness * s, y - thickness * c],
  ]
}

const GROUND: Part = {
  role: 'ground',
  points: [
    [0.02, 0.97],
    [0.98, 0.97],
  ],
}

function sling(from: Point, to: Point): Part {
  return { role: 'sling', points: [from, to] }
}

const TILTED = bar([0.14, 0.95], 0.7, 0.07, 40)
const LEANING = bar([0.5, 0.95], 0.75, 0.07, 82)

const SKETCHES: Readonly<Record<StageSketch, readonly Part[]>> = {
  hoisted: [
    GROUND,
    ...slab(box(0.1, 0.72, 0.9, 0.8)),
    sling([0.28, 0.72], [0.5, 0.2]),
    sling([0.72, 0.72], [0.5, 0.2]),
    sling([0.5, 0.2], [0.5, 0.08]),
    { hook: [0.5, 0.2] },
  ],
  turned: [
    GROUND,
    ...slab(TILTED),
    sling(TILTED[2] ?? [0, 0], [TILTED[2]?.[0] ?? 0, 0.08]),
    { hook: [TILTED[2]?.[0] ?? 0, 0.14] },
  ],
  hanging: [
    GROUND,
    ...slab(box(0.46, 0.3, 0.54, 0.9)),
    sling([0.5, 0.3], [0.5, 0.06]),
    { hook: [0.5, 0.12] },
  ],
  lying: [
    GROUND,
    ...slab(box(0.1, 0.78, 0.9, 0.86)),
    { role: 'timber', points: box(0.24, 0.86, 0.32, 0.97), filled: true },
    { role: 'timber', points: box(0.68, 0.86, 0.76, 0.97), filled: true },
  ],
  carried: [
    GROUND,
    ...slab(box(0.1, 0.58, 0.9, 0.66)),
    { role: 'timber', points: box(0.24, 0.66, 0.32, 0.74), filled: true },
    { role: 'timber', points: box(0.68, 0.66, 0.76, 0.74), filled: true },
    {
      role: 'ground',
      points: [
        [0.06, 0.74],
        [0.94, 0.74],
      ],
    },
    { role: 'unused', points: wheel(0.26), filled: true },
    { role: 'unused', points: wheel(0.74), filled: true },
  ],
  leaning: [
    GROUND,
    ...slab(LEANING),
    {
      role: 'beam',
      points: [
        [0.78, 0.97],
        [0.635, 0.24],
      ],
    },
    {
      role: 'beam',
      points: [
        [0.78, 0.97],
        [0.92, 0.97],
      ],
    },
  ],
}

function wheel(x: number): Point[] {
  return Array.from({ length: 20 }, (_, i): Point => {
    const angle = (i * Math.PI) / 10
    return [x + 0.09 * Math.cos(angle), 0.86 + 0.1 * Math.sin(angle)]
  })
}
