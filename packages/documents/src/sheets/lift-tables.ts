import type { LiftCondition, LiftStage, LiftStageId } from '@castwright/engine/lift'
import type { Plan } from '@castwright/engine/plan'
import { ceilTo, floorTo, shown } from '@castwright/engine/working'
import type { Paper } from '../paper/paper.ts'
import { type SheetInput, sourceText, VERDICT_WORDS } from './sheet.ts'

/** Stages that make up the first lift. */
const FIRST: readonly LiftStageId[] = ['release', 'turn', 'hang']

/** Loads are printed rounded up, ratings and limits down, as on the pictures. */
export function loadText(load: number | null): string {
  return load === null ? 'not known' : ceilTo(load, 0.1).toFixed(1)
}

function ratingText(rated: number | null): string {
  return rated === null ? 'not known' : floorTo(rated, 0.1).toFixed(1)
}

export function strengthText({ strength, never }: Pick<LiftCondition, 'strength' | 'never'>): string {
  if (never) return 'at no strength'
  if (strength === null) return 'not known'
  return strength <= 0 ? 'any' : `${ceilTo(strength, 0.1).toFixed(1)} MPa`
}

/** Least strength at the first lift, and what asks for it: what is wanted, and every stage of the first lift. */
export function leastAtLift({ cure, lift }: Pick<Plan, 'cure' | 'lift'>): {
  readonly text: string
  readonly from: string
} {
  const conditions = lift.conditions.filter(({ stage }) => FIRST.includes(stage))
  const never = conditions.find((one) => one.never)
  if (never !== undefined) return { text: 'none is enough', from: `${never.what}: holds at no strength.` }
  const asked = cure.wanted
  const most = conditions.reduce<LiftCondition | null>(
    (worst, next) => ((next.strength ?? 0) > (worst?.strength ?? 0) ? next : worst),
    null,
  )
  const open = conditions.filter(({ strength }) => strength === null)
  const greatest = Math.max(asked?.strength ?? 0, most?.strength ?? 0)
  const governs =
    greatest <= 0
      ? 'No strength is asked for yet.'
      : (most?.strength ?? 0) > (asked?.strength ?? 0)
        ? `Governed by: ${most?.what}.`
        : `Governed by the ${asked?.from ?? 'design'}.`
  const gaps = [
    ...(asked === null ? ['what is asked for at the first lift'] : []),
    ...open.map(({ what }) => what.charAt(0).toLowerCase() + what.slice(1)),
  ]
  const size = greatest <= 0 ? 'not known' : `${ceilTo(greatest, 0.1).toFixed(1)} MPa`
  return gaps.length === 0
    ? { text: size, from: governs }
    : {
        text: greatest <= 0 ? size : `${size} or more`,
        from: `${governs} Not known: ${shortList(gaps)}.`,
      }
}

function shortList(items: readonly string[]): string {
  return items.length <= 4 ? items.join('; ') : `${items.slice(0, 3).join('; ')} and ${items.length - 3} more`
}

function lifting(plan: Plan): readonly LiftStage[] {
  return plan.lift.stages.filter(({ inserts }) => inserts.length > 0)
}

