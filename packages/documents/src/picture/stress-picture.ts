import type { LiftStage, StagePeak, StageSupport, StressField } from '@castwright/engine/lift'
import { type Drawing, distanceToEdge, type Point } from '@castwright/engine/panel'
import { ceilTo } from '@castwright/engine/working'
import { boxAround, boxesMeet, type Labels, setText, take } from './labels.ts'
import { type Chains, type Layout, NARROW } from './layout.ts'
import { markShapes } from './marks.ts'
import { basePicture, concreteOf, finishPicture, shapeChains, sizeTitle } from './panel-picture.ts'
import type { Box, Frame, KeyLine, Picture, Shape } from './picture.ts'
import { insertChains } from './set-picture.ts'
import { bandRole, faceWords, legendHeight, stressLegend } from './stress-legend.ts'
import { loadText, supportLines } from './support-shapes.ts'
import { textWidth } from './text-width.ts'
import { leftText, wordLines } from './words.ts'

export interface StressPictureInput {
  /** With the inserts where they are now. */
  readonly drawing: Drawing
  readonly supports: LiftStage['supports']
  readonly peak: StagePeak | null
  /** Null where it is not known or the panel does not bend. */
  readonly field: StressField | null
  /** What the stage is. Example: `Leaves the mould, flat on 4 face inserts`. */
  readonly name: string
  /** Why the peak is not known. */
  readonly unknown?: readonly string[]
  /** Mark of the insert that is being moved. */
  readonly selected?: string | null
  readonly frame: Frame
}

/** Sizes of the text: one line of words over the picture. */
const LINE = 1.45

/** A panel in one stage of handling: tension as filled contours, what carries it with loads, and where the peak is. */
export function stressPicture(input: StressPictureInput): Picture {
  const { drawing, supports, peak, field, name, frame } = input
  const text = frame.paper === undefined ? Math.max(12, frame.text) : frame.text
  const words = wordLines(peakWords(input), text * BOLD, frame.width - text)
  const above = words.length * text * LINE + text * 0.5
  const base = basePicture({
    drawing,
    frame,
    chains: chainsFor(drawing, frame),
    halo: isNarrow(frame) ? 0 : text,
    above,
    below: legendHeight(text, field, frame.width),
  })
  const { layout } = base
  const marks = markShapes(layout, 'insert', insertMarks(supports))
  const idle = markShapes(layout, 'unused', unusedMarks(drawing, supports))
  const lines = supportLines(layout, supports)
  const leader = peak === null ? [] : leaderShapes(layout, peak, above)
  const levels = field === null ? [] : levelShapes(layout, drawing, field)
  return finishPicture({
    base,
    inside: field === null ? [] : bandShapes(layout, field),
    onTop: [
      ...lines.shapes,
      ...levels,
      ...leader,
      ...pickedShapes(layout, supports, input.selected ?? null),
      ...marks.shapes,
      ...idle.shapes,
      ...words.map((line, i) =>
        leftText({
          role: 'peak',
          text: line,
          size: text,
          x: wordsLeft(layout, peak, words),
          y: text * (0.5 + LINE * (i + 0.5)),
          bold: true,
        }),
      ),
      ...stressLegend(layout, field),
    ],
    title: `${sizeTitle(drawing)}. ${name}: ${peakWords(input)}.`,
    key: keyOf(input),
    notes: [...lines.notes, ...marks.notes, ...idle.notes],
  })
}

/** A phone has no room for chains on four sides: there the picks alone are measured. */
function chainsFor(drawing: Drawing, frame: Frame): Chains {
  const picks = insertChains(drawing)
  if (!isNarrow(frame)) return { ...shapeChains(drawing), ...picks }
  const { bottom = [], left = [] } = shapeChains({ ...drawing, openings: [] })
  return {
    bottom: [...(picks.top ?? []), ...bottom.slice(-1)],
    left: [...(picks.right ?? []), ...left.slice(-1)],
  }
}

function isNarrow({ paper, width }: Frame): boolean {
  return paper === undefined && width < NARROW
}

/** Bold letters are wider than those that `textWidth` is given for only by its reserve. */
const BOLD = 1.03

/** What the peak is, how it was found and where; never without the width that it was averaged over. */
export function peakWords({ peak, unknown = [] }: Pick<StressPictureInput, 'peak' | 'unknown'>): string {
  if (peak === null) {
    const why = unknown[0]
    return why === undefined ? 'Peak tension not known' : `Peak tension not known: ${why}`
  }
  const size = `peak ${ceilTo(peak.stress, 0.01).toFixed(2)} MPa, ${peak.face} face`
  const wide = Math.round(peak.width)
  switch (peak.of) {
    case 'pick':
      return `${size}, averaged over a strip of ${wide} mm at ${peak.mark}`
    case 'corner':
      return `${size}, averaged over ${wide > 0 ? `${wide} mm` : 'one thickness'} at a corner`
    case 'section':
      return `${size}, over the section that hangs`
    case 'plate':
      return `${size}, the panel’s own value there`
  }
}

function bandShapes(layout: Layout, field: StressField): Shape[] {
  return field.bands.flatMap(({ rings }, i): Shape[] =>
    rings.length === 0
      ? []
      : [{ kind: 'polygon', role: bandRole(i), rings: rings.map((ring) => pairs(ring).map(layout.at)) }],
  )
}

