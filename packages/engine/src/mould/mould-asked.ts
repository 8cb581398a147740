import type { CodeFamily } from '../codes/family.ts'
import type { Panel } from '../panel/panel.ts'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import type { MouldPlan } from './mould-plan.ts'

const SET_UP: Source = commonPractice('set-up of a mould')
const SIZE: Source = commonPractice('size of a mould before the pour')
const BEFORE_POUR: Source = commonPractice('inspection before the pour')
const PLACE: Source = commonPractice('place of an insert before the pour')

/** Sides that are measured one by one; above this, the two overall sizes stand for all. */
const MOST_SIDES = 12
/** Openings ticked one by one; above this, one tick stands for all. */
const MOST_OPENINGS = 12

/** Largest deviation of an insert from its place, mm. */
const INSERT_PLACE = 10

/** Set-up tolerance of a length, mm; null beyond 10 m. */
export function lengthTolerance(length: number): number | null {
  return length <= 3000 ? 5 : length <= 6000 ? 6 : length <= 10_000 ? 8 : null
}

/** Set-up tolerance of the difference of diagonals by the longer side, mm; null beyond 10 m. */
export function diagonalTolerance(longSide: number): number | null {
  return longSide <= 3000 ? 6 : longSide <= 6000 ? 10 : longSide <= 10_000 ? 12 : null
}

const THICKNESS_TOLERANCE = 5

/** What is looked at and measured at step `mould`. */
export function askedAtMould(panel: Panel, props: MouldPlan['props'], form: string | null): Asked[] {
  const tick = (id: string, what: string, note?: string): Asked => ({
    id,
    step: 'mould',
    what,
    kind: 'tick',
    unit: '',
    source: SET_UP,
    ...(note === undefined ? {} : { note }),
  })
  return [
    tick('mould-clean', 'Bed and forms clean', 'No paste on faces, seams and magnets.'),
    tick('mould-oiled', 'Release agent thin and even', 'No pools; none on steel or on construction joints.'),
    ...sizes(panel),
    {
      id: 'form-height',
      step: 'mould',
      what: 'Height of the side forms above the bed',
      kind: 'number',
      unit: 'mm',
      ...around(panel.drawing.thickness, THICKNESS_TOLERANCE),
      source: SIZE,
      note: 'At least four places, the worst one.',
    },
    tick(
      'props-placed',
      props.length > 0
        ? `Side forms held at ${props.length} places as planned`
        : 'Side forms held so that they cannot move',
      form === null ? undefined : `Form ${form}.`,
    ),
    tick('joints-tight', 'Corners and joints tight'),
  ]
}

function sizes(panel: Panel): Asked[] {
  const outline = panel.drawing.outline as unknown as Ring
  const sides = edges(outline).map(([a, b]) => distance(a, b))
  const perSide = outline.length <= MOST_SIDES
  const lengths = perSide
    ? sides.map((length, i) => measured(`side:${i + 1}`, `Side ${i + 1}`, length))
    : [
        measured('overall-length', 'Overall length', panel.length),
        measured('overall-width', 'Overall width', panel.width),
      ]
  return [...lengths, ...squareness(outline, sides)]
}

function squareness(outline: Ring, sides: readonly number[]): Asked[] {
  const [a, b, c, d] = outline
  if (outline.length === 4 && a && b && c && d) {
    const longSide = Math.max(...sides)
    const limit = diagonalTolerance(longSide)
    const drawn = Math.abs(distance(a, c) - distance(b, d))
    if (drawn < 0.5) {
      return [
        {
          id: 'diagonals',
          step: 'mould',
          what: 'Difference of the diagonals',
          kind: 'number',
          unit: 'mm',
          ...(limit === null ? noLimit('Difference of the diagonals') : { low: 0, high: limit }),
          source: SIZE,
          note: 'Equal diagonals alone do not prove square: the sides count too.',
        },
      ]
    }
    return [
      measured('diagonal:1', 'Diagonal from corner 1 to 3', distance(a, c)),
      measured('diagonal:2', 'Diagonal from corner 2 to 4', distance(b, d)),
    ]
  }
  const [from, to] = farthest(outline)
  const first = outline[from] as Point
  const second = outline[to] as Point
  return [measured('diagonal:1', `Corner ${from + 1} to corner ${to + 1}, straight`, distance(first, second))]
}

