import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const RAIL: Record<string, string> = {
  thickness: '200',
  modulus: '8000',
  inertia: '1139000',
  spacing: '1200',
  spans: '3',
}
const args = (change: Record<string, string | null> = {}) => [
  'sideform',
  ...Object.entries({ ...RAIL, ...change }).flatMap(([name, value]) =>
    value === null ? [] : [`--${name}=${value}`],
  ),
]

describe('castwright sideform', () => {
  it('gives thrust, bow, spacing at the limit and verdict', async () => {
    const ran = await cli([...args(), '--json'])
    expect(ran.code).toBe(0)
    const json = ran.json()
    expect(json.thrust).toBeCloseTo(0.5, 12)
    expect(json.bow).toBeCloseTo(0.78331, 5)
    expect(json.spacingAtLimit).toBeCloseTo(1411.63, 2)
    expect(json.verdict).toBe('pass')
    expect(
      (json.assumed as { field: string; value: number }[]).map(({ field, value }) => [field, value]),
    ).toEqual([
      ['weight', 25],
      ['limit', 1.5],
    ])
  })

  it('refuses a number that no rail has, and says which option', async () => {
    const ran = await cli([...args({ modulus: '1e308' }), '--json'])
    expect([ran.code, ran.out]).toEqual([2, ''])
    expect(ran.err).toMatch(/modulus.*1e308.*at most 1000000000000000/)
  })

  it('fails where the bow is over the limit', async () => {
    const ran = await cli([...args({ spacing: '1500', limit: '1.5', weight: '25' }), '--json'])
    expect(ran.code).toBe(1)
    expect(ran.json().verdict).toBe('fail')
    expect(ran.json()).not.toHaveProperty('assumed')
  })

  it('shows the working and never says that it is safe', async () => {
    const ran = await cli([...args(), '--explain'])
    expect(ran.out).toContain('k w L⁴ / (E I)')
    expect(ran.out.toLowerCase()).not.toContain('safe')
  })

  it.each<[string, Record<string, string | null>, string]>([
    ['no thickness', { thickness: null }, '--thickness'],
    ['a thickness of 0', { thickness: '0' }, '--thickness'],
    ['a modulus in words', { modulus: 'stiff' }, '--modulus'],
    ['an inertia below 0', { inertia: '-5' }, '--inertia'],
    ['a spacing without end', { spacing: 'Infinity' }, '--spacing'],
    ['four spans', { spans: '4' }, '--spans'],
    ['no spans', { spans: null }, '--spans'],
    ['a limit of 0', { limit: '0' }, '--limit'],
    ['a weight below 0', { weight: '-25' }, '--weight'],
  ])('%s: exit 2, and the message names the option', async (_, change, field) => {
    const ran = await cli([...args(change), '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toContain(field)
    expect(ran.out).toBe('')
  })
})
