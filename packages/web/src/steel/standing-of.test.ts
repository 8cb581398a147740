import { codeFamily } from '@castwright/engine/codes'
import { EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import type { BundleFacts } from '@castwright/record'
import { describe, expect, it } from 'vitest'
import { sizeName } from './size-name.ts'
import { standingOf } from './standing-of.ts'

const by = { id: 'p', name: 'Mara', role: 'lead' } as const
const rules = codeFamily('nz').steel

function facts(change: Partial<BundleFacts> = {}): BundleFacts {
  return {
    id: 'B',
    entry: 'E',
    came: EXAMPLE_BUNDLE,
    by,
    seen: '',
    decisions: [],
    cutBars: 0,
    others: [],
    ...change,
  }
}

const accepted = { entry: 'D', decision: 'accept', by, seen: '', reason: 'looked', stale: false } as const

describe('where a bundle stands, kept', () => {
  it('is judged again only where readings, decisions or rules are new', () => {
    const first = standingOf(facts(), rules)
    expect(standingOf(facts(), rules)).toBe(first)
    expect(standingOf(facts({ decisions: [accepted] }), rules).standing).toBe('accepted')
    const pitted = { ...EXAMPLE_BUNDLE, surface: ['pitted' as const] }
    const now = (stale: boolean) =>
      standingOf(facts({ came: pitted, decisions: [{ ...accepted, stale }] }), rules).standing
    expect([now(false), now(true)]).toEqual(['accepted', 'waiting'])
    expect(standingOf(facts(), codeFamily('eu').steel).standing).not.toBe('accepted')
  })
})

describe('the name of a size', () => {
  it('is a bar number in the United States', () => {
    expect(sizeName(codeFamily('us'), 15.875)).toBe('No. 5 (15.9 mm)')
    expect(sizeName(codeFamily('nz'), 12)).toBe('12 mm')
    expect(sizeName(codeFamily('us'), 13.6)).toBe('13.6 mm')
  })
})