/** Indices of the two corners farthest apart; the first such pair. */
function farthest(outline: Ring): [number, number] {
  let best: [number, number] = [0, 1]
  let most = -1
  for (let i = 0; i < outline.length; i += 1)
    for (let j = i + 1; j < outline.length; j += 1) {
      const apart = distance(outline[i] as Point, outline[j] as Point)
      if (apart > most) {
        most = apart
        best = [i, j]
      }
    }
  return best
}

function measured(id: string, what: string, nominal: number): Asked {
  const tolerance = lengthTolerance(nominal)
  return {
    id,
    step: 'mould',
    what,
    kind: 'number',
    unit: 'mm',
    ...(tolerance === null ? noLimit(what) : around(nominal, tolerance)),
    source: SIZE,
    note: `Drawn ${Math.round(nominal * 10) / 10} mm.`,
  }
}

function around(nominal: number, tolerance: number): { low: number; high: number } {
  return { low: nominal - tolerance, high: nominal + tolerance }
}

function noLimit(what: string): { unknown: string[] } {
  return { unknown: [`${what}: no confirmed set-up tolerance beyond 10 m`] }
}

/** What is looked at and measured at step `set`, the hold before the pour. */
export function askedAtSet(panel: Panel, family: CodeFamily): Asked[] {
  const { drawing } = panel
  const tick = (id: string, what: string, source: Source, note?: string): Asked => ({
    id,
    step: 'set',
    what,
    kind: 'tick',
    unit: '',
    source,
    ...(note === undefined ? {} : { note }),
  })
  const steel = (drawing.steel ?? []).length > 0
  return [
    ...(steel ? covers(panel, family) : []),
    ...(drawing.inserts ?? []).map(
      (insert): Asked => ({
        id: `insert:${insert.mark}`,
        step: 'set',
        what: `Insert ${insert.mark}: distance from its place`,
        kind: 'number',
        unit: 'mm',
        low: 0,
        high: INSERT_PLACE,
        source: PLACE,
        note: `Drawn at ${round(insert.at[0])}, ${round(insert.at[1])}${insert.type === undefined ? '' : `; kind ${insert.type}`}.`,
      }),
    ),
    ...((drawing.inserts ?? []).length > 0
      ? [
          tick(
            'inserts-fixed',
            'Inserts of the kind drawn, fixed, with their hanger bars',
            enteredBy('the drawing'),
          ),
        ]
      : []),
    ...openings(panel, tick),
    ...(steel ? [tick('steel-clean', 'No oil, mud or loose rust on the steel', BEFORE_POUR)] : []),
    tick('mould-empty', 'No wire ends, water or dirt in the mould', BEFORE_POUR),
  ]
}

function openings(panel: Panel, tick: (id: string, what: string, source: Source) => Asked): Asked[] {
  const drawn = panel.drawing.openings ?? []
  if (drawn.length > MOST_OPENINGS)
    return [
      tick('openings', `All ${drawn.length} openings formed at their places and held down`, BEFORE_POUR),
    ]
  return drawn.map((opening) =>
    tick(`opening:${opening.mark}`, `Opening ${opening.mark} formed at its place and held down`, BEFORE_POUR),
  )
}

const FACES = [
  ['mould', 'Cover to the mould face, least found'],
  ['top', 'Cover to the top face, least found'],
  ['edge', 'Cover to the edges, least found'],
] as const

function covers(panel: Panel, family: CodeFamily): Asked[] {
  const { cover, thickness } = panel.drawing
  return FACES.map(([face, what]): Asked => {
    const base = { id: `cover:${face}`, step: 'set', what, kind: 'number', unit: 'mm' } as const
    const drawn = cover?.[face]
    if (drawn === undefined) {
      return { ...base, unknown: [`cover.${face}: not on the drawing`], source: enteredBy('the drawing') }
    }
    const { below, source } = family.mould.coverTolerance({ thickness, cover: drawn })
    return below === null
      ? { ...base, unknown: [`cover.${face}: no confirmed tolerance`], source }
      : { ...base, low: drawn - below, source, note: `Drawn ${round(drawn)} mm.` }
  })
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
