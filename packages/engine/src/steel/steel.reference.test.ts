import { describe, expect, it } from 'vitest'
import { leastBendByCrushing } from '../codes/eu/en1992-1-1-2004/bend.ts'
import { type BarRole, codeFamily, type FamilyId, type LapInput } from '../codes/index.ts'
import { barMass } from './bar-mass.ts'
import { checkBend } from './bend.ts'
import { bendDeduction, cutLength } from './cut-length.ts'
import { parseCutList } from './cutting/list.ts'
import { cutPlan } from './cutting/plan.ts'
import { crossings } from './ties.ts'

const PSI = 0.006894757293168

function rules(family: FamilyId) {
  return codeFamily(family).steel
}

describe('mass and area of bars', () => {
  // EN 10080:2005 Table 6, BS 4449 Table 7: nominal area at 7.85 kg/dm³; π d²/4 · 7850, computed again apart.
  it.each([
    [6, 28.3, 0.222],
    [8, 50.3, 0.395],
    [10, 78.5, 0.617],
    [12, 113.1, 0.888],
    [16, 201.1, 1.578],
    [20, 314.2, 2.466],
    [25, 490.9, 3.853],
    [32, 804.2, 6.313],
    [40, 1256.6, 9.865],
  ])('%d mm: %d mm², %d kg/m', (diameter, area, mass) => {
    const size = rules('eu').barSize({ diameter })
    expect(size.known && size.value.area).toBeCloseTo(area, 1)
    expect(size.known && Math.abs(size.value.massPerMetre - mass)).toBeLessThan(0.001)
  })

  // ASTM A706/A706M-16 Table 1, read as printed.
  it.each([
    [15.875, 'No. 5', 199, 1.552],
    [25.4, 'No. 8', 510, 3.973],
    [35.814, 'No. 11', 1006, 7.907],
  ])('us bar of %d mm is %s', (diameter, name, area, massPerMetre) => {
    expect(rules('us').barSize({ diameter })).toMatchObject({ value: { name, area, massPerMetre } })
  })

  it('185.24 m of 12 mm weigh 164.5 kg (computed, second method: by hand)', () => {
    const mass = barMass({ rules: rules('nz'), diameter: 12, cutLength: 185_240 })
    expect(mass.known && mass.value).toBeCloseTo(164.46, 2)
  })

  it('a 12 mm bar weighs 0.848 to 0.928 kg/m (AS/NZS 4671:2001, 4.5 %)', () => {
    const { minus, plus } = rules('nz').massTolerance({ diameter: 12 })
    expect(0.88781 * (1 - (minus ?? 0))).toBeCloseTo(0.848, 3)
    expect(0.88781 * (1 + (plus ?? 0))).toBeCloseTo(0.928, 3)
  })
})

