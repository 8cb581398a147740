import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const DAY: Record<string, string> = { air: '30', humidity: '40', wind: '20', concrete: '30' }
const args = (change: Record<string, string | null> = {}) => [
  'drying',
  ...Object.entries({ ...DAY, ...change }).flatMap(([name, value]) =>
    value === null ? [] : [`--${name}=${value}`],
  ),
]

describe('castwright drying', () => {
  it('gives both rates and a verdict against the assumed limit', async () => {
    const ran = await cli([...args(), '--json'])
    expect(ran.code).toBe(1)
    const json = ran.json()
    expect(json.rate).toBeCloseTo(1.1493, 4)
    expect(json.other).toBeCloseTo(1.1676, 4)
    expect(json.verdict).toBe('fail')
    expect((json.assumed as { field: string }[]).map(({ field }) => field)).toEqual(['limit'])
  })

  it('keeps condensation below 0, which meets any limit', async () => {
    const ran = await cli([...args({ humidity: '90', wind: '10', concrete: '15' }), '--json'])
    expect(ran.code).toBe(0)
    expect(ran.json().rate).toBeCloseTo(-0.5677, 4)
  })

  it('takes a limit of the caller', async () => {
    const ran = await cli([...args({ limit: '1.2' }), '--json'])
    expect(ran.json()).toMatchObject({ limit: 1.2, verdict: 'pass' })
  })

  it('outside the range of the formulas the rate is not known', async () => {
    const ran = await cli([...args({ air: '70' }), '--json'])
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ rate: null, other: null, verdict: 'unknown' })
  })

  it('shows the working', async () => {
    expect((await cli([...args(), '--explain'])).out).toContain('(V + 4)')
  })

  it.each<[string, Record<string, string | null>, string]>([
    ['no air temperature', { air: null }, '--air'],
    ['an air temperature in words', { air: 'warm' }, '--air'],
    ['humidity over 100', { humidity: '101' }, '--humidity'],
    ['humidity below 0', { humidity: '-1' }, '--humidity'],
    ['wind below 0', { wind: '-3' }, '--wind'],
    ['no concrete temperature', { concrete: null }, '--concrete'],
    ['a limit of 0', { limit: '0' }, '--limit'],
  ])('%s: exit 2, and the message names the option', async (_, change, field) => {
    const ran = await cli([...args(change), '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toContain(field)
  })
})
