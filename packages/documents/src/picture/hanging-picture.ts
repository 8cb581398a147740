import type { Rigged } from '@castwright/engine/lift/rigging'
import { type Drawing, type Point, ringsOf } from '@castwright/engine/panel'
import { ceilTo } from '@castwright/engine/working'
import { fitViews, type View } from './hanging-views.ts'
import { boxAround, newLabels, setText, take } from './labels.ts'
import { type Ground, markShapes } from './marks.ts'
import { concreteOf, sizeTitle } from './panel-picture.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'
import { leftText, wordLines } from './words.ts'

export interface HangingPictureInput {
  readonly drawing: Drawing
  /** Null where the rigging is not known: the panel alone and why. */
  readonly rigged: Rigged | null
  readonly hang: 'flat' | 'row'
  /** Mark of the rigging; null where none is named. */
  readonly rigging: string | null
  readonly centre: Point
  /** Why the rigging is not known. */
  readonly unknown?: readonly string[]
  readonly frame: Frame
}

const LINE = 1.45

/**
 * A panel on its slings, to scale: from the front, and flat also from above. Angles are those of the legs in space, told in words; the
 * drawn slope is what a person in front sees.
 */
export function hangingPicture(input: HangingPictureInput): Picture {
  const { drawing, frame, hang } = input
  const text = frame.paper === undefined ? Math.max(12, frame.text) : frame.text
  const sentences = hangingWords(input)
  const words = sentences.flatMap((sentence) => wordLines(sentence, text, frame.width - text))
  const above = words.length * text * LINE + text * 0.6
  const { front, plan, width, height, scale, ratio } = fitViews({ ...input, text, above })
  const labels = newLabels({ left: 0, top: 0, right: width, bottom: height })
  take(labels, { left: 0, top: 0, right: width, bottom: above })
  const drawnFront = frontShapes(input, front, { labels, text, at: front.at })
  const drawnPlan = plan === null ? null : planShapes(input, plan, { labels, text, at: plan.at })
  return {
    width,
    height,
    scale,
    ratio,
    origin: front.at([0, 0]),
    shapes: [
      ...words.map((line, i) =>
        leftText({ role: 'load', text: line, size: text, x: text / 2, y: text * (0.5 + LINE * (i + 0.5)) }),
      ),
      ...drawnFront.shapes,
      ...(drawnPlan?.shapes ?? []),
    ],
    title: `${sizeTitle(drawing)}, hanging ${hang === 'flat' ? 'flat' : 'upright'}. ${sentences.join(' ')}`,
    key: keyOf(input),
    notes: [...drawnFront.notes, ...(drawnPlan?.notes ?? [])],
  }
}

/** What the picture says, for those who hear it too. */
export function hangingWords({ rigged, rigging, unknown = [] }: HangingPictureInput): string[] {
  if (rigged === null) {
    return [`Rigging not known${unknown[0] === undefined ? '' : `: ${unknown[0]}`}.`]
  }
  const steep = `Legs up to ${angleText(rigged.angle)} from the vertical.`
  const height =
    rigged.hookHeight === null
      ? 'Height of the hook not known: the top slings of the beam are not given.'
      : `Hook at least ${Math.ceil(rigged.hookHeight)} mm above the picks.`
  const { angle, note } = rigged.tilt
  const level =
    angle === null
      ? `${note.charAt(0).toUpperCase()}${note.slice(1)}.`
      : angle < 0.05
        ? 'Hangs level with legs of equal length.'
        : `With legs of equal length it hangs ${angleText(angle)} out of level: ${note}.`
  return [`Rigging ${rigging ?? 'not named'}. ${steep} ${height}`, level]
}

function angleText(degrees: number): string {
  return `${ceilTo(degrees, degrees < 10 ? 0.1 : 1).toFixed(degrees < 10 ? 1 : 0)}°`
}

interface Drawn {
  readonly shapes: readonly Shape[]
  readonly notes: readonly string[]
}

