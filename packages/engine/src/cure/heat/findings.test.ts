import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { replay } from '../../working/replay.ts'
import { type NightFindingsInput, nightFindings } from './findings.ts'
import { runHeat } from './run.ts'
import { CONCRETE, problemOf, WITHOUT_HEAT } from './testing.ts'

const MIX = { curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 }, scatter: 0.07 } as const
const PERSON = { id: 'p', name: 'Ada Byrne', role: 'engineer' }

function found(part: Readonly<Record<string, unknown>>, more: Partial<NightFindingsInput> = {}) {
  const problem = problemOf(part)
  const findings = nightFindings({ run: runHeat(problem), problem, family: codeFamily('us'), ...more })
  const verdicts = Object.fromEntries(findings.checks.map(({ id, verdict }) => [id, verdict]))
  return { ...findings, verdicts, check: (id: string) => findings.checks.find((check) => check.id === id)! }
}

describe('what a night says', () => {
  const thick = { thickness: 900, top: { film: 20 }, bottom: { film: 20 }, air: 15, hours: 96, every: 1 }

  it('a thick block goes over 19 K between core and face, a panel does not', () => {
    const block = found(thick)
    expect(block.verdicts['night-core-face']).toBe('fail')
    const check = block.check('night-core-face')
    for (const step of check.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
    expect(found({ air: 15 }).verdicts['night-core-face']).toBe('pass')
  })

  it('is not known in a run that ends within the first hour', () => {
    expect(found({ hours: 0.5, every: 0.5 }).verdicts['night-core-face']).toBe('unknown')
  })

  it('a rich thick block goes over 70 °C', () => {
    const rich = { ...CONCRETE, binder: 550, ultimate: 0.85 }
    expect(found({ ...thick, concrete: rich }).verdicts['night-peak']).toBe('fail')
    expect(found(thick).check('night-peak').limit).toBe(70)
  })

  it('has no verdict where the family has no confirmed limit, and takes the engineer’s', () => {
    const eu = codeFamily('eu')
    expect(found({}, { family: eu }).check('night-core-face')).toMatchObject({
      verdict: 'unknown',
      unknown: ['Difference of core and face, computed: no confirmed value for eu'],
    })
    const entered = {
      entry: 'e',
      value: 0.01,
      unit: 'K',
      standard: 'project',
      edition: '2026',
      by: PERSON,
    } as never
    expect(found({}, { family: eu, limits: { 'cure.coreFace': entered } }).verdicts['night-core-face']).toBe(
      'fail',
    )
  })

  describe('frost', () => {
    const late = {
      air: [
        [0, 15],
        [14, 15],
        [14, -25],
        [40, -25],
      ],
      hours: 40,
      top: { film: 25 },
    }
    const early = { air: -15, initial: 8, top: { film: 25 }, bottom: { film: 10 } }

    it('before 3.5 MPa fails; after it passes', () => {
      expect(found(early, { mix: MIX }).verdicts['night-frost']).toBe('fail')
      const cold = found(late, { mix: MIX })
      expect(cold.check('night-frost').unit).toBe('MPa')
      expect(cold.verdicts['night-frost']).toBe('pass')
    })

    it('is not known without the mix, and passes where nothing freezes', () => {
      expect(found(early).check('night-frost').unknown?.[0]).toContain('mix')
      expect(found({ air: 10 }).check('night-frost')).toMatchObject({ verdict: 'pass', unit: '°C' })
    })
  })

  it('holds the face against the air when the cover comes off, as it is a moment before', () => {
    const warm = { concrete: WITHOUT_HEAT, initial: 45, air: 10, bottom: { film: 0 } }
    const off = (hour: number) =>
      found({
        ...warm,
        top: {
          film: 25,
          resistance: [
            [0, 1],
            [hour, 0],
          ],
        },
      })
    expect(off(1).verdicts['night-uncovering:1']).toBe('fail')
    expect(off(1).check('night-uncovering:1').demand).toBeGreaterThan(30)
    expect(off(1).check('night-uncovering:1').demand).toBeLessThan(35)
    expect(off(1).coverOff).toBeGreaterThan(1)
  })

  it('takes a layer that is lifted off for a cover too', () => {
    const foam = { thickness: 40, conductivity: 0.05, heatCapacity: 30 }
    const top = {
      film: 20,
      resistance: [
        [0, 1],
        [3, 0.5],
        [6, 0.6],
      ],
      layers: [{ ...foam, until: 5 }, foam],
    }
    expect(Object.keys(found({ top }).verdicts).filter((id) => id.startsWith('night-uncovering'))).toEqual([
      'night-uncovering:3',
      'night-uncovering:5',
    ])
  })

  it('says from which hour the cover may come off: the face of a cooling panel against the series in closed form', () => {
    // Cools as exp(−t/τ) nearly as one lump: 35 K over the air fall to 20 K at τ ln(35/20).
    const lump = {
      concrete: { ...WITHOUT_HEAT, conductivity: 20 },
      initial: 45,
      air: 10,
      bottom: { film: 0 },
    }
    const { coverOff } = found({ ...lump, top: { film: 5, resistance: 0.8 }, hours: 60 })
    const tau = (2400 * 0.15) / (1 / (1 / 5 + 0.8)) / 3.6
    expect(coverOff).toBeCloseTo(tau * Math.log(35 / 20), 0)
    expect(found({ initial: 20, concrete: WITHOUT_HEAT }).coverOff).toBe(0)
    expect(found({ ...lump, top: { film: 0 } }).coverOff).toBeNull()
  })
})