describe('least inside diameter of bends', () => {
  const bends: readonly [FamilyId, number, string, BarRole, boolean, boolean, number, string][] = [
    ['nz', 12, '500E', 'main', false, false, 60, 'NZS 3109:1997 Table 3.1'],
    ['nz', 16, '500E', 'main', false, false, 80, 'NZS 3109:1997 Table 3.1'],
    ['nz', 25, '500E', 'main', false, false, 150, 'NZS 3109:1997 Table 3.1'],
    ['nz', 32, '500E', 'main', false, false, 192, 'NZS 3109:1997 Table 3.1'],
    ['nz', 40, '500E', 'main', false, false, 240, 'NZS 3109:1997 Table 3.1'],
    ['nz', 10, '300E', 'stirrup', false, false, 40, 'NZS 3109:1997 Table 3.1'],
    ['nz', 10, '300E', 'stirrup', true, false, 20, 'NZS 3109:1997 Table 3.1'],
    ['nz', 24, '300E', 'stirrup', false, false, 144, 'NZS 3109:1997 Table 3.1'],
    ['au', 10, '250N', 'stirrup', true, false, 30, 'AS 3600:2018 17.2.3.2, from memory'],
    ['au', 12, '500N', 'stirrup', false, false, 48, 'AS 3600:2018 17.2.3.2, from memory'],
    ['au', 16, '500N', 'main', false, true, 80, 'AS 3600:2018 17.2.3.2'],
    ['au', 20, '500N', 'main', false, true, 160, 'AS 3600:2018 17.2.3.2'],
    ['eu', 16, 'B500B', 'main', false, false, 64, 'EN 1992-1-1:2004 Table 8.1N'],
    ['eu', 20, 'B500B', 'main', false, false, 140, 'EN 1992-1-1:2004 Table 8.1N'],
    ['eu', 32, 'B500B', 'main', false, false, 224, 'EN 1992-1-1:2004 Table 8.1N'],
    ['us', 25.4, '60', 'main', false, false, 152.4, 'ACI 318-19 Table 25.3.1'],
    ['us', 28.65, '60', 'main', false, false, 229.2, 'ACI 318-19 Table 25.3.1'],
    ['us', 12.7, '60', 'stirrup', false, false, 50.8, 'ACI 318-19 Table 25.3.2'],
    ['us', 25.4, '60', 'main', false, true, 203.2, 'ASTM A767 Table 2'],
  ]
  it.each(bends)(
    '%s %d mm %s %s, plain %s, galvanised %s: %d mm (%s)',
    (family, diameter, grade, role, plain, galvanised, limit) => {
      const bend = rules(family).leastBend({ diameter, grade, role, plain, galvanised })
      expect(bend.known && bend.value).toBeCloseTo(limit, 1)
    },
  )

  it('crushing inside the bend: 16 mm at 434.8 MPa, ab 50, fcd 17: 263.5 mm (EN 1992-1-1:2004 (8.1))', () => {
    const bend = leastBendByCrushing({ diameter: 16, force: (201.06 * 434.8) / 1000, ab: 50, fcd: 17 })
    expect(bend.known && bend.value).toBeCloseTo(263.5, 1)
  })

  it.each([
    ['eu', -2, 'pass', 'EN 13670:2009 6.3: down to −5 °C'],
    ['nz', -2, 'fail', 'BRANZ Build Right: not below 5 °C'],
  ] as const)('%s at %d °C: %s (%s)', (family, temperature, verdict, _source) => {
    const { cold } = checkBend({
      rules: rules(family),
      diameter: 12,
      grade: family === 'eu' ? 'B500B' : '500E',
      role: 'main',
      plain: false,
      galvanised: false,
      inside: 100,
      temperature,
    })
    expect(cold?.verdict).toBe(verdict)
  })
})

