import type { CodeFamily } from '../codes/family.ts'
import type { Panel } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import { type MouldLength, mouldSurvey } from './corner-lengths.ts'
import type { MouldPlan } from './mould-plan.ts'

const SET_UP: Source = commonPractice('set-up of a mould')
export const SIZE: Source = commonPractice('size of a mould before the pour')
const BEFORE_POUR: Source = commonPractice('inspection before the pour')
const PLACE: Source = commonPractice('place of an insert before the pour')

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

/** Why a longer side has no limit. */
export const NO_LIMIT_BEYOND = 'no confirmed set-up tolerance beyond 10 m'

/** Places round a mould at which the height of the form is measured, at least. */
export const LEAST_HEIGHTS = 4

/** What is looked at and measured at step `mould`. */
export function askedAtMould(
  panel: Panel,
  props: MouldPlan['props'],
  form: string | null,
  agents: MouldPlan['agents'] = [],
): Asked[] {
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
    tick(
      'mould-oiled',
      'Release agent thin and even',
      `No pools; none on reinforcement or construction joints.${dryingText(agents)}`,
    ),
    ...sizes(panel),
    {
      id: 'form-heights',
      step: 'mould',
      what: 'Height of the side forms above the bed',
      kind: 'readings',
      unit: 'mm',
      ...around(panel.drawing.thickness, THICKNESS_TOLERANCE),
      least: LEAST_HEIGHTS,
      source: SIZE,
      note: `At ${LEAST_HEIGHTS} places or more, in order round the mould from corner 1.`,
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

/** Example: ` Let it dry: thin film R 15 minutes.` */
function dryingText(agents: MouldPlan['agents']): string {
  const times = new Map(
    agents.flatMap(({ agent, dryingMinutes }): [string, number][] =>
      agent === null || dryingMinutes === null || dryingMinutes === 0 ? [] : [[agent, dryingMinutes]],
    ),
  )
  return times.size === 0
    ? ''
    : ` Let it dry: ${[...times].map(([agent, minutes]) => `${agent} ${minutes} minutes`).join(', ')}.`
}

/** Every length that fixes the shape; of an outline with many corners the overall sizes as well. */
function sizes(panel: Panel): Asked[] {
  const outline = panel.drawing.outline as unknown as Ring
  const { corners, lengths } = mouldSurvey(outline)
  const overall =
    corners.length === outline.length
      ? []
      : [
          measured('overall-length', 'Overall length', panel.length),
          measured('overall-width', 'Overall width', panel.width),
        ]
  return [...overall, ...lengths.map((length) => taped(length))]
}

/** A side has its own tolerance. A diagonal is judged with all lengths as one shape, which says more than its length. */
function taped({ id, what, from, to, drawn }: MouldLength): Asked {
  if (id.startsWith('side:')) {
    const asked = measured(id, what, drawn)
    return { ...asked, note: `Corner ${from + 1} to corner ${to + 1}. ${asked.note}` }
  }
  return {
    id,
    step: 'mould',
    what,
    kind: 'number',
    unit: 'mm',
    recordOnly: true,
    source: SIZE,
    note: `${drawnText(drawn)} Judged with the other lengths as one shape.`,
  }
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
    note: drawnText(nominal),
  }
}

function drawnText(length: number): string {
  return `Drawn ${round(length)} mm.`
}

function around(nominal: number, tolerance: number): { low: number; high: number } {
  return { low: nominal - tolerance, high: nominal + tolerance }
}

function noLimit(what: string): { unknown: string[] } {
  return { unknown: [`${what}: ${NO_LIMIT_BEYOND}`] }
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