function pairs(ring: Float32Array): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0])
}

/** Each line with its tension, where there is room beside edges and marks; long lines first. */
function levelShapes(layout: Layout, drawing: Drawing, field: StressField): Shape[] {
  const region = concreteOf(drawing)
  const clear = (layout.text * 0.8) / layout.scale
  return field.bands.flatMap(({ level, rings }) => {
    const label = { role: 'level', text: String(level), size: layout.text, backed: true } as const
    const long = [...rings].sort((a, b) => b.length - a.length).slice(0, 3)
    return long.flatMap((ring) => {
      const points = pairs(ring)
      if (points.length < 4) return []
      const places = spread(points.length)
        .map((i) => points[i] as Point)
        .filter((point) => distanceToEdge(region, point) > clear)
        .map(layout.at)
      const set = setText(layout.labels, label, places)
      return set === null ? [] : [set]
    })
  })
}

/** At most sixteen indices of a ring, far apart first. */
function spread(count: number): number[] {
  const shares = [0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15]
  return [...new Set(shares.map((share) => Math.floor((share * count) / 16)))]
}

function insertMarks(supports: readonly StageSupport[]) {
  return supports
    .filter(({ kind }) => kind === 'insert')
    .map(({ mark, at, load }) => ({ at: at[0], letter: mark, beside: loadText(load) }))
}

function unusedMarks(drawing: Drawing, supports: readonly StageSupport[]) {
  const used = new Set(supports.map(({ mark }) => mark))
  return (drawing.inserts ?? [])
    .filter(({ mark }) => !used.has(mark))
    .map(({ mark, at }) => ({ at: [at[0], at[1]] as Point, letter: mark }))
}

function pickedShapes(layout: Layout, supports: readonly StageSupport[], selected: string | null): Shape[] {
  const insert = supports.find(({ mark, kind }) => kind === 'insert' && mark === selected)
  if (insert === undefined) return []
  const radius = layout.text * (0.55 + 0.25 * Math.min(3, insert.mark.length)) + 4
  return [{ kind: 'circle', role: 'picked', at: layout.at(insert.at[0]), radius }]
}

/** From the words over the picture to the peak, past the numbers where there is a way. */
function leaderShapes(layout: Layout, peak: StagePeak, above: number): Shape[] {
  const tip = layout.at(peak.at)
  const ends = [0, 1, -1, 2, -2, 4, -4, 6, -6, 9, -9].map(
    (k): Point => [
      Math.min(layout.width - layout.text, Math.max(layout.text, tip[0] + k * layout.text)),
      above - layout.text * 0.4,
    ],
  )
  const gap = peak.mark === '' ? 0 : layout.text * 1.1
  const cut = (from: Point): Point => {
    const long = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1
    const share = Math.max(0, (long - gap) / long)
    return [from[0] + share * (tip[0] - from[0]), from[1] + share * (tip[1] - from[1])]
  }
  const start = ends.find((end) => isClear(layout.labels, end, cut(end))) ?? (ends[0] as Point)
  const end = cut(start)
  const shapes: Shape[] = [{ kind: 'line', role: 'peak', points: [start, end] }]
  if (gap === 0) {
    shapes.push({ kind: 'circle', role: 'peak', at: tip, radius: 3 })
    take(layout.labels, boxAround(tip, 4))
  }
  for (const box of boxesAlong(start, end)) take(layout.labels, box)
  return shapes
}

/** Whether a line keeps clear of all that is taken below the words that it comes from. */
function isClear({ taken }: Labels, from: Point, to: Point): boolean {
  return boxesAlong(from, to)
    .slice(2)
    .every((box) => taken.every((other) => !boxesMeet(box, other)))
}

function boxesAlong(from: Point, to: Point): Box[] {
  const count = Math.max(2, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 6))
  return Array.from({ length: count + 1 }, (_, i) =>
    boxAround([from[0] + (i / count) * (to[0] - from[0]), from[1] + (i / count) * (to[1] - from[1])], 2),
  )
}

/** The words stand over the peak as far as the picture allows. */
function wordsLeft(layout: Layout, peak: StagePeak | null, words: readonly string[]): number {
  const wide = Math.max(...words.map((line) => textWidth(line, layout.text * BOLD)))
  const most = Math.max(layout.text / 2, layout.width - layout.text / 2 - wide)
  const wanted = peak === null ? layout.panel.left : layout.at(peak.at)[0] - wide / 2
  return Math.min(most, Math.max(layout.text / 2, wanted))
}

function keyOf({ supports, drawing, field }: StressPictureInput): KeyLine[] {
  const key: KeyLine[] = []
  if (field !== null) {
    key.push({
      role: 'band-3',
      text: `tension, ${faceWords(field.face)}; right at a pick or a corner the bands show no bound, the average named above counts`,
    })
  }
  if (supports.some(({ kind }) => kind === 'insert')) {
    key.push({ role: 'insert', text: 'inserts with their vertical loads, the factor of the stage in them' })
  }
  if (supports.some(({ kind }) => kind !== 'insert')) {
    key.push({ role: 'timber', text: 'supports with their loads, the factor of the stage in them' })
  }
  if (unusedMarks(drawing, supports).length > 0)
    key.push({ role: 'unused', text: 'inserts that carry nothing here' })
  return key
}
