import { codeFamily } from '../codes/index.ts'
import { craneRating } from '../lift/crane-rating.ts'
import { type DrawnKinds, drawnKinds } from '../lift/insert-kinds.ts'
import { ANGLE_CHECK, angleCheck, designLoadChecks } from '../lift/lift-checks.ts'
import { slingAngle } from '../lift/sling.ts'
import { BELOW_HOOK_ASKED, CRANE_ASKED, RADIUS_ASKED, RIGGING_ASKED } from '../lift/strip-asked.ts'
import { LEAST_STRENGTH_LIMIT, wantedStrength } from '../lift/wanted-strength.ts'
import type { Plan } from '../plan.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, enteredBy, type Source } from '../working/source.ts'
import type { Verdict } from '../working/verdict.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import type { Yard, YardCrane, YardRigging } from '../yard/yard.ts'
import type { CardRow } from './card.ts'
import type { PanelFacts, Recorded, YardFacts } from './facts.ts'
import { inDate } from './in-date.ts'
import { pourStrength } from './pour-strength.ts'
import { checkRow, plainRow } from './rows.ts'
import { stageRows } from './stage-rows.ts'
import type { StrengthAtLift } from './strength-at-lift.ts'

export interface StripRowsInput {
  readonly plan: Plan
  readonly facts: PanelFacts
  readonly yard: YardFacts
  /** UTC instant. */
  readonly now: string
}

const HOLD: Source = commonPractice('conditions of the first lift')

/** What the record must hold before the first lift: design, strength, rated loads, rigging and crane. */
export function stripRows(input: StripRowsInput): CardRow[] {
  const { plan, facts, yard } = input
  const strength = pourStrength(input)
  return [
    designRow(facts),
    strengthRow(input, strength),
    ...ratedRows(facts, yard.yard, strength),
    ...stageRows({ plan, yard, strength }),
    ...riggingRows(input),
    ...craneRows(plan, facts, yard, input.now),
  ]
}

/** Whether the drawing carries a lifting design that an engineer has confirmed for the revision in force. */
export function designIsConfirmed({ design, drawing, revision }: PanelFacts): boolean {
  return (
    design !== null &&
    drawing?.lifting !== undefined &&
    design.revision === revision &&
    design.by.role === 'engineer'
  )
}

function designRow(facts: PanelFacts): CardRow {
  const { design, drawing, revision } = facts
  const lifting = drawing?.lifting
  const gaps: string[] = []
  if (lifting === undefined) gaps.push('lifting: the drawing has no lifting design')
  if (design === null) gaps.push('confirmation of the lifting design by an engineer')
  else if (design.by.role !== 'engineer')
    gaps.push(`confirmation by an engineer: ${design.by.name} is not one`)
  else if (design.revision !== revision) {
    gaps.push(`lifting design confirmed for revision ${design.revision ?? 'none'}, now ${revision ?? 'none'}`)
  }
  return plainRow({
    id: 'design',
    what: 'Lifting design of this revision, confirmed by an engineer',
    verdict: gaps.length === 0 ? 'pass' : 'unknown',
    demand: lifting?.reference ?? null,
    note: design === null ? '' : `Confirmed by ${design.by.name}.`,
    source: HOLD,
    unknown: gaps,
    rests: gaps.length === 0 && design ? [design.entry] : [],
  })
}

function strengthRow({ plan, facts, yard }: StripRowsInput, strength: Worked<StrengthAtLift>): CardRow {
  const entered = yard.limits[LEAST_STRENGTH_LIMIT]
  const wanted =
    facts.drawing === null
      ? unknown('the drawing')
      : wantedStrength({
          drawing: facts.drawing,
          yard: yard.yard,
          family: codeFamily(plan.family),
          limits: yard.limits,
        })
  const check = compare({
    id: 'strength',
    step: 'strip',
    what: 'Strength of this pour at this hour, low edge',
    demand: strength.known ? strength.value.low : null,
    limit: wanted.known ? wanted.value.strength : null,
    unit: 'MPa',
    sense: 'at least',
    source: wanted.known ? wanted.value.source : HOLD,
    working: [...(strength.known ? strength.working : []), ...(wanted.known ? wanted.working : [])],
    missing: [...(strength.known ? [] : strength.gaps), ...(wanted.known ? [] : wanted.gaps)],
    note: wanted.known
      ? `Wanted by the ${wanted.value.from}. A result of this pour and the low edge must both reach it.`
      : 'A result of this pour and the low edge must both reach what is wanted.',
  })
  const rests = [
    ...(facts.cast ? [facts.cast.entry] : []),
    ...(strength.known ? strength.value.rests : []),
    ...(entered ? [entered.entry] : []),
  ]
  return checkRow(check, 'record', rests)
}

function ratedRows(facts: PanelFacts, yard: Yard | null, strength: Worked<StrengthAtLift>): CardRow[] {
  const kinds: DrawnKinds = facts.drawing
    ? drawnKinds({ drawing: facts.drawing, yard })
    : { kinds: [], gaps: ['the drawing'] }
  return designLoadChecks({
    lifting: facts.drawing?.lifting,
    kinds,
    strength: strength.known ? known(strength.value.low, strength.working) : strength,
  }).map((check) =>
    checkRow(
      { ...check, id: `now:${check.id}`, what: `${check.what}, at this hour` },
      'record',
      strength.known ? strength.value.rests : [],
    ),
  )
}

