import type { Check } from '../working/check.ts'
import type { Source } from '../working/source.ts'
import type { CardRow } from './card.ts'

const BARE = {
  demand: null,
  limit: null,
  unit: '',
  note: '',
  working: [],
  assumed: [],
  unknown: [],
  asked: null,
  recorded: null,
  decision: null,
  rests: [],
} as const

/** A condition that the record decides. */
export function plainRow(
  row: Pick<CardRow, 'id' | 'what' | 'verdict'> & { readonly source: Source } & Partial<CardRow>,
): CardRow {
  return { ...BARE, from: 'record', ...row }
}

/** A comparison as a row of a card. */
export function checkRow(check: Check, from: 'plan' | 'record', rests: readonly string[] = []): CardRow {
  return {
    ...BARE,
    id: check.id,
    from,
    what: check.what,
    verdict: check.verdict,
    demand: check.demand,
    limit: check.limit,
    unit: check.unit,
    note: check.note ?? '',
    source: check.source,
    working: check.working,
    assumed: check.assumed ?? [],
    unknown: check.unknown ?? [],
    rests,
  }
}
