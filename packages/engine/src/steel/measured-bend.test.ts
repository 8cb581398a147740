import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { replay } from '../working/replay.ts'
import { arcDiameter, type BendReading, measuredBend, OVER_RIBS } from './measured-bend.ts'

const SEED = 20_261_125

function measured(
  reading: BendReading,
  { plain = false, temperature = null as number | null, diameter = 16 } = {},
) {
  const rules = codeFamily('nz').steel
  return measuredBend({
    rules,
    diameter,
    grade: plain ? '300E' : '500E',
    role: 'main',
    plain,
    galvanised: false,
    temperature,
    reading,
  })
}

describe('a bend from what was measured on it', () => {
  it('80 mm chord and 20 mm rise are a curve of 100 mm (computed, second method: circle through three points)', () => {
    expect(arcDiameter(80, 20)).toBe(100)
  })

  it('passes where the whole range passes, fails where all of it fails, else cannot tell; 16 mm: at least 80 mm', () => {
    expect(measured({ by: 'inside', inside: 82, error: 2 })).toMatchObject({ verdict: 'pass', margin: 0 })
    expect(measured({ by: 'inside', inside: 81.9, error: 2 }).verdict).toBe('unknown')
    expect(measured({ by: 'inside', inside: 78, error: 2 }).verdict).toBe('unknown')
    expect(measured({ by: 'inside', inside: 77.9, error: 2 }).verdict).toBe('fail')
  })

  it('takes the bar off an outside reading, over its ribs on the strict side', () => {
    const hook = measured({ by: 'outside', outside: 116, error: 0 })
    expect(hook.inside).toBe(84)
    expect(hook.least).toBeCloseTo(116 - 2 * OVER_RIBS * 16, 9)
    expect(hook.assumed[0]?.field).toBe('overRibs')
    expect(measured({ by: 'outside', outside: 116, error: 0 }, { plain: true }).assumed).toEqual([])
  })

  it('a rise no larger than its error bounds nothing above: it can pass, never fail', () => {
    const flat = measured({ by: 'chord', face: 'inside', chord: 20, rise: 0.5, error: 1 })
    expect(flat.most).toBeNull()
    expect(flat.verdict).not.toBe('fail')
  })

  it.each([
    [{ by: 'inside', inside: Number.NaN, error: 1 }, 'inside'],
    [{ by: 'inside', inside: 80, error: -1 }, 'error'],
    [{ by: 'chord', face: 'inside', chord: 40, rise: 21, error: 0 }, 'rise'],
    [{ by: 'chord', face: 'inside', chord: 0, rise: 1, error: 0 }, 'chord'],
    [{ by: 'outside', outside: Number.POSITIVE_INFINITY, error: 0 }, 'outside'],
  ] as const)('%j is not known, and names what is wrong', (reading, name) => {
    const found = measured(reading)
    expect(found.verdict).toBe('unknown')
    expect(found.inside).toBeNull()
    expect(found.unknown.join()).toContain(name)
  })

  it('a bar too cold fails whatever its bend', () => {
    const cold = measured({ by: 'inside', inside: 120, error: 1 }, { temperature: -10 })
    expect(cold.verdict).toBe('fail')
  })

  it(`any arc is found again from its chord and rise, and readings within their error keep it in the range (seed ${SEED})`, () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        real(20, 400),
        real(0.2, Math.PI),
        fc.boolean(),
        real(0, 1),
        real(-1, 1),
        real(-1, 1),
        (inside, turn, outer, error, e1, e2) => {
          const face = outer ? 'outside' : 'inside'
          const radius = inside / 2 + (outer ? 16 : 0)
          const chord = 2 * radius * Math.sin(turn / 2)
          const rise = radius * (1 - Math.cos(turn / 2))
          const exact = measured(
            { by: 'chord', face, chord, rise: Math.min(rise, chord / 2), error: 0 },
            { plain: true },
          )
          expect(exact.inside ?? Number.NaN).toBeCloseTo(inside, 6)
          const read = { chord: chord + e1 * error, rise: rise + e2 * error }
          fc.pre(read.rise > 0 && read.rise <= read.chord / 2)
          const found = measured({ by: 'chord', face, ...read, error }, { plain: true })
          expect(found.least ?? Number.NaN).toBeLessThanOrEqual(inside + 1e-6)
          expect(found.most ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(inside - 1e-6)
        },
      ),
      { seed: SEED, numRuns: 400 },
    )
  })

  it('each step replays', () => {
    const readings: BendReading[] = [
      { by: 'chord', face: 'inside', chord: 60, rise: 12, error: 0.5 },
      { by: 'chord', face: 'outside', chord: 90, rise: 22, error: 0.5 },
      { by: 'outside', outside: 120, error: 1 },
    ]
    for (const step of readings.flatMap((reading) => measured(reading).working)) {
      const again = replay(step)
      if (again !== null)
        expect(Math.abs(again - Number(step.result))).toBeLessThan(1e-9 * Math.max(1, again))
    }
  })
})

describe('a reading that cannot be of this bar', () => {
  const bar = {
    rules: codeFamily('nz').steel,
    diameter: 16,
    grade: '500E',
    role: 'main',
    plain: false,
    galvanised: false,
    temperature: null,
  } as const

  it.each([
    [{ by: 'outside', outside: 32, error: 1 }, /^outside/],
    [{ by: 'outside', outside: 10, error: 1 }, /^outside/],
    [{ by: 'chord', face: 'outside', chord: 20, rise: 10, error: 1 }, /^chord/],
  ] as const)('%j is not known and never below nothing', (reading, gap) => {
    const found = measuredBend({ ...bar, reading })
    expect(found).toMatchObject({ inside: null, verdict: 'unknown', margin: null })
    expect(found.unknown[0]).toMatch(gap)
  })
})