/** Each insert with its place from the lower left corner, its working load at each stage that lifts, and the maker's rating. */
export function picksTable(paper: Paper, { plan }: SheetInput): void {
  const stages = lifting(plan)
  const { inserts } = plan.lift
  if (inserts.length === 0) {
    paper.paragraph('The drawing has no inserts.')
    return
  }
  paper.table(
    [
      { head: 'Insert', share: 14 },
      { head: 'Kind', share: 18 },
      { head: 'From the left, mm', share: 13, align: 'right' },
      { head: 'From below, mm', share: 13, align: 'right' },
      ...stages.map(({ name }) => ({ head: `${name}, kN`, share: 15, align: 'right' as const })),
      { head: 'Rated, kN', share: 12, align: 'right' },
      { head: 'Least strength', share: 15, align: 'right' },
    ],
    inserts.map((insert) => [
      insert.mark,
      insert.type === null ? insert.kind : `${insert.kind}, ${insert.type}`,
      String(Math.round(insert.at[0])),
      String(Math.round(insert.at[1])),
      ...stages.map(({ inserts: hung }) => {
        const one = hung.find(({ mark }) => mark === insert.mark)
        return one === undefined ? 'not used' : loadText(one.load)
      }),
      ratingText(insert.rated),
      leastOfInsert(plan, insert.mark),
    ]),
    8.5,
  )
  paper.paragraph(
    'Places from the lower left corner of the panel as drawn. Working loads along the leg, the greatest of the legs that count and of uneven legs, factor in them; what was not known is not in them. Maker’s rated load at its rated strength.',
    { size: 8.5 },
  )
  const cases = [
    ...new Set(
      stages.flatMap((stage) =>
        stage.inserts.flatMap(({ from }) => (from === '' ? [] : [`${stage.name}: ${from}`])),
      ),
    ),
  ]
  if (cases.length > 0) paper.paragraph(`Loads are from: ${cases.join('; ')}.`, { size: 8.5 })
}

function leastOfInsert({ lift }: Plan, mark: string): string {
  const own = lift.conditions.filter(
    ({ check }) => check.startsWith('lift-insert:') && check.split(':').slice(2).join(':') === mark,
  )
  if (own.length === 0) return 'not known'
  if (own.some(({ never }) => never)) return 'none is enough'
  if (own.some(({ strength }) => strength === null)) return 'not known'
  return strengthText({ strength: Math.max(...own.map(({ strength }) => strength ?? 0)), never: false })
}

/** Rigging of each stage that lifts; what keeps it from being known stands under the table. */
export function riggingTable(paper: Paper, { plan, yard }: SheetInput): void {
  const stages = plan.lift.stages.filter(({ hung }) => hung !== undefined)
  paper.table(
    [
      { head: 'Stage', share: 20 },
      { head: 'Rigging', share: 24 },
      { head: 'From the vertical', share: 12, align: 'right' },
      { head: 'Hook over picks, mm', share: 14, align: 'right' },
      { head: 'Legs that count', share: 12, align: 'right' },
      { head: 'One leg: load, kN', share: 13, align: 'right' },
      { head: 'Each leg rated at least, kN', share: 15, align: 'right' },
    ],
    stages.map(({ name, hung }) => {
      if (hung === undefined || hung === null) return [name, 'not known', '', '', '', '', '']
      const { rigged, rigging } = hung
      const listed = yard.yard?.rigging?.find(({ mark }) => mark === rigging)
      const legs = listed === undefined ? '' : `, ${listed.legs} legs of ${shown(listed.length, 'mm')}`
      const beam = rigged.beam === null ? '' : `, spreader ${Math.round(rigged.beam.length)} mm`
      return [
        name,
        `${rigging}${legs}${beam}`,
        `${ceilTo(rigged.angle, 0.1).toFixed(1)}°`,
        rigged.hookHeight === null ? 'not known' : String(Math.ceil(rigged.hookHeight)),
        `${rigged.counted} of ${rigged.picks.length}`,
        loadText(rigged.legTension),
        rigged.legRating === null ? 'not known' : loadText(rigged.legRating),
      ]
    }),
    8.5,
  )
  const missing = stages.flatMap(({ name, hung, inserts, unknown }) =>
    hung === null || hung === undefined
      ? [
          `${name}: ${[...new Set([...inserts.flatMap(({ gaps }) => gaps), ...unknown])].slice(0, 3).join('; ') || 'rigging'}`,
        ]
      : hung.rigged.gaps.map((gap) => `${name}: ${gap}`),
  )
  if (missing.length > 0) paper.paragraph(`Not known. ${missing.join('. ')}.`, { size: 8.5 })
}