describe('development and laps', () => {
  const base = { bond: 'good', share: 100, apart: 0, below: 100, gap: 1000 } as const
  const laps: readonly [FamilyId, string, Partial<LapInput>, number, number | null, string][] = [
    [
      'nz',
      'HD12, 30 MPa, no credit for cover',
      { diameter: 12, yield: 500, concrete: 30, cover: 18 },
      547.7,
      547.7,
      'NZS 3101:2006 8.6.3, from memory',
    ],
    [
      'nz',
      'the same as top bar',
      { diameter: 12, yield: 500, concrete: 30, cover: 18, below: 301 },
      712.0,
      712.0,
      'NZS 3101:2006 8.6.3, from memory',
    ],
    [
      'nz',
      'HD12, 40 MPa, cover 40',
      { diameter: 12, yield: 500, concrete: 40, cover: 40 },
      316.2,
      316.2,
      'NZS 3101:2006 8.6.3, from memory',
    ],
    [
      'nz',
      'HD16, 40 MPa, cover 30',
      { diameter: 16, yield: 500, concrete: 40, cover: 30 },
      532.6,
      532.6,
      'NZS 3101:2006 8.6.3, from memory',
    ],
    [
      'nz',
      'D10 300E, 25 MPa',
      { diameter: 10, yield: 300, concrete: 25, cover: 10 },
      300,
      300,
      'NZS 3101:2006 8.6.3, from memory',
    ],
    [
      'au',
      'N12, 25 MPa, cd 20',
      { diameter: 12, yield: 500, concrete: 25, cover: 20 },
      450,
      562.5,
      'AS 3600:2018 13.1.2.2; Concrete Institute of Australia Z6-2010 Example 6.1 prints 570',
    ],
    [
      'au',
      'N16, 25 MPa, cd 20',
      { diameter: 16, yield: 500, concrete: 25, cover: 20 },
      663.8,
      829.7,
      'Concrete Institute of Australia Z6-2010: 830',
    ],
    [
      'au',
      'N16, 40 MPa, cd 30',
      { diameter: 16, yield: 500, concrete: 40, cover: 30 },
      473.7,
      592.1,
      'AS 3600:2018 13.1.2.2',
    ],
    [
      'au',
      'the same as top bar',
      { diameter: 16, yield: 500, concrete: 40, cover: 30, below: 301 },
      615.8,
      769.7,
      'AS 3600:2018 13.1.2.2',
    ],
    [
      'au',
      'N12, 40 MPa, cd 30: least length on the lap',
      { diameter: 12, yield: 500, concrete: 40, cover: 30 },
      348,
      382.9,
      'AS 3600:2018 13.2.2, from memory',
    ],
    [
      'au',
      'N20, 32 MPa, bars of the lap 150 apart',
      { diameter: 20, yield: 500, concrete: 32, cover: 40, apart: 150 },
      670.8,
      895.8,
      'AS 3600:2018 13.2.2, from memory',
    ],
    [
      'eu',
      '12 mm, C25, cd 35',
      { diameter: 12, yield: 500, concrete: 25, cover: 35 },
      345.1,
      517.6,
      'EN 1992-1-1:2004 8.4.4, 8.7.3',
    ],
    [
      'eu',
      'the same, poor bond',
      { diameter: 12, yield: 500, concrete: 25, cover: 35, bond: 'poor' },
      493.0,
      739.4,
      'EN 1992-1-1:2004 8.4.2',
    ],
    [
      'eu',
      '12 mm, C30, cd 25',
      { diameter: 12, yield: 500, concrete: 30, cover: 25 },
      359.2,
      538.8,
      'EN 1992-1-1:2004, fctk,0.05 not rounded',
    ],
    [
      'eu',
      '16 mm, C40, cd 30',
      { diameter: 16, yield: 500, concrete: 40, cover: 30 },
      410.1,
      615.1,
      'EN 1992-1-1:2004, fctk,0.05 not rounded',
    ],
    [
      'eu',
      '20 mm, C30, cd 25, poor bond',
      { diameter: 20, yield: 500, concrete: 30, cover: 25, bond: 'poor' },
      982.8,
      1474.3,
      'EN 1992-1-1:2004, fctk,0.05 not rounded',
    ],
    [
      'eu',
      '12 mm, C30, bars of the lap 80 apart',
      { diameter: 12, yield: 500, concrete: 30, cover: 25, apart: 80 },
      359.2,
      570.8,
      'EN 1992-1-1:2004 8.7.2(3)',
    ],
    [
      'eu',
      '12 mm, C30, a third lapped',
      { diameter: 12, yield: 500, concrete: 30, cover: 25, share: 33 },
      359.2,
      412.7,
      'EN 1992-1-1:2004 Table 8.3',
    ],
    [
      'us',
      'No. 5, 5000 psi, cover 0.75 in',
      { diameter: 15.875, yield: 60_000 * PSI, concrete: 5000 * PSI, cover: 0.75 * 25.4 },
      18.7175 * 25.4,
      24.3328 * 25.4,
      'ACI 318-19 25.4.2.4',
    ],
    [
      'us',
      'No. 6, 6000 psi, grade 80, cover 1.5 in',
      { diameter: 19.05, yield: 80_000 * PSI, concrete: 6000 * PSI, cover: 1.5 * 25.4 },
      21.3789 * 25.4,
      27.7925 * 25.4,
      'ACI 318-19 25.4.2.4, from memory',
    ],
  ]
  it.each(laps)('%s %s', (family, _, bar, development, length) => {
    const lap = rules(family).lap({ ...base, ...(bar as LapInput) })
    expect(lap.known && lap.value.development).toBeCloseTo(development, 0)
    expect(lap.known && lap.value.length).toBeCloseTo(length ?? 0, 0)
  })

  it('lb,rqd of 12 mm in C25 is 484 mm, 692 in poor bond (worked sheets of EN 1992-1-1:2004 8.4)', () => {
    for (const [bond, required] of [
      ['good', 484.3],
      ['poor', 691.9],
    ] as const) {
      const lap = rules('eu').lap({ ...base, diameter: 12, yield: 500, concrete: 25, cover: 35, bond })
      const step = lap.known ? lap.working.find(({ symbol }) => symbol === 'lb,rqd') : undefined
      expect(step?.result).toBeCloseTo(required, 1)
    }
  })

  // AS 3600 development tables of an Australian sheet, f′c 25, k3 1, rounded up to 10 mm.
  it.each([
    [20, 900],
    [24, 1120],
    [28, 1350],
    [32, 1600],
    [36, 1880],
    [40, 2180],
  ])('au N%d at k3 1 rounds up to %d', (diameter, printed) => {
    const lap = rules('au').lap({ ...base, diameter, yield: 500, concrete: 25, cover: diameter })
    expect(lap.known && Math.ceil(lap.value.development / 10 - 1e-9) * 10).toBe(printed)
  })
})

