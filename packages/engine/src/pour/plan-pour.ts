import type { CodeFamily } from '../codes/family.ts'
import type { Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import type { PlacedBar } from '../steel/steel-plan.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, enteredBy, GEOMETRY, type Source } from '../working/source.ts'
import type { Assumed, Step, Worked } from '../working/worked.ts'
import type { Mix, Yard } from '../yard/yard.ts'
import { congestedIn, tightIn } from './close-steel/in-panel.ts'
import { compact } from './compact.ts'
import { displacedBy } from './displaced.ts'
import { headsAtWork } from './heads.ts'
import { LEFT_SOURCE, LEFT_TOO_LONG } from './left-too-long.ts'
import { NO_CHOICE, type PlacingChoice } from './placing-choice.ts'
import { askedAtDelivery, askedAtFinish, askedAtPlacing } from './pour-asked.ts'
import type { CompactionPlan, PourPlan } from './pour-plan.ts'
import { orderVolume } from './quantity.ts'
import { SECONDS_SOURCE, secondsAt } from './seconds-in.ts'
import { voidReachChecks } from './void-reach.ts'

export interface PourInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** Bars where they lie, for close steel; none looked at if not given. */
  readonly placed?: readonly PlacedBar[]
  /** What of the steel is not laid out, so that close steel there is not found. */
  readonly notLaid?: readonly string[]
  /** Where the chute stands and which heads work, as the floor settled it; assumed and told so where nobody did. */
  readonly choice?: PlacingChoice
}

/** Rates that a plan of the day rests on; each is listed as assumed. */
export const POUR_RATES = {
  allowance: 0.05,
  orderStep: 0.1,
  truckBody: 6,
  /** m³/h that a gang places in flat moulds. */
  placing: 10,
  setUpPanel: 30,
  setUpOpening: 15,
  setUpInsert: 4,
  strip: 30,
} as const

/** Shares of the time to initial set at which power floating opens and closes. */
export const FINISH_OPENS = 0.55
export const FINISH_CLOSES = 1
const FINISH_SOURCE: Source = commonPractice('power-float window as a share of the time to initial set')
const RATES: Source = commonPractice('rates for planning a day')

/** Quantity, delivery, placing order with compaction, setting and finishing, for one panel. */
export function planPour({
  panel,
  yard,
  family,
  placed = [],
  notLaid = [],
  choice = NO_CHOICE,
}: PourInput): PourPlan {
  const { stand } = choice
  const unknown: string[] = [...choice.faults]
  const working: Step[] = []
  const assumed: Assumed[] = [...RATE_LINES]
  const chute = stand ?? chuteOf(panel)
  if (stand === null)
    assumed.push({
      field: 'chute',
      value: `${Math.round(chute[0])}, ${Math.round(chute[1])}`,
      unit: 'mm',
      why: 'corner nearest the origin; no other place is given',
    })

  const order = orderVolume({
    net: panel.volume,
    allowance: POUR_RATES.allowance,
    underDelivery: family.pour.underDelivery?.share ?? 0,
    step: POUR_RATES.orderStep,
    body: POUR_RATES.truckBody,
  })
  if (!order.known) throw new Error(`volume of a panel is ${panel.volume}: ${order.gaps.join('; ')}`)
  working.push(...order.working)

  const mix = mixFor(yard, panel.drawing.concrete.strength)
  if (mix === null) unknown.push('yard.mixes: a mix of the strength drawn')

  const heads = headsAtWork(yard, choice.vibrators)
  if (heads.known && choice.vibrators === null)
    assumed.push({
      field: 'vibrators',
      value: heads.value.least.mark,
      unit: '',
      why: 'one head of the first vibrator that the yard lists; nobody said which work today',
    })
  const close = heads.known ? congestedIn({ panel, placed, notLaid, ...heads.value.least }) : null
  working.push(...(close?.steps ?? []))
  assumed.push(...(close?.assumed ?? []))
  const found: Worked<CompactionPlan> = heads.known
    ? compact({
        region: panel.region,
        thickness: panel.drawing.thickness,
        head: heads.value.least.head,
        // The yard enters the maker's radius of action.
        action: heads.value.least.radius,
        vibrators: heads.value.marks.length,
        chute,
        congested: close?.zones,
        displaced: displacedBy(panel),
        placing: POUR_RATES.placing,
        secondsIn: mix?.slump === undefined ? undefined : secondsAt(middle(mix.slump)),
        quick: true,
      })
    : heads
  working.push(...secondsStep(mix))
  if (found.known) {
    working.push(...found.working)
    assumed.push(...(found.assumed ?? []))
  } else unknown.push(...found.gaps)
  const compaction = found.known ? found.value : null
  const tight =
    heads.known && compaction !== null
      ? tightIn({ panel, placed, head: heads.value.least.head, compaction })
      : []

  const setting = settingOf(mix)
  if (setting.initialSet === null) unknown.push('mix.initialSet: setting of the mix')
  working.push(...setting.working)
  assumed.push(...setting.assumed)

  const minutes = minutesOf(panel, order.value.ordered, compaction)
  working.push(...minutes.working)
  return {
    netVolume: panel.volume,
    orderVolume: order.value.ordered,
    loads: order.value.loads,
    mix: mix?.mark ?? null,
    chute,
    stand,
    vibrator: heads.known ? heads.value.least.mark : null,
    heads: heads.known ? heads.value.marks : [],
    compaction,
    tight,
    initialSet: setting.initialSet,
    finish: setting.finish,
    minutes: minutes.value,
    checks: [
      mixCheck(panel, yard, mix),
      coverCheck(found, panel),
      zoneTimeCheck(found),
      ...voidReachChecks(panel, compaction, found.known ? [] : found.gaps),
    ],
    toRecord: [
      ...askedAtDelivery(family, mix),
      ...askedAtPlacing(compaction, tight),
      ...askedAtFinish(setting.finish),
    ],
    working,
    assumed,
    unknown,
  }
}