/** Tension and most used insert of every stage against their limits. */
export function stagesTable(paper: Paper, { plan }: SheetInput): void {
  const wanted = plan.cure.wanted
  const rows = plan.lift.stages.flatMap((stage) =>
    ['lift-peak', 'lift-insert'].flatMap((kind) => {
      const check = plan.checks.find(({ id }) => id === `${kind}:${stage.id}`)
      if (check === undefined) return []
      const digits = check.unit === 'MPa' ? 0.01 : 0.1
      const places = check.unit === 'MPa' ? 2 : 1
      return [
        [
          kind === 'lift-peak' ? stage.name : '',
          kind === 'lift-peak' ? `tension: ${check.note ?? stage.how}` : insertWords(check.note ?? ''),
          check.demand === null
            ? 'not known'
            : `${ceilTo(check.demand, digits).toFixed(places)} ${check.unit}`,
          check.limit === null
            ? 'not known'
            : `${floorTo(check.limit, digits).toFixed(places)} ${check.unit}`,
          check.ratio === null ? '' : percent(check.ratio),
          check.verdict === 'unknown'
            ? `not known: ${check.unknown?.[0] ?? ''}`
            : VERDICT_WORDS[check.verdict],
        ],
      ]
    }),
  )
  paper.table(
    [
      { head: 'Stage', share: 17 },
      { head: 'What, and how', share: 42 },
      { head: 'Found', share: 15, align: 'right' },
      {
        head: wanted === null ? 'Limit' : `Limit at ${shown(wanted.strength, 'MPa')}`,
        share: 15,
        align: 'right',
      },
      { head: 'Of limit', share: 13, align: 'right' },
      { head: 'Verdict', share: 31 },
    ],
    rows,
    8.5,
  )
}

/** What the sketch of a stage says of its tension. Example: `tension 51 % of its limit: passes`. */
export function stageWords(checks: Plan['checks'], stage: LiftStageId): string {
  const check = checks.find(({ id }) => id === `lift-peak:${stage}`)
  if (check === undefined) return ''
  return check.ratio === null
    ? 'tension not known'
    : `tension ${percent(check.ratio)} of its limit: ${VERDICT_WORDS[check.verdict]}`
}

/** Of a limit, rounded up. */
function percent(ratio: number): string {
  return `${Math.ceil(100 * ratio - 1e-7)} %`
}

function insertWords(note: string): string {
  return note === '' ? 'most used insert' : `most used insert, ${note}`
}

/** The factor on own weight of each stage, with where it is from. */
export function factorsTable(paper: Paper, { plan }: SheetInput): void {
  paper.table(
    [
      { head: 'Stage', share: 30 },
      { head: 'Factor on own weight for bending', share: 25, align: 'right' },
      { head: 'Where the factor is from', share: 60 },
    ],
    plan.lift.stages.map(({ name, factor, factorSource }) => [
      name,
      // A factor is never printed smaller than it was taken.
      factor === null ? 'not known' : ceilTo(factor, 0.01).toFixed(2),
      factorSource === null ? '' : sourceText(factorSource),
    ]),
    8.5,
  )
}

/** Of each stage the tension and the insert that ask for most. */
export function leastTable(paper: Paper, { plan }: SheetInput): void {
  const rows = plan.lift.stages.flatMap(({ id }) => {
    const own = plan.lift.conditions.filter(({ stage }) => stage === id)
    const tension = own.filter(({ check }) => check.startsWith('lift-peak:'))
    const inserts = own.filter(({ check }) => !check.startsWith('lift-peak:'))
    return [...tension, ...hardest(inserts)].map((condition) => [
      condition.what,
      strengthText(condition),
      condition.gaps[0] ?? '',
    ])
  })
  paper.table(
    [
      { head: 'Condition', share: 50 },
      { head: 'Least strength', share: 20, align: 'right' },
      { head: 'What is missing', share: 50 },
    ],
    rows,
    8.5,
  )
}

/** The insert that no strength is enough for, else one that is not known, else the one that asks for most. */
function hardest(conditions: readonly LiftCondition[]): LiftCondition[] {
  const first =
    conditions.find(({ never }) => never) ??
    conditions.find(({ strength }) => strength === null) ??
    conditions.reduce<LiftCondition | undefined>(
      (worst, next) => (worst === undefined || (next.strength ?? 0) > (worst.strength ?? 0) ? next : worst),
      undefined,
    )
  return first === undefined ? [] : [first]
}