describe('identification', () => {
  it('five normal ribs: United Kingdom, Ireland or Iceland (EN 10080:2005)', () => {
    const { notes } = rules('eu').identify({ seen: ['2 thick', '5 ribs'] })
    expect(notes[0]).toMatch(/United Kingdom, Ireland or Iceland/)
  })

  it.each([
    [['two lines'], ['75']],
    [['3 lines'], ['80', '100']],
    [['N', '4', 'S', '60'], ['60']],
    [['N', '13', 'W', '4'], ['60']],
    [['N', '5', 'S'], ['40']],
  ])('us %j: grade %j (CRSI, Identification)', (seen, grades) => {
    expect(
      rules('us')
        .identify({ seen })
        .candidates.map(({ grade }) => grade),
    ).toEqual(grades)
  })
})

describe('cut lengths and spacing', () => {
  // Geometry: computed, second method: tangent and arc lengths summed by hand; outside dimensions.
  it.each([
    [12, 60, 90, 27.45],
    [12, 48, 45, 6.26],
    [16, 64, 90, 33.17],
    [20, 140, 90, 54.34],
  ])('a bend of %d mm on %d at %d° takes off %d mm', (diameter, inside, turn, deduction) => {
    expect(bendDeduction({ diameter, inside, turn })).toBeCloseTo(deduction, 2)
  })

  it.each([
    [12, 60, [600, 300], [90], 872.5, 'L'],
    [12, 48, [600, 400], [90], 975.1, 'BS 8666 shape 11 gives 976'],
    [16, 200, [800, 500], [90], 1237.6, 'BS 8666 shape 12 gives 1237.8'],
    [16, 64, [500, 1200, 500], [90], 2133.7, 'BS 8666 shape 21 gives 2136'],
    [10, 40, [110, 300, 500, 300, 500, 110], [135, 90, 90, 90, 135], 1755.6, 'tie, tails of 80'],
    [12, 48, [108, 250, 600, 250, 600, 108], [135, 90, 90, 90, 135], 1838.7, 'tie, tails of 72'],
    [
      12,
      60,
      [1000, 107],
      [180],
      1000 - 42 + 65 + 113.1,
      '180° hook adds 178.1 mm past the tangent (NZS 3101:2006 8.4.2.1)',
    ],
  ])('%d mm, inside %d, legs %j, turns %j: %d mm (%s)', (diameter, inside, legs, turns, length) => {
    const cut = cutLength({ diameter, inside, legs, turns })
    expect(cut.known && Math.abs(cut.value.length - length)).toBeLessThan(0.1)
  })

  it.each([
    ['eu', 16, 20, 25, 'EN 1992-1-1:2004 8.2(2), from memory'],
    ['eu', 25, 16, 25, 'EN 1992-1-1:2004 8.2(2), from memory'],
    ['us', 25.4, 19.05, 25.4, 'ACI 318-19 25.2.1, from memory'],
    ['us', 25.4, 25.4, 33.87, 'ACI 318-19 25.2.1, from memory'],
  ] as const)(
    '%s clear between %d mm bars, aggregate %d: %d mm (%s)',
    (family, diameter, aggregate, clear, _source) => {
      const least = rules(family).clearSpacing({ diameter, aggregate })
      expect(least.known && least.value).toBeCloseTo(clear, 2)
    },
  )

  it('bars of 200 and 120 spacing may be off by 20 and 15 mm (AS 3600:2018 17.5.3)', () => {
    expect(rules('au').spacingTolerance({ spacing: 200 })).toMatchObject({ minus: 20, plus: 20 })
    expect(rules('au').spacingTolerance({ spacing: 120 })).toMatchObject({ minus: 15, plus: 15 })
  })

  it('a scheduled 1500 takes +5 and −10 (BS 8666:2020 Table 7, from memory); a fitment of 300 takes +0 and −15 (AS 3600:2018 17.2.2)', () => {
    expect(rules('eu').legTolerance({ leg: 1500, role: 'main', plain: false })).toMatchObject({
      minus: 10,
      plus: 5,
    })
    expect(rules('au').legTolerance({ leg: 300, role: 'stirrup', plain: false })).toMatchObject({
      minus: 15,
      plus: 0,
    })
  })

  it('31 × 16 bars: 496 crossings, 90 on the rim, 293 to tie (Concrete Construction, bar placing, part III)', () => {
    const grid = (rows: number, from: number, to: number, step: number) =>
      Array.from({ length: rows }, (_, row) => ({ row, at: 46 + row * step, from, to }))
    const found = crossings({
      alongX: grid(16, 40, 5960, 2908 / 15),
      alongY: grid(31, 40, 2960, 5908 / 30),
    })
    expect(found).toEqual({ all: 496, rim: 90, tied: 293 })
  })
})

