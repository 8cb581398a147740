import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import type { Signer } from '../../steps/facts.ts'
import type { Bundle } from './bundle.ts'
import { EXAMPLE_BUNDLE } from './example-bundle.ts'
import { type BundleDecision, bundleStanding, mayAcceptNow } from './standing.ts'

const rules = codeFamily('nz').steel

function decided(role: Signer['role'], change: Partial<BundleDecision> = {}): BundleDecision {
  return {
    entry: 'E',
    decision: 'accept',
    by: { id: role, name: 'Mara', role },
    seen: '2026-09-14T05:00:00.000Z',
    reason: null,
    stale: false,
    ...change,
  }
}

function standing(change: Partial<Bundle>, ...decisions: BundleDecision[]) {
  return bundleStanding({ bundle: { ...EXAMPLE_BUNDLE, ...change }, decisions, rules }).standing
}

describe('where a bundle stands', () => {
  it('waits until somebody accepts it, though nothing speaks against it', () => {
    expect(standing({})).toBe('waiting')
    expect(standing({}, decided('floor'))).toBe('accepted')
    expect(standing({}, decided('viewer'))).toBe('waiting')
  })

  it('with an open question is accepted by a lead with a reason, not by the floor', () => {
    const open = { surface: ['loose rust' as const] }
    expect(standing(open, decided('floor', { reason: 'brushed' }))).toBe('waiting')
    expect(standing(open, decided('lead'))).toBe('waiting')
    expect(standing(open, decided('lead', { reason: 'brushed' }))).toBe('accepted')
  })

  it('with a finding against it is kept apart at once, and only an engineer accepts it', () => {
    const wrong = { seen: ['300E'] }
    expect(standing(wrong)).toBe('apart')
    expect(standing(wrong, decided('lead', { reason: 'x' }))).toBe('apart')
    expect(standing(wrong, decided('engineer', { reason: 'for kerbs only' }))).toBe('accepted')
  })

  it('is decided by the last word', () => {
    expect(standing({}, decided('floor'), decided('lead', { decision: 'quarantine' }))).toBe('apart')
    expect(standing({}, decided('lead', { decision: 'return' }), decided('lead'))).toBe('accepted')
  })

  it('stays apart where somebody below the one who kept it apart accepts it', () => {
    const kept = decided('engineer', { decision: 'quarantine' })
    expect(standing({}, kept, decided('floor'))).toBe('apart')
    expect(standing({}, kept, decided('lead'), decided('floor'))).toBe('apart')
    expect(standing({}, kept, decided('lead', { decision: 'quarantine' }), decided('lead'))).toBe('apart')
    expect(standing({}, kept, decided('engineer'), decided('floor'))).toBe('accepted')
    expect(mayAcceptNow('accept', [kept])).toEqual(['engineer'])
  })

  it('waits again where readings came after an acceptance that they question', () => {
    expect(standing({}, decided('floor', { stale: true }))).toBe('accepted')
    expect(standing({ surface: ['pitted'] }, decided('lead', { stale: true, reason: 'seen' }))).toBe(
      'waiting',
    )
  })
})
