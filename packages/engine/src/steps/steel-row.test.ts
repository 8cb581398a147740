import { describe, expect, it } from 'vitest'
import { EXAMPLE_BUNDLE } from '../steel/incoming/example-bundle.ts'
import type { PanelSteel } from '../steel/incoming/panel-steel.ts'
import { emptyPanelFacts } from './empty-facts.ts'
import { LEAD } from './example-facts.ts'
import { steelRows } from './steel-row.ts'

const ACCEPTED: PanelSteel = {
  bundle: 'B-7',
  came: EXAMPLE_BUNDLE,
  decisions: [{ entry: 'd', decision: 'accept', by: LEAD, seen: '', reason: null, stale: false }],
  pieces: [],
  entries: ['c', 'd'],
}

function rowOf(...steel: PanelSteel[]) {
  return steelRows({ ...emptyPanelFacts({ job: 'J1', mark: 'W1' }), steel }, 'nz')[0]
}

describe('the steel of a panel at its holds', () => {
  it('is not asked where the record names no bundle', () => {
    expect(rowOf()).toBeUndefined()
  })

  it('passes with every bundle accepted and rests on what says so', () => {
    expect(rowOf(ACCEPTED)).toMatchObject({ verdict: 'pass', demand: 1, limit: 1, rests: ['c', 'd'] })
  })

  it('stays shut on a bundle that nobody decided, that is not on record, or that is kept apart', () => {
    expect(rowOf(ACCEPTED, { ...ACCEPTED, bundle: 'B-8', decisions: [] })?.verdict).toBe('unknown')
    expect(rowOf({ ...ACCEPTED, came: null })?.verdict).toBe('unknown')
    expect(rowOf({ ...ACCEPTED, bundle: null, came: null })?.note).toContain('unknown origin')
    const doubt = 'Cut as 16 mm 500E, but bundle B-7 is 12 mm 500E.'
    expect(rowOf({ ...ACCEPTED, doubt })).toMatchObject({ verdict: 'unknown', unknown: [doubt] })
    const wrong = { ...EXAMPLE_BUNDLE, seen: ['300E'] }
    expect(rowOf(ACCEPTED, { ...ACCEPTED, came: wrong, decisions: [] })?.verdict).toBe('fail')
  })
})
