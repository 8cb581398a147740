import type { Signer } from '../../steps/facts.ts'
import type { DocketField, DocketWords, Load, LoadDecision } from './load.ts'

const HAND: Signer = { id: 'p3', name: 'Sam Pell', role: 'floor' }
const SEEN = '2026-06-01T12:40:00.000Z'

/** A load by hand, for tests: every field that is given was said by one entry. */
export function loadOf(words: DocketWords, change: Partial<Load> = {}): Load {
  const entry = `d-${words.number}`
  const fields = (Object.keys(words) as DocketField[]).filter((field) => words[field] !== undefined)
  return {
    ...words,
    entry,
    entries: [entry],
    by: HAND,
    seen: SEEN,
    said: Object.fromEntries(fields.map((field) => [field, { entry, seen: SEEN }])),
    differs: [],
    decision: null,
    ...change,
  }
}

/** A load that meets every limit of the example's order in every family that has one. */
export const GOOD_LOAD: DocketWords = {
  number: '7001',
  truck: '4',
  mix: 'M40',
  volume: 3,
  batched: '2026-06-01T12:00:00.000Z',
  arrived: '2026-06-01T12:25:00.000Z',
  began: '2026-06-01T12:35:00.000Z',
  discharged: '2026-06-01T12:50:00.000Z',
  slump: 100,
  temperature: 18,
  waterAdded: 0,
}

export function decided(
  decision: LoadDecision['decision'],
  change: Partial<LoadDecision> = {},
): LoadDecision {
  return {
    entry: `dd-${decision}`,
    decision,
    by: { id: 'p1', name: 'Nora Quill', role: 'lead' },
    seen: '2026-06-01T13:00:00.000Z',
    stored: '2026-06-01T13:00:01.000Z',
    reason: 'seen at the chute',
    revision: 'A',
    ...change,
  }
}