function frontShapes({ drawing, rigged, hang }: HangingPictureInput, view: View, ground: Ground): Drawn {
  const shapes: Shape[] = []
  const notes: string[] = []
  if (hang === 'flat') {
    const { left, right, bottom, top } = view.panel
    const ring = [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ].map((corner) => view.at(point(corner)))
    shapes.push({ kind: 'polygon', role: 'concrete', rings: [ring] })
    shapes.push({ kind: 'polygon', role: 'outline', rings: [ring] })
  } else {
    const rings = ringsOf(concreteOf(drawing)).map((ring) => ring.map((place) => view.at(view.turn(place))))
    shapes.push({ kind: 'polygon', role: 'concrete', rings }, { kind: 'polygon', role: 'outline', rings })
  }
  if (rigged === null) return { shapes, notes }
  shapes.push(...legShapes(rigged, view))
  const picks = rigged.picks.map((pick) => ({ at: view.pick(pick.at), letter: pick.mark }))
  // One leg behind another is one line in front: their letters share a place.
  const joined = new Map<string, { at: Point; letters: string[] }>()
  for (const { at, letter } of picks) {
    const key = `${Math.round(at[0])},${Math.round(at[1])}`
    const same = joined.get(key)
    if (same === undefined) joined.set(key, { at, letters: [letter] })
    else same.letters.push(letter)
  }
  const hook = view.hook === null ? null : view.at(view.hook)
  if (hook !== null) {
    shapes.push(...hookShapes(hook, ground.text))
    take(ground.labels, boxAround([hook[0], hook[1] - ground.text * 0.6], ground.text))
  }
  shapes.push(...heightShapes(rigged, view, ground))
  const marks = markShapes(
    ground,
    'insert',
    [...joined.values()].map(({ at, letters }) => ({ at, letter: letters.join(', ') })),
  )
  shapes.push(...marks.shapes)
  notes.push(...marks.notes)
  for (const { at, letters } of joined.values()) {
    const pick = rigged.picks.find(({ mark }) => mark === letters[0])
    if (pick === undefined) continue
    const most = Math.max(
      ...rigged.picks.filter(({ mark }) => letters.includes(mark)).map(({ load }) => load),
    )
    const wide = Math.max(
      ...rigged.picks.filter(({ mark }) => letters.includes(mark)).map(({ angle }) => angle),
    )
    const words = `${letters.join(', ')}: ${angleText(wide)}, ${ceilTo(most, 0.1).toFixed(1)} kN`
    const upper = view.upper(pick)
    const from = ground.at(at)
    const to = ground.at(upper ?? [at[0], view.panel.top])
    const label = { role: 'load', text: words, size: ground.text, backed: true } as const
    const set = setText(
      ground.labels,
      label,
      [0.5, 0.35, 0.65, 0.25, 0.75, 0.15].flatMap((t): Point[] => {
        const [x, y] = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]
        return [
          [x, y],
          [x - ground.text * 3, y],
          [x + ground.text * 3, y],
        ]
      }),
    )
    if (set === null) notes.push(words)
    else shapes.push(set)
  }
  return { shapes, notes }
}

function legShapes(rigged: Rigged, view: View): Shape[] {
  const legs = rigged.picks.flatMap((pick): Shape[] => {
    const upper = view.upper(pick)
    return upper === null
      ? []
      : [{ kind: 'line', role: 'sling', points: [view.at(view.pick(pick.at)), view.at(upper)] }]
  })
  const ends = view.beam
  if (ends === null) return legs
  const [a, b] = ends.map(view.at) as [Point, Point]
  const top = view.hook === null ? [] : [view.at(view.hook)]
  return [
    ...legs,
    ...top.flatMap((hook): Shape[] =>
      rigged.beam?.topAngle === null
        ? [{ kind: 'line', role: 'sling', points: [[hook[0], a[1]], hook] }]
        : [
            { kind: 'line', role: 'sling', points: [a, hook] },
            { kind: 'line', role: 'sling', points: [b, hook] },
          ],
    ),
    { kind: 'line', role: 'beam', points: [a, b] },
  ]
}

