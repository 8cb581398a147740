import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { replay } from '../working/replay.ts'
import { leastEndLeg, legLimits, madeLeg } from './bend-legs.ts'

const nz = codeFamily('nz').steel
const eu = codeFamily('eu').steel
const TIE = { rules: nz, diameter: 12, inside: 48, role: 'stirrup', plain: false } as const

describe('least leg past the last bend', () => {
  it('is what the bend takes up and the tail: 24 + 12 + 72 of a 12 mm tie at 135°', () => {
    expect(leastEndLeg({ ...TIE, turn: 135 })).toMatchObject({ value: 108 })
  })

  it('in Europe the table of end legs governs where it asks for more', () => {
    const main = { rules: eu, diameter: 12, inside: 48, turn: 90, role: 'main', plain: false } as const
    expect(leastEndLeg(main)).toMatchObject({ value: 125 })
    // A wider bend takes up more than the table's least radius does.
    expect(leastEndLeg({ ...main, inside: 200 })).toMatchObject({ value: 100 + 12 + 60 })
  })

  it('every step replays', () => {
    for (const rules of [nz, eu]) {
      for (const turn of [90, 180]) {
        const leg = leastEndLeg({ rules, diameter: 16, inside: 80, turn, role: 'main', plain: false })
        for (const step of leg.working ?? []) {
          const again = replay(step)
          if (again !== null) expect(again).toBeCloseTo(Number(step.result), 9)
        }
      }
    }
  })

  it.each([
    [{ diameter: 0 }, 'diameter'],
    [{ inside: Number.NaN }, 'inside'],
    [{ turn: 0 }, 'turn'],
    [{ turn: 181 }, 'turn'],
    [{ turn: 100 }, 'turn'],
  ])('%j: not known, the field is named', (change, field) => {
    const leg = leastEndLeg({ ...TIE, turn: 90, ...change })
    expect(leg.known).toBe(false)
    if (!leg.known) expect(leg.gaps.join()).toContain(field)
  })
})

describe('legs of a bar', () => {
  it('end legs by their outside size, a leg between bends by its straight', () => {
    const limits = legLimits({ ...TIE, legs: [108, 250, 600, 250, 600, 107], turns: [135, 90, 90, 90, 135] })
    expect(limits.map(({ what, verdict }) => `${what}: ${verdict}`)).toEqual([
      'end leg: pass',
      'straight between bends: pass',
      'straight between bends: pass',
      'straight between bends: pass',
      'straight between bends: pass',
      'end leg: fail',
    ])
    expect(limits[1]?.found).toBeCloseTo(250 - 36 - 36, 9)
  })

  it('a straight of 48 mm between bends of a 12 mm bar is enough, 47 is not (4 d, BS 8666:2005)', () => {
    const bar = { ...TIE, turns: [90, 90] }
    const middle = (leg: number) => legLimits({ ...bar, legs: [300, leg, 300] })[1]
    expect(middle(120)?.found).toBeCloseTo(48, 9)
    expect(middle(120)?.verdict).toBe('pass')
    expect(middle(119)?.verdict).toBe('fail')
  })

  it('a size that is missing leaves no number', () => {
    for (const change of [{ inside: Number.NaN }, { diameter: Number.NaN }]) {
      const limits = legLimits({ ...TIE, ...change, legs: [300, 300, 300], turns: [90, 90] })
      expect(limits.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'unknown'])
      expect(limits[1]?.found).toBeNull()
    }
  })

  it('a turn that is missing is not known; a straight bar has nothing to say', () => {
    expect(legLimits({ ...TIE, legs: [300, 300, 300], turns: [90] }).map(({ verdict }) => verdict)).toEqual([
      'pass',
      'unknown',
      'unknown',
    ])
    expect(legLimits({ ...TIE, legs: [300], turns: [] })).toEqual([])
  })
})

describe('a leg as made', () => {
  it('without a size or without a confirmed tolerance it is not known', () => {
    const bar = { diameter: 12, cutLength: null, role: 'main', plain: false } as const
    const leg = { ...bar, rules: eu, leg: 300, made: Number.NaN }
    expect(madeLeg(leg)).toMatchObject({ verdict: 'unknown', unknown: [expect.stringMatching(/^made/)] })
    expect(madeLeg({ ...leg, rules: nz, made: 300 })).toMatchObject({
      verdict: 'unknown',
      unknown: [expect.stringMatching(/^leg: no confirmed/)],
    })
  })
})