describe('cutting plans', () => {
  // Optimum proven apart: a plan found, and prices checked against every full pattern in exact fractions.
  const cases: readonly [string, number, string, number, number, string][] = [
    [
      'paper rolls',
      5600,
      '2200:20 2150:18 2140:16 2100:14 2050:12 2000:10 1930:20 1880:18 1820:18 1710:14 1560:12 1520:25 1380:22',
      73,
      875 / 12,
      'published example of a paper mill, optimum 73',
    ],
    [
      'gallery',
      100,
      '45:97 36:610 31:395 14:211',
      453,
      1809 / 4,
      'published model cutstock; optimum computed, second method: exact fractions',
    ],
    [
      'textbook',
      110,
      '75:8 55:10 50:24 45:35 20:48',
      47,
      185 / 4,
      'Fourer, Gay, Kernighan: AMPL, chapter on cutting; data from memory',
    ],
    ['not rounding', 132, '44:2 33:3 12:6', 3, 259 / 132, 'Fieldhouse 1990 family; data from memory'],
    [
      'bars of 12 m',
      12000,
      '5400:14 3775:22 2950:18 2150:30 1350:25',
      27,
      1151 / 44,
      'computed, second method: exact fractions',
    ],
    [
      'bars of 6 m',
      6000,
      '2950:11 2400:9 1750:16 1250:13 875:20',
      20,
      137 / 7,
      'computed, second method: exact fractions',
    ],
    [
      'bars of 9 m',
      9000,
      '4200:7 3300:11 2675:9 1800:16',
      14,
      69 / 5,
      'computed, second method: exact fractions',
    ],
    ['round sizes', 12000, '5000:4 4000:6 3000:4', 5, 14 / 3, 'computed, second method: exact fractions'],
  ]
  it.each(cases)('%s', async (_, length, text, optimum, relaxation) => {
    const pieces = text.split(' ').map((item) => {
      const [each, count] = item.split(':').map(Number)
      return { length: each ?? 0, count: count ?? 0 }
    })
    const plan = await cutPlan({ list: parseCutList({ stock: [{ length }], pieces }), within: 10 })
    expect(plan.stockLength).toBe(optimum * length)
    expect(plan.proven).toBe(true)
    // Patterns that never cut more of a size than is asked make the relaxation a little stronger than the textbook one.
    expect(plan.lowerBound).toBeGreaterThan(relaxation * length * (1 - 1e-7))
    expect(plan.lowerBound).toBeLessThanOrEqual(plan.stockLength)
  })

  it('four of 1500 from 6000 without kerf, three with a kerf of 3 (computed, second method: by hand)', async () => {
    for (const [kerf, bars] of [
      [0, 1],
      [3, 2],
    ] as const) {
      const list = parseCutList({ stock: [{ length: 6000 }], kerf, pieces: [{ length: 1500, count: 4 }] })
      expect((await cutPlan({ list, within: 5 })).stockLength).toBe(bars * 6000)
    }
  })
})
