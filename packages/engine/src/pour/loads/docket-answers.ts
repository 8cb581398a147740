import { counts, type DocketWords, type Load } from './load.ts'

/** What the card of the step asks once for the whole pour, and a docket says for its load. */
export const ASKED_BY_DOCKETS: ReadonlySet<string> = new Set([
  'docket-number',
  'truck',
  'batch-time',
  'specimens-made',
  'age-at-discharge',
  'slump',
  'concrete-temperature',
  'water-added',
])
/** Of those, what is judged: an answer that no docket gives is not lost where a docket comes later. */
const JUDGED = ['age-at-discharge', 'slump', 'concrete-temperature', 'water-added'] as const

const MINUTE = 60_000

/**
 * Whether dockets stand in for a question of the card, so that nothing is asked twice: with a docket on record the loads have rows of their own. A judged value that
 * was recorded apart from the dockets stays, unless a docket says the same.
 */
export function askedByDockets(id: string, recorded: unknown, loads: readonly Load[]): boolean {
  if (loads.length === 0 || !ASKED_BY_DOCKETS.has(id)) return false
  if (recorded === undefined || !JUDGED.some((judged) => judged === id)) return true
  return loads.filter(counts).some((load) => same(answerOf(load, id), recorded))
}

function answerOf(docket: DocketWords, id: string): unknown {
  switch (id) {
    case 'slump':
      return docket.slump
    case 'concrete-temperature':
      return docket.temperature
    case 'age-at-discharge':
      return (Date.parse(docket.discharged ?? '') - Date.parse(docket.batched ?? '')) / MINUTE
    default:
      return waterAnswer(docket)
  }
}

function waterAnswer({ waterAdded, waterAllowed, waterAfterDischarge }: DocketWords): string | undefined {
  if (waterAdded === undefined) return undefined
  if (waterAdded === 0) return 'none'
  if (waterAfterDischarge === undefined || waterAllowed === undefined) return undefined
  return waterAfterDischarge || waterAdded > waterAllowed
    ? 'more, or after discharge began'
    : 'within the ticket, before discharge'
}

/** Whole minutes and tenths of a degree are written down: half of either is the same value. */
function same(said: unknown, recorded: unknown): boolean {
  return typeof said === 'number' && typeof recorded === 'number'
    ? Math.abs(said - recorded) <= 0.5
    : said !== undefined && said === recorded
}
