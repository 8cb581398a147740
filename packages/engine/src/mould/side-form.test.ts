import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { BOW_COEFFICIENT, type SideFormInput, type SpanCount, sideForm } from './side-form.ts'

const RAIL: SideFormInput = { thickness: 200, modulus: 8000, inertia: 1_139_000, spacing: 1200, spans: 3 }

describe('side form', () => {
  it.each<[string, Partial<SideFormInput>]>([
    ['thickness', { thickness: 1e308 }],
    ['modulus', { modulus: 1e308 }],
    ['spacing', { spacing: 1e308 }],
    ['weight', { weight: 1e-320 }],
  ])('is not known where %s makes its numbers overflow', (_, change) => {
    expect(sideForm({ ...RAIL, ...change })).toMatchObject({
      known: false,
      gaps: [expect.stringMatching(/beyond/)],
    })
  })

  it.each<[string, Partial<SideFormInput>]>([
    ['thickness', { thickness: 0 }],
    ['modulus', { modulus: Number.NaN }],
    ['inertia', { inertia: -1 }],
    ['spacing', { spacing: Number.POSITIVE_INFINITY }],
    ['weight', { weight: 0 }],
    ['limit', { limit: 0 }],
    ['spans', { spans: 4 as SpanCount }],
  ])('is not known where %s is impossible, and says so', (field, change) => {
    const found = sideForm({ ...RAIL, ...change })
    expect(found.known).toBe(false)
    if (!found.known) expect(found.gaps.join()).toContain(field)
  })

  it('passes at the spacing of the limit and fails just beyond', () => {
    const found = sideForm(RAIL)
    if (!found.known) throw new Error('not known')
    const at = (spacing: number) => {
      const again = sideForm({ ...RAIL, spacing })
      return again.known ? again.value.check.verdict : null
    }
    expect(at(found.value.spacingAtLimit)).toBe('pass')
    expect(at(found.value.spacingAtLimit * 1.001)).toBe('fail')
  })

  it('lists weight and limit as assumed only where they were not given', () => {
    const fields = (input: SideFormInput) => {
      const found = sideForm(input)
      return found.known ? (found.assumed ?? []).map(({ field }) => field) : null
    }
    expect(fields(RAIL)).toEqual(['weight', 'limit'])
    expect(fields({ ...RAIL, weight: 24, limit: 1 })).toEqual([])
  })

  it.each([1, 2, 3] as const)('every step replays, %d spans', (spans) => {
    const found = sideForm({ ...RAIL, spans, weight: 24.3, limit: 1.7 })
    if (!found.known) throw new Error('not known')
    for (const step of found.working)
      expect(Math.abs((replay(step) as number) / (step.result as number) - 1)).toBeLessThan(1e-9)
  })

  it('bow coefficients agree with the beam solved by finite differences', () => {
    // w = E I = L = 1 a span; supports are held nodes; moments zero at both ends.
    for (const spans of [1, 2, 3] as const) {
      const found = largestBow(spans, 40)
      expect(Math.abs(found / BOW_COEFFICIENT[spans] - 1)).toBeLessThan(3e-3)
    }
  })
})

/** Largest deflection of equal unit spans under unit load by central differences, dense solve. */
function largestBow(spans: number, perSpan: number): number {
  const n = spans * perSpan + 1
  const h = 1 / perSpan
  const size = n + 2 // one ghost node beyond each end
  const a: Float64Array[] = Array.from({ length: size }, () => new Float64Array(size + 1))
  let row = 0
  const set = (terms: [number, number][], right: number) => {
    const line = a[row] as Float64Array
    for (const [at, value] of terms) line[at] = value
    line[size] = right
    row += 1
  }
  for (let i = 0; i < n; i += 1) {
    if (i % perSpan === 0) set([[i + 1, 1]], 0)
    else
      set(
        [
          [i - 1, 1],
          [i, -4],
          [i + 1, 6],
          [i + 2, -4],
          [i + 3, 1],
        ],
        h ** 4,
      )
  }
  set(
    [
      [0, 1],
      [1, -2],
      [2, 1],
    ],
    0,
  )
  set(
    [
      [n - 1, 1],
      [n, -2],
      [n + 1, 1],
    ],
    0,
  )
  for (let c = 0; c < size; c += 1) {
    let pivot = c
    for (let r = c + 1; r < size; r += 1)
      if (Math.abs(a[r]?.[c] ?? 0) > Math.abs(a[pivot]?.[c] ?? 0)) pivot = r
    const line = a[pivot] as Float64Array
    a[pivot] = a[c] as Float64Array
    a[c] = line
    for (let r = 0; r < size; r += 1) {
      if (r === c) continue
      const other = a[r] as Float64Array
      const factor = (other[c] as number) / (line[c] as number)
      if (factor !== 0)
        for (let k = c; k <= size; k += 1) other[k] = (other[k] as number) - factor * (line[k] as number)
    }
  }
  let most = 0
  for (let i = 0; i < size; i += 1)
    most = Math.max(most, ((a[i] as Float64Array)[size] as number) / ((a[i] as Float64Array)[i] as number))
  return most
}
