import { codeFamily } from '../codes/index.ts'
import { mouldSurvey } from '../mould/corner-lengths.ts'
import { type MeasuredMould, measuredMould } from '../mould/measured-mould.ts'
import type { Ring } from '../panel/point.ts'
import type { Plan } from '../plan.ts'
import type { CardRow } from './card.ts'
import type { PanelFacts, YardFacts } from './facts.ts'
import { checkRow } from './rows.ts'

const HEIGHTS = 'form-heights'
/** The worst height alone, as it was asked before heights were told apart. */
const WORST_HEIGHT = 'form-height'

export interface MouldRowsInput {
  readonly plan: Pick<Plan, 'family' | 'toRecord'>
  readonly facts: PanelFacts
  readonly yard: Pick<YardFacts, 'limits'>
}

/** The mould that the record's lengths and heights give, and the entries that it rests on; null where the plan asks for none. */
export function mouldNow({
  plan,
  facts,
  yard,
}: MouldRowsInput): (MeasuredMould & { readonly rests: string[] }) | null {
  const { drawing, revision } = facts
  if (drawing === null || !plan.toRecord.some(({ id }) => id === HEIGHTS)) return null
  const { lengths } = mouldSurvey(drawing.outline as unknown as Ring)
  const rests: string[] = []
  // What was taped for an older revision is taped again.
  const found = (id: string): unknown => {
    const recorded = facts.steps.mould.values[id]
    if (recorded === undefined || recorded.revision !== revision) return undefined
    rests.push(recorded.entry)
    return recorded.value
  }
  const number = (value: unknown): number | undefined =>
    typeof value === 'number' && Number.isFinite(value) ? value : undefined
  const heights = found(HEIGHTS)
  const worstHeight = number(found(WORST_HEIGHT))
  const mould = measuredMould({
    drawing,
    taped: Object.fromEntries(lengths.map(({ id }) => [id, number(found(id))])),
    heights: Array.isArray(heights) ? heights.filter((height) => number(height) !== undefined) : [],
    ...(worstHeight === undefined ? {} : { worstHeight }),
    family: codeFamily(plan.family),
    limits: yard.limits,
  })
  return { ...mould, rests }
}

/**
 * The mould as it was measured. At `mould` all of it: what fails there can be decided with a name and a reason. At the hold before the pour only
 * what concrete would make permanent: the lengths must fit each other, and a panel cast in it must keep the as-built tolerances that family or
 * engineer give; that cannot be decided away.
 */
export function mouldRows(input: MouldRowsInput & { readonly step: 'mould' | 'set' }): CardRow[] {
  const mould = mouldNow(input)
  if (mould === null) return []
  const { readings, corners, square, cast, unlimited, rests } = mould
  const checks =
    readings.verdict !== 'pass'
      ? // Without lengths that fit there is no shape: one row says so, and the heights stand for themselves.
        [readings, ...cast.filter(({ id }) => id === THICKNESS)]
      : input.step === 'set'
        ? [readings, ...cast]
        : [readings, corners, square, ...cast, unlimited]
  return checks.flatMap((check) => (check === null ? [] : [checkRow(check, 'record', rests)]))
}

const THICKNESS = 'mould-cast:thickness'
