import { describe, expect, it } from 'vitest'
import { codeFamily, type FamilyId } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import { planSteel } from '../plan-steel.ts'

function checksOf(family: FamilyId, bar: Record<string, unknown>) {
  const panel = panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'W1',
      outline: [
        [0, 0],
        [9000, 0],
        [9000, 4000],
        [0, 4000],
      ],
      thickness: 180,
      concrete: { strength: 40, aggregate: 19 },
      cover: { mould: 30, top: 30, edge: 40 },
      steel: [{ bar: 'B1', count: 1, ...bar }],
    }),
  )
  const plan = planSteel({ panel, yard: null, family: codeFamily(family) })
  return (id: string) => plan.checks.find((each) => each.id === id)
}

const nz = { diameter: 12, grade: '500E' }
const eu = { diameter: 12, grade: 'B500B' }

describe('legs of bent bars', () => {
  it('a New Zealand hook of 90° is held against 12 d past the bend', () => {
    // NZS 3101:2006 8.4.2.1, from memory: 12 d = 144; bend of 60 inside takes 30 + 12 outside: 186.
    const short = checksOf('nz', { ...nz, legs: [600, 185], inside: 60 })
    expect(short('leg:B1')).toMatchObject({ demand: 185, limit: 186, verdict: 'fail' })
    expect(checksOf('nz', { ...nz, legs: [600, 186], inside: 60 })('leg:B1')?.verdict).toBe('pass')
  })

  it('the table of end legs outranks the straight: 12 mm, 125 mm', () => {
    // BS 8666:2005 Table 2: P of 12 mm is 125, a machine minimum; five diameters past the bend alone would give 36 + 60 = 96.
    const short = checksOf('eu', { ...eu, legs: [600, 120], inside: 48 })
    expect(short('leg:B1')).toMatchObject({ demand: 120, limit: 125, verdict: 'fail' })
  })

  it('too little straight between two bends is told, by the straight', () => {
    // BS 8666:2005: 4 d = 48 between bends; 110 outside less 2 × 36 leaves 38.
    const found = checksOf('eu', { ...eu, legs: [400, 110, 400], inside: 48 })('leg:B1')
    expect(found).toMatchObject({ limit: 48, verdict: 'fail' })
    expect(found?.demand).toBeCloseTo(38, 9)
    expect(found?.note).toBe('leg 2 of 3')
  })

  it('a turn that the rule does not name is not known, unless another leg fails', () => {
    const odd = checksOf('nz', { ...nz, legs: [600, 400], turns: [60], inside: 60 })('leg:B1')
    expect(odd?.verdict).toBe('unknown')
    expect(odd?.unknown?.join()).toContain('60°')
    const two = checksOf('nz', { ...nz, legs: [100, 600, 400], turns: [90, 60], inside: 60 })('leg:B1')
    expect(two?.verdict).toBe('fail')
  })

  it('straight bars have no legs to check', () => {
    expect(checksOf('eu', { ...eu, legs: [600] })('leg:B1')).toBeUndefined()
  })
})

describe('rectangle around a bent bar', () => {
  const box = (family: FamilyId, bar: Record<string, unknown>) => checksOf(family, bar)('transport:B1')

  it('a U of 3 m on each side is too wide to carry, one of 2.5 m is not', () => {
    expect(box('eu', { ...eu, legs: [3000, 3000, 3000] })).toMatchObject({ limit: 2750, verdict: 'fail' })
    const fits = box('eu', { ...eu, legs: [2500, 3000, 2500] })
    expect(fits?.verdict).toBe('pass')
    expect(Math.abs((fits?.demand ?? 0) - 2500)).toBeLessThan(13)
  })

  it('where the drawing gives legs alone the widest of all sides counts', () => {
    // As a Z the bar is narrow along its diagonal, as a U it is as wide as its legs.
    const legs = box('eu', { ...eu, legs: [2800, 1000, 2800] })
    const z = box('eu', {
      ...eu,
      layer: 'mould',
      path: [
        [200, 200],
        [3000, 200],
        [3000, 1200],
        [5800, 1200],
      ],
    })
    expect(legs?.demand ?? 0).toBeGreaterThan(z?.demand ?? 0)
  })

  it('families without such a rule have no check', () => {
    expect(box('nz', { ...nz, legs: [3000, 3000, 3000] })).toBeUndefined()
  })
})