function hookShapes([x, y]: Point, text: number): Shape[] {
  const r = text * 0.32
  return [
    {
      kind: 'line',
      role: 'sling',
      points: [
        [x, y - r],
        [x, y - text * 1.3],
      ].map(point),
    },
    { kind: 'circle', role: 'sling', at: [x, y], radius: r },
  ]
}

/** Height from the picks to the hook, at the right of the view. */
function heightShapes(rigged: Rigged, view: View, { labels, text }: Ground): Shape[] {
  if (view.hook === null || rigged.hookHeight === null) return []
  const x = view.dimension
  const [low, high] = [view.at([0, view.picksAt])[1], view.at(view.hook)[1]]
  const label = {
    role: 'dimension',
    text: String(Math.ceil(rigged.hookHeight)),
    size: text,
    turn: -90,
  } as const
  const set = setText(labels, label, [[x, (low + high) / 2]])
  const tick = (y: number): Shape => ({
    kind: 'line',
    role: 'dimension',
    points: [
      [x - text * 0.25, y + text * 0.25],
      [x + text * 0.25, y - text * 0.25],
    ],
  })
  const half = set === null ? 0 : (set.box.bottom - set.box.top) / 2
  const middle = (low + high) / 2
  return [
    {
      kind: 'line',
      role: 'dimension',
      points: [
        [x, low],
        [x, middle + half],
      ].map(point),
    },
    {
      kind: 'line',
      role: 'dimension',
      points: [
        [x, middle - half],
        [x, high],
      ].map(point),
    },
    {
      kind: 'line',
      role: 'plumb',
      points: [
        [view.at(view.hook)[0], high],
        [x + text * 0.4, high],
      ].map(point),
    },
    {
      kind: 'line',
      role: 'plumb',
      points: [
        [view.at([view.panel.right, 0])[0], low],
        [x + text * 0.4, low],
      ].map(point),
    },
    tick(low),
    tick(high),
    ...(set === null ? [] : [set]),
  ]
}

function planShapes({ drawing, rigged, centre }: HangingPictureInput, view: View, ground: Ground): Drawn {
  const rings = ringsOf(concreteOf(drawing))
  const shapes: Shape[] = [
    { kind: 'polygon', role: 'concrete', rings: rings.map((ring) => ring.map(view.at)) },
    { kind: 'polygon', role: 'outline', rings: rings.map((ring) => ring.map(view.at)) },
  ]
  const [x, y] = view.at(centre)
  const reach = ground.text * 0.8
  shapes.push(
    { kind: 'circle', role: 'centre', at: [x, y], radius: ground.text * 0.5 },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x - reach, y],
        [x + reach, y],
      ].map(point),
    },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x, y - reach],
        [x, y + reach],
      ].map(point),
    },
  )
  take(ground.labels, boxAround([x, y], reach))
  if (rigged === null) return { shapes, notes: [] }
  for (const pick of rigged.picks) {
    const upper = view.upper(pick)
    if (upper !== null)
      shapes.push({ kind: 'line', role: 'sling', points: [view.at(pick.at), view.at(upper)] })
  }
  if (view.beam !== null) shapes.push({ kind: 'line', role: 'beam', points: view.beam.map(view.at) })
  const marks = markShapes(
    ground,
    'insert',
    rigged.picks.map(({ mark, at }) => ({ at, letter: mark })),
  )
  return { shapes: [...shapes, ...marks.shapes], notes: marks.notes }
}

function keyOf({ rigged, hang }: HangingPictureInput): KeyLine[] {
  if (rigged === null) return []
  const count = rigged.picks.length
  return [
    {
      role: 'sling',
      text: `legs: greatest angle from the vertical in space, greatest working load along the leg; ${rigged.counted} of ${count} count for the inserts`,
    },
    ...(rigged.beam === null
      ? []
      : [{ role: 'beam', text: `spreader of ${Math.round(rigged.beam.length)} mm` } as const]),
    ...(hang === 'flat'
      ? [{ role: 'centre', text: 'centre of gravity; the hook hangs over it' } as const]
      : []),
  ]
}

function point([x = 0, y = 0]: readonly number[]): Point {
  return [x, y]
}
