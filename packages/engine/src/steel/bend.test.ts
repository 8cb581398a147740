import { describe, expect, it } from 'vitest'
import { type BarRole, codeFamily, type FamilyId } from '../codes/index.ts'
import { checkBend } from './bend.ts'

function bend(
  family: FamilyId,
  diameter: number,
  {
    grade = '500E',
    role = 'main',
    plain = false,
    galvanised = false,
    inside = 1000,
    temperature = null,
  }: {
    grade?: string
    role?: BarRole
    plain?: boolean
    galvanised?: boolean
    inside?: number
    temperature?: number | null
  } = {},
) {
  const { rules } = { rules: codeFamily(family).steel }
  return checkBend({ rules, diameter, grade, role, plain, galvanised, inside, temperature })
}

describe('least bend, at the edges of each table', () => {
  it('New Zealand: 6 to 20, 24 to 40 mm; between and outside not known', () => {
    expect(bend('nz', 6).limit).toBe(30)
    expect(bend('nz', 20).limit).toBe(100)
    expect(bend('nz', 24).limit).toBe(144)
    expect(bend('nz', 40).limit).toBe(240)
    for (const diameter of [5.9, 20.1, 23.9, 40.1]) expect(bend('nz', diameter).verdict).toBe('unknown')
    expect(bend('nz', 24, { role: 'stirrup', plain: true }).limit).toBe(72)
    expect(bend('nz', 24.1, { role: 'stirrup' }).verdict).toBe('unknown')
    expect(bend('nz', 16, { galvanised: true }).limit).toBe(80)
    expect(bend('nz', 20, { galvanised: true }).limit).toBe(160)
    expect(bend('nz', 18, { galvanised: true }).verdict).toBe('unknown')
    expect(bend('nz', 16, { galvanised: true, plain: true }).verdict).toBe('unknown')
  })

  it('Australia: 500N fitments 4 db, others 3 db; galvanised 5 and 8 db', () => {
    expect(bend('au', 12, { grade: '500N', role: 'stirrup' }).limit).toBe(48)
    expect(bend('au', 12, { grade: '500L', role: 'stirrup' }).limit).toBe(36)
    expect(bend('au', 16, { grade: '500N', role: 'stirrup', galvanised: true }).limit).toBe(80)
    expect(bend('au', 18, { grade: '500N', galvanised: true }).verdict).toBe('unknown')
    expect(bend('au', 50.1, { grade: '500N' }).verdict).toBe('unknown')
  })

  it('Europe: 4φ to 16 mm, 7φ above; galvanised not known', () => {
    expect(bend('eu', 16).limit).toBe(64)
    expect(bend('eu', 16.1).limit).toBeCloseTo(112.7, 9)
    expect(bend('eu', 50.1).verdict).toBe('unknown')
    expect(bend('eu', 12, { galvanised: true }).verdict).toBe('unknown')
  })

  it('United States: by bar number within half a millimetre; ties end at No. 8', () => {
    expect(bend('us', 25.9, { grade: '60' }).limit).toBeCloseTo(152.4, 9)
    expect(bend('us', 25.91, { grade: '60' }).verdict).toBe('unknown')
    expect(bend('us', 43, { grade: '60' }).limit).toBeCloseTo(430, 0)
    expect(bend('us', 25.4, { grade: '60', role: 'stirrup' }).limit).toBeCloseTo(152.4, 9)
    expect(bend('us', 28.65, { grade: '60', role: 'stirrup' }).verdict).toBe('unknown')
    expect(bend('us', 16, { grade: '60', plain: true }).verdict).toBe('unknown')
    expect(bend('us', 25.4, { grade: '40', galvanised: true }).limit).toBeCloseTo(152.4, 9)
    expect(bend('us', 25.4, { grade: '80', galvanised: true }).verdict).toBe('unknown')
  })
})

describe('go or no-go', () => {
  it('equal passes, a hair under fails', () => {
    expect(bend('nz', 16, { inside: 80 }).verdict).toBe('pass')
    expect(bend('nz', 16, { inside: 79.999 }).verdict).toBe('fail')
  })

  it('too cold fails even where the limit is not known: a fail outranks', () => {
    expect(bend('nz', 22, { temperature: 0 }).verdict).toBe('fail')
    expect(bend('nz', 22, { temperature: 10 }).verdict).toBe('unknown')
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0, -16])(
    'a diameter or inside of %d is unknown and named',
    (bad) => {
      expect(bend('nz', bad)).toMatchObject({ limit: null, verdict: 'unknown' })
      expect(bend('nz', 16, { inside: bad }).verdict).toBe('unknown')
      expect(bend('nz', 16, { inside: bad }).unknown.join()).toContain('inside')
      if (!Number.isFinite(bad))
        expect(bend('nz', 16, { temperature: bad }).unknown.join()).toContain('temperature')
    },
  )
})

describe('sources that differ on the coldest bar', () => {
  it('Europe passes from −5 °C; under +5 °C the withdrawn standard is told', () => {
    const notes = (temperature: number) => bend('eu', 12, { grade: 'B500B', temperature }).notes
    expect(notes(4.9)).toEqual(['BS 8110 (withdrawn) asked for 5 °C: sources differ.'])
    expect(notes(5)).toEqual([])
    // Where the bend fails the milder limit nothing is added.
    expect(notes(-5.1)).toEqual([])
  })
})
