import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { countRibs, type Rib } from './rib-count.ts'
import { weighedDiameter } from './size-findings.ts'

/** Values of published sources for what comes in; each with its source beside it. */
describe('steel in, against published values', () => {
  it.each([
    // AS/NZS 4671:2001, mass per metre: within 4.5 % of nominal. A 12 mm bar weighs 0.848 to 0.928 kg/m.
    ['nz', 12, 0.848, 0.928],
    ['au', 12, 0.848, 0.928],
    // BS 4449:2005+A3:2016, mass per metre: 4.5 % over 8 mm, 6 % to 8 mm.
    ['eu', 12, 0.848, 0.928],
    ['eu', 8, 0.371, 0.418],
  ] as const)('%s: a %i mm bar weighs %f to %f kg/m', (family, diameter, low, high) => {
    const { steel } = codeFamily(family)
    const size = steel.barSize({ diameter })
    const { minus, plus } = steel.massTolerance({ diameter })
    const mass = size.known ? size.value.massPerMetre : Number.NaN
    expect(mass * (1 - (minus ?? Number.NaN))).toBeCloseTo(low, 3)
    expect(mass * (1 + (plus ?? Number.NaN))).toBeCloseTo(high, 3)
  })

  it('computed, second method: a bar that weighs π d² / 4 × 7850 kg/m³ is a bar of d', () => {
    for (const d of [6, 10, 12, 16, 25, 40]) {
      const mass = Math.PI * (d / 2000) ** 2 * 2.5 * 7850
      expect(weighedDiameter({ length: 2500, mass })).toBeCloseTo(d, 9)
    }
  })

  it.each([
    // AS/NZS 4671:2001, length of bars as supplied: to 7 m +0/−40, under 12 m ±40, from 12 m +60/−40.
    [7000, 0],
    [7001, 40],
    [11_999, 40],
    [12_000, 60],
  ])('nz: a bar of %i mm may be %i mm over and 40 under', (length, plus) => {
    expect(codeFamily('nz').steel.delivered.lengthTolerance({ length })).toMatchObject({ minus: 40, plus })
  })

  it.each([
    // AS/NZS 4671:2019, tensile properties.
    ['nz', '300E', 16, { yieldLow: 300, yieldHigh: 380, ratioLow: 1.15, ratioHigh: 1.5, uniformLow: 15 }],
    ['nz', '500E', 16, { yieldLow: 500, yieldHigh: 600, ratioLow: 1.15, ratioHigh: 1.4, uniformLow: 10 }],
    ['au', '500N', 16, { yieldLow: 500, yieldHigh: 650, ratioLow: 1.08, ratioHigh: null, uniformLow: 5 }],
    // BS 4449:2005+A3:2016, 7.2.3.
    ['eu', 'B500A', 10, { ratioLow: 1.05, uniformLow: 2.5 }],
    ['eu', 'B500A', 6, { ratioLow: 1.02, uniformLow: 1 }],
    ['eu', 'B500B', 16, { yieldHigh: 650, ratioLow: 1.08, uniformLow: 5 }],
    ['eu', 'B500C', 16, { ratioLow: 1.15, ratioHigh: 1.35, uniformLow: 7.5 }],
  ] as const)('%s %s: limits of a tensile test', (family, grade, diameter, limits) => {
    expect(codeFamily(family).steel.delivered.tensile({ grade, diameter })).toMatchObject(limits)
  })

  it('ASTM A615, tensile requirements: Grade 60 by bar number', () => {
    const limits = (diameter: number) => codeFamily('us').steel.delivered.tensile({ grade: '60', diameter })
    expect(limits(15.875)?.yieldLow).toBeCloseTo(413.7, 1)
    expect(limits(15.875)?.strengthLow).toBeCloseTo(620.5, 1)
    expect([15.875, 25.4, 28.65].map((diameter) => limits(diameter)?.elongationLow)).toEqual([9, 8, 7])
  })

  it('ASTM A706/A706M-16, Table 2: Grades 60 and 80 by bar number', () => {
    const limits = (grade: string, diameter: number) =>
      codeFamily('us').steel.delivered.tensile({ grade, diameter, standards: ['ASTM A706'] })
    expect(limits('60', 15.875)?.yieldHigh).toBeCloseTo(537.8, 1)
    expect(limits('60', 15.875)?.strengthLow).toBeCloseTo(551.6, 1)
    expect(limits('60', 15.875)?.ratioLow).toBe(1.25)
    expect([15.875, 25.4, 43.0].map((diameter) => limits('60', diameter)?.elongationLow)).toEqual([
      14, 12, 10,
    ])
    expect(limits('80', 15.875)?.yieldHigh).toBeCloseTo(675.7, 1)
    expect(limits('40', 15.875)).toBeNull()
  })

  it('EN 10080:2005, 10: five normal ribs after the start pair are the United Kingdom, Ireland or Iceland', () => {
    const read = countRibs([...'ttnnnnntnntntt'] as Rib[])
    const found = codeFamily('eu').steel.identify({ seen: read.counts.map(String) })
    expect(found.notes.join()).toContain('United Kingdom')
  })
})