const RATE_LINES: readonly Assumed[] = [
  { field: 'allowance', value: POUR_RATES.allowance, unit: '', why: 'flat beds with fixed sides, 3 to 5 %' },
  { field: 'order step', value: POUR_RATES.orderStep, unit: 'm³', why: 'usual step of a supplier' },
  { field: 'truck body', value: POUR_RATES.truckBody, unit: 'm³', why: 'usual body of a truck mixer' },
  { field: 'placing rate', value: POUR_RATES.placing, unit: 'm³/h', why: 'gang on flat panels, 8 to 15' },
  { field: 'set-up, panel', value: POUR_RATES.setUpPanel, unit: 'min', why: 'yard rate not given' },
  { field: 'set-up, each opening', value: POUR_RATES.setUpOpening, unit: 'min', why: 'yard rate not given' },
  { field: 'set-up, each insert', value: POUR_RATES.setUpInsert, unit: 'min', why: 'yard rate not given' },
  { field: 'strip, panel', value: POUR_RATES.strip, unit: 'min', why: 'yard rate not given' },
]

/** The corner of the outline nearest the lower left of its bounds. */
export function chuteOf(panel: Panel): Point {
  const corners = panel.region[0]?.outline ?? []
  let best: Point = [panel.left, panel.bottom]
  let least = Number.POSITIVE_INFINITY
  for (const corner of corners) {
    const away = Math.hypot(corner[0] - panel.left, corner[1] - panel.bottom)
    if (away < least) {
      least = away
      best = corner
    }
  }
  return best
}

/** The weakest mix that has the strength drawn; the first such. */
function mixFor(yard: Yard | null, strength: number): Mix | null {
  let best: Mix | null = null
  for (const mix of yard?.mixes ?? [])
    if (mix.strength >= strength && (best === null || mix.strength < best.strength)) best = mix
  return best
}

function mixCheck(panel: Panel, yard: Yard | null, mix: Mix | null): Check {
  const strongest = (yard?.mixes ?? []).reduce<number | null>(
    (most, { strength }) => (most === null || strength > most ? strength : most),
    null,
  )
  return compare({
    id: 'mix-strength',
    step: 'deliver',
    what: mix === null ? 'A mix of the strength drawn' : `Mix ${mix.mark} for the strength drawn`,
    demand: mix?.strength ?? strongest,
    limit: panel.drawing.concrete.strength,
    unit: 'MPa',
    sense: 'at least',
    source: enteredBy('the drawing'),
    missing: strongest === null ? ['yard.mixes: mixes of the yard'] : [],
  })
}

