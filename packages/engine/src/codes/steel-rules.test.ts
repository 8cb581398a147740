import { describe, expect, it } from 'vitest'
import { bondCondition } from './eu/en1992-1-1-2004/lap.ts'
import { codeFamily, type FamilyId, type LapInput } from './index.ts'

const BAR: LapInput = {
  diameter: 12,
  yield: 500,
  concrete: 30,
  cover: 30,
  gap: 150,
  below: 100,
  bond: 'good',
  share: 100,
  apart: 0,
}

function lap(family: FamilyId, change: Partial<LapInput> = {}) {
  const yieldOf = family === 'us' ? { yield: 420, diameter: 12.7 } : {}
  return codeFamily(family).steel.lap({ ...BAR, ...yieldOf, ...change })
}

function length(family: FamilyId, change: Partial<LapInput> = {}): number {
  const found = lap(family, change)
  return found.known ? (found.value.length ?? Number.NaN) : Number.NaN
}

const ALL: readonly FamilyId[] = ['nz', 'au', 'eu', 'us']

describe('laps in every family', () => {
  it.each(ALL)('%s: never shorter for a thicker bar, less concrete, less cover, less gap', (family) => {
    const sizes = family === 'us' ? [9.525, 12.7, 15.875, 19.05, 22.225, 25.4] : [8, 10, 12, 16, 20, 25, 32]
    for (let i = 1; i < sizes.length; i += 1) {
      const [thin, thick] = [sizes[i - 1] as number, sizes[i] as number]
      expect(length(family, { diameter: thick })).toBeGreaterThanOrEqual(length(family, { diameter: thin }))
    }
    expect(length(family, { concrete: 25 })).toBeGreaterThanOrEqual(length(family, { concrete: 40 }))
    expect(length(family, { cover: 15 })).toBeGreaterThanOrEqual(length(family, { cover: 40 }))
    expect(length(family, { gap: 20 })).toBeGreaterThanOrEqual(length(family, { gap: 200 }))
  })

  it.each(ALL)('%s: each impossible or missing input is named', (family) => {
    for (const field of ['diameter', 'yield', 'concrete', 'cover', 'gap', 'share'] as const) {
      for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
        const found = lap(family, { [field]: bad })
        expect(found.known).toBe(false)
        if (!found.known) expect(found.gaps.join()).toContain(field)
      }
    }
    for (const field of ['below', 'apart'] as const) {
      const found = lap(family, { [field]: -1 })
      expect(found.known).toBe(false)
      if (!found.known) expect(found.gaps.join()).toContain(field)
    }
    expect(lap(family, { share: 100.1 }).known).toBe(false)
  })

  it('the edges of the ranges, on both sides', () => {
    expect(lap('eu', { diameter: 32 }).known).toBe(true)
    expect(lap('eu', { diameter: 32.1 }).known).toBe(false)
    expect(lap('eu', { concrete: 90 }).known).toBe(true)
    expect(lap('eu', { concrete: 91 }).known).toBe(false)
    expect(lap('eu', { yield: 399 }).known).toBe(false)
    expect(lap('nz', { diameter: 40 }).known).toBe(true)
    expect(lap('nz', { diameter: 41 }).known).toBe(false)
    expect(lap('nz', { yield: 501 }).known).toBe(false)
    expect(lap('us', { diameter: 35.8 }).known).toBe(true)
    expect(lap('us', { diameter: 43 }).known).toBe(false)
    expect(lap('us', { diameter: 14 }).known).toBe(false)
    expect(length('nz', { concrete: 70 })).toBe(length('nz', { concrete: 71 }))
    expect(length('au', { concrete: 65 })).toBe(length('au', { concrete: 66 }))
    expect(length('eu', { concrete: 60 })).toBe(length('eu', { concrete: 61 }))
    expect(length('nz', { below: 300, cover: 12 }) * 1.3).toBeCloseTo(
      length('nz', { below: 301, cover: 12 }),
      6,
    )
  })

  it('bars of a lap apart: nz not known, us up to a fifth of the lap, au and eu longer', () => {
    expect(lap('nz', { apart: 1 })).toMatchObject({
      value: { length: null, gaps: [expect.stringContaining('apart')] },
    })
    expect(length('us', { apart: length('us') / 5 - 0.01 })).toBe(length('us'))
    expect(lap('us', { apart: length('us') / 5 + 0.01 })).toMatchObject({ value: { length: null } })
    expect(length('au', { apart: 35.9 })).toBe(length('au'))
    expect(length('au', { apart: 400 })).toBeGreaterThan(length('au'))
    expect(length('eu', { apart: 48 })).toBe(length('eu'))
    expect(length('eu', { apart: 58 })).toBeCloseTo(length('eu') + 10, 9)
  })

  it('bond: good to 250 mm, in deep pours 300 mm or more below the top', () => {
    expect(bondCondition({ below: 250, depth: 400 })).toBe('good')
    expect(bondCondition({ below: 251, depth: 400 })).toBe('poor')
    expect(bondCondition({ below: 251, depth: null })).toBe('poor')
    expect(bondCondition({ below: 300, depth: 600 })).toBe('good')
    expect(bondCondition({ below: 301, depth: 600 })).toBe('poor')
  })
})

describe('marks on bars', () => {
  const identify = (family: FamilyId, ...seen: string[]) => codeFamily(family).steel.identify({ seen })

  it('New Zealand and Australia: letters and figures, another grade of the standard is for the engineer', () => {
    expect(identify('nz', 'PS', '500E')).toMatchObject({ verdict: 'pass', candidates: [{ grade: '500E' }] })
    expect(identify('nz', 'E500')).toMatchObject({ verdict: 'pass', candidates: [{ grade: '500E' }] })
    expect(identify('nz', '500N')).toMatchObject({ verdict: 'unknown', candidates: [{ grade: '500N' }] })
    expect(identify('nz', 'E').candidates.map(({ grade }) => grade)).toEqual(['300E', '500E'])
    expect(identify('au', 'dot', 'dash')).toMatchObject({ verdict: 'unknown', candidates: [] })
  })

  it('Europe: country and mill by count of ribs; the class stays open', () => {
    const read = identify('eu', '3', '17')
    expect(read.notes[0]).toBe('Origin: France or Hungary, mill 17.')
    expect(read.candidates.map(({ grade }) => grade)).toEqual(['B500A', 'B500B', 'B500C'])
    expect(identify('eu', '12').unknown[0]).toMatch(/1 to 9, found 12/)
    expect(identify('eu', 'star')).toMatchObject({ verdict: 'unknown', candidates: [] })
  })

  it('United States: numbers before the type letter are the size, after it the grade', () => {
    expect(identify('us', 'N', '4')).toMatchObject({ verdict: 'unknown', candidates: [] })
    expect(identify('us', 'N', '4', 'S')).toMatchObject({ candidates: [{ grade: '40' }] })
    expect(identify('us', 'S', '8', 'W', '80')).toMatchObject({
      candidates: [{ grade: '80', process: 'low-alloy steel, ASTM A706' }],
    })
    expect(identify('us', '1 line')).toMatchObject({ candidates: [{ grade: '60', process: null }] })
    expect(identify('us', '5 lines')).toMatchObject({ verdict: 'unknown', candidates: [] })
  })

  it.each(ALL)('%s: no mark is not accepted', (family) => {
    expect(identify(family, 'none')).toMatchObject({ verdict: 'fail', candidates: [] })
  })
})