function riggingRows({ plan, facts, yard, now }: StripRowsInput): CardRow[] {
  const values = current(facts)
  const drawn = facts.drawing?.rigging
  const mark = drawn ?? textOf(values[RIGGING_ASKED])
  const rigging = yard.yard?.rigging?.find((listed) => listed.mark === mark)
  const gap = mark === null ? 'rigging in use' : `rigging: the yard lists no ${mark}`
  const entry = drawn === undefined ? entryOf(values[RIGGING_ASKED]) : []
  const inserts = facts.drawing?.inserts ?? []
  const sling = rigging
    ? slingAngle({ rigging, hook: plan.centre, picks: inserts.map(({ at }) => at) })
    : unknown(gap)
  return [
    dateRow('rigging', 'Rigging is in date', rigging, gap, yard, now),
    checkRow(ratedCheck('rigging', rigging, plan.lift.hookMass, gap), 'record', entry),
    checkRow({ ...angleCheck({ sling, family: codeFamily(plan.family) }), id: ANGLE_CHECK }, 'plan', entry),
  ]
}

function ratedCheck(id: string, rigging: YardRigging | undefined, mass: number, gap: string): Check {
  return compare({
    id: `${id}-rated`,
    step: 'strip',
    what: 'Mass on the hook against the rated load of the rigging',
    demand: mass,
    limit: rigging?.rated ?? null,
    unit: 'kg',
    sense: 'at most',
    source: enteredBy(`the yard: rigging ${rigging?.mark ?? ''}`.trim()),
    missing: rigging ? [] : [gap],
  })
}

function craneRows(plan: Plan, facts: PanelFacts, yard: YardFacts, now: string): CardRow[] {
  const values = current(facts)
  const mark = textOf(values[CRANE_ASKED])
  const crane: YardCrane | undefined = yard.yard?.cranes?.find((listed) => listed.mark === mark)
  const gap = mark === null ? 'crane in use' : `crane: the yard lists no ${mark}`
  const radius = numberOf(values[RADIUS_ASKED])
  const below = numberOf(values[BELOW_HOOK_ASKED])
  const rating: Worked<number> =
    crane === undefined
      ? unknown(gap)
      : radius === null
        ? unknown('greatest radius of the crane in this lift')
        : craneRating({ crane, radius })
  const missing = [
    ...(rating.known ? [] : rating.gaps),
    ...(below === null || below < 0 ? ['mass of hook block, slings and beam'] : []),
  ]
  const total = plan.lift.hookMass + (below ?? 0)
  const check = compare({
    id: 'crane-rated',
    step: 'strip',
    what: 'Everything below the crane’s head against its chart at that radius',
    demand: missing.length > 0 ? null : total,
    limit: rating.known ? rating.value : null,
    unit: 'kg',
    sense: 'at most',
    source: enteredBy(`the yard: crane ${crane?.mark ?? ''}`.trim()),
    working: [
      {
        symbol: 'm all',
        formula: 'm + b',
        given: { m: plan.lift.hookMass, b: below ?? 0 },
        result: total,
        unit: 'kg',
        source: HOLD,
      },
      ...(rating.known ? rating.working : []),
    ],
    missing,
  })
  const rests = [CRANE_ASKED, RADIUS_ASKED, BELOW_HOOK_ASKED].flatMap((id) => entryOf(values[id]))
  return [dateRow('crane', 'Crane is in date', crane, gap, yard, now), checkRow(check, 'record', rests)]
}

function dateRow(
  id: string,
  what: string,
  gear: { readonly mark: string; readonly due?: string | undefined } | undefined,
  gap: string,
  yard: YardFacts,
  now: string,
): CardRow {
  const recorded = gear ? yard.gear[gear.mark] : undefined
  const due = recorded?.due ?? gear?.due ?? null
  const verdict: Verdict = gear ? inDate({ due, now, timezone: yard.yard?.timezone ?? null }) : 'unknown'
  return plainRow({
    id: `${id}-date`,
    what,
    verdict,
    demand: gear?.mark ?? null,
    limit: due,
    note: recorded ? 'By the latest inspection on record.' : gear ? 'By the yard’s list.' : '',
    source: commonPractice('gear out of date counts as not known to be fit'),
    unknown: verdict !== 'unknown' ? [] : [gear ? `date until which ${gear.mark} is in date` : gap],
    rests: recorded ? [recorded.entry] : [],
  })
}

/** Values of the strip card recorded for the revision in force. */
function current(facts: PanelFacts): Readonly<Record<string, Recorded>> {
  return Object.fromEntries(
    Object.entries(facts.steps.strip.values).filter(([, value]) => value.revision === facts.revision),
  )
}

function textOf(recorded: Recorded | undefined): string | null {
  return typeof recorded?.value === 'string' ? recorded.value : null
}

function numberOf(recorded: Recorded | undefined): number | null {
  return typeof recorded?.value === 'number' && Number.isFinite(recorded.value) ? recorded.value : null
}

function entryOf(recorded: Recorded | undefined): string[] {
  return recorded ? [recorded.entry] : []
}