function coverCheck(found: Worked<CompactionPlan>, { drawing }: Panel): Check {
  const formers = (drawing.voids ?? []).some(({ above }) => above > 0)
  return compare({
    id: 'compaction-cover',
    step: 'place',
    what: 'Concrete that no insertion of the pattern reaches',
    demand: found.known ? found.value.uncovered : null,
    limit: 0,
    unit: 'm²',
    sense: 'at most',
    source: GEOMETRY,
    missing: found.known ? [] : found.gaps,
    note: `Holds for the pattern as drawn, worked point by point.${formers ? ' Seen from above: concrete under void formers is a condition of its own.' : ''}`,
  })
}

function middle([low, high]: readonly [number, number]): number {
  return (low + high) / 2
}

/** Seconds of an insertion where the mix says its slump. */
function secondsStep(mix: Mix | null): Step[] {
  if (mix?.slump === undefined) return []
  const slump = middle(mix.slump)
  return [
    {
      symbol: 't_in',
      formula: '15 s at a slump of 50 mm, 5 s at 150 mm, linear between',
      given: { slump },
      result: secondsAt(slump),
      unit: 's',
      source: SECONDS_SOURCE,
      by: 'table',
    },
  ]
}

function zoneTimeCheck(found: Worked<CompactionPlan>): Check {
  return compare({
    id: 'zone-time',
    step: 'place',
    what: 'Slowest zone, placed and vibrated, before the one beside it has waited too long',
    demand: found.known ? found.value.zoneMinutes : null,
    limit: LEFT_TOO_LONG,
    unit: 'min',
    sense: 'at most',
    source: LEFT_SOURCE,
    missing: found.known ? [] : found.gaps,
    note: 'More heads, or a larger head where the steel lets it in, shorten a zone.',
  })
}

function settingOf(mix: Mix | null): {
  readonly initialSet: number | null
  readonly finish: PourPlan['finish']
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
} {
  const initialSet = mix?.initialSet ?? null
  if (mix === null || initialSet === null) return { initialSet: null, finish: null, working: [], assumed: [] }
  const opens = FINISH_OPENS * initialSet
  const closes = FINISH_CLOSES * initialSet
  const step = (symbol: string, share: number, result: number): Step => ({
    symbol,
    formula: 'a t_i',
    given: { a: share, t_i: initialSet },
    result,
    unit: 'h',
    source: FINISH_SOURCE,
  })
  return {
    initialSet,
    finish: { opens, closes },
    working: [step('t_opens', FINISH_OPENS, opens), step('t_closes', FINISH_CLOSES, closes)],
    assumed: [
      {
        field: 'concrete temperature while setting',
        value: mix.reference ?? 'that of the mix test',
        unit: mix.reference === undefined ? '' : '°C',
        why: 'the reference of the mix; colder concrete sets later',
      },
    ],
  }
}

function minutesOf(
  panel: Panel,
  ordered: number,
  compaction: CompactionPlan | null,
): { readonly value: PourPlan['minutes']; readonly working: readonly Step[] } {
  const openings = panel.drawing.openings?.length ?? 0
  const inserts = panel.drawing.inserts?.length ?? 0
  const { setUpPanel, setUpOpening, setUpInsert, placing, strip } = POUR_RATES
  const setUp = setUpPanel + openings * setUpOpening + inserts * setUpInsert
  const vibrating = compaction?.minutes ?? 0
  const pour = Math.max((ordered / placing) * 60, vibrating)
  return {
    value: { setUp, pour, strip },
    working: [
      {
        symbol: 't_set',
        formula: 'a + n_o b + n_i c',
        given: { a: setUpPanel, n_o: openings, b: setUpOpening, n_i: inserts, c: setUpInsert },
        result: setUp,
        unit: 'min',
        source: RATES,
      },
      {
        symbol: 't_pour',
        formula: 'max(60 V_o / q, t_v)',
        given: { V_o: ordered, q: placing, t_v: vibrating },
        result: pour,
        unit: 'min',
        source: RATES,
        note: compaction === null ? 'vibrating time not known' : 'all heads at work',
      },
    ],
  }
}
