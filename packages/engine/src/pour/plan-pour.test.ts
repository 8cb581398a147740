import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import { limitOf } from '../working/asked.ts'
import { replay } from '../working/replay.ts'
import { parseYard } from '../yard/yard.ts'
import { NO_CHOICE, placingChoice } from './placing-choice.ts'
import { planPour } from './plan-pour.ts'

const panel = panelOf(
  parseDrawing({
    format: 'castwright.drawing/1',
    mark: 'W1',
    outline: [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ],
    thickness: 150,
    openings: [
      {
        mark: 'D1',
        outline: [
          [900, 0],
          [1900, 0],
          [1900, 2100],
          [900, 2100],
        ],
      },
    ],
    concrete: { strength: 40 },
    inserts: [{ mark: 'A', at: [1242, 2500], kind: 'face' }],
  }),
)
const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'au',
  timezone: 'Australia/Perth',
  mixes: [
    { mark: 'strong', strength: 50 },
    { mark: 'weak', strength: 32 },
    { mark: 'fits', strength: 40, slump: [80, 120], initialSet: 5, reference: 20 },
  ],
  vibrators: [
    { mark: 'V40', head: 40 },
    { mark: 'V60', head: 60 },
  ],
})
const plan = planPour({ panel, yard, family: codeFamily('au') })

describe('plan of a pour', () => {
  it('net 2.385 m³, order 2.6, one load', () => {
    expect(plan.netVolume).toBeCloseTo(15.9 * 0.15, 9)
    expect(plan.orderVolume).toBeCloseTo(2.6, 9)
    expect(plan.loads).toBe(1)
  })

  it('asks for the head by both radii, and for the splash board', () => {
    const head = plan.toRecord.find(({ id }) => id === 'head')
    expect(head?.note).toContain('Insertions reach 130 mm, planned at 0.866 of the 150 mm radius of action.')
    expect(head?.note).toMatch(/keep up with \d+\.\d m³\/h/)
    expect(plan.toRecord.some(({ id, step }) => id === 'splash-board' && step === 'place')).toBe(true)
  })

  it('starts farthest from where the chute really stands; a place not given is told as assumed', () => {
    const stood = planPour({
      panel,
      yard,
      family: codeFamily('au'),
      choice: { ...NO_CHOICE, stand: [6000, 3000] },
    })
    expect(stood.chute).toEqual([6000, 3000])
    expect(stood.compaction?.insertions[0]?.[0]).toBeLessThan(1500)
    expect(plan.compaction?.insertions[0]?.[0]).toBeGreaterThan(4500)
    expect(stood.assumed.some(({ field }) => field === 'chute')).toBe(false)
    expect(plan.assumed.some(({ field }) => field === 'chute')).toBe(true)
  })

  it('takes the weakest mix that is strong enough and the first vibrator', () => {
    expect(plan.mix).toBe('fits')
    expect(plan.vibrator).toBe('V40')
    expect(plan.compaction?.radius).toBeCloseTo(129.9, 9)
    expect(plan.compaction?.uncovered).toBe(0)
  })

  it('window of finishing: 0.55 to 1.0 of the initial set', () => {
    expect(plan.initialSet).toBe(5)
    expect(plan.finish).toEqual({ opens: 2.75, closes: 5 })
    // The card prints the planned hours beside times by readings: it says which are which.
    expect(plan.toRecord.find(({ id }) => id === 'power-float')?.note).toBe(
      'Planned at the reference temperature of the mix: 2.8 h to 5 h after mixing. The times by readings stand under Surface in the app; the surface decides.',
    )
  })

  it('minutes: set-up 30 + 15 + 4; pour the longer of placing and vibrating', () => {
    expect(plan.minutes.setUp).toBe(49)
    expect(plan.minutes.pour).toBe(Math.max(2.6 * 6, plan.compaction?.minutes ?? 0))
    expect(plan.minutes.strip).toBe(30)
  })

  it('the maker’s radius of action outranks the table', () => {
    const maker = planPour({
      panel,
      yard: { ...yard, vibrators: [{ mark: 'M', head: 40, radius: 200 }] },
      family: codeFamily('au'),
    })
    expect(maker.compaction?.radius).toBeCloseTo(173.2, 9)
  })

  it('checks pass; without a vibrator or a mix they are not known, with too weak a mix it fails', () => {
    expect(plan.checks.map(({ verdict }) => verdict)).toEqual(['pass', 'pass', 'pass'])
    const none = planPour({ panel, yard: null, family: codeFamily('au') })
    expect(none.checks.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'unknown'])
    expect(none.compaction).toBeNull()
    expect(none.finish).toBeNull()
    expect(none.unknown.join('; ')).toMatch(/mixes.*vibrators.*initialSet/)
    const weak = planPour({
      panel,
      yard: { ...yard, mixes: [{ mark: 'w', strength: 39 }] },
      family: codeFamily('au'),
    })
    expect(weak.checks[0]?.verdict).toBe('fail')
  })

  it('asks for age, slump and temperature with the limits of family and mix', () => {
    const limit = (id: string, family: 'nz' | 'au' | 'eu' | 'us') => {
      const asked = planPour({ panel, yard, family: codeFamily(family) }).toRecord.find(
        (one) => one.id === id,
      )
      return asked === undefined ? 'absent' : (asked.unknown?.[0] ?? limitOf(asked))
    }
    expect(limit('age-at-discharge', 'au')).toBe('0 to 90')
    expect(limit('age-at-discharge', 'us')).toContain('no default since 2021')
    expect(limit('slump', 'au')).toBe('80 to 120')
    expect(limit('concrete-temperature', 'au')).toBe('5 to 35')
    expect(limit('concrete-temperature', 'eu')).toBe(5)
    expect(limit('concrete-temperature', 'nz')).toContain('no confirmed value')
    expect(limit('air-temperature', 'nz')).toBe(5)
    const stated = planPour({
      panel,
      yard: { ...yard, mixes: [{ mark: 'm', strength: 40, dischargeMinutes: 120 }] },
      family: codeFamily('eu'),
    }).toRecord
    expect(stated.find(({ id }) => id === 'age-at-discharge')).toMatchObject({ low: 0, high: 120 })
    expect(stated.find(({ id }) => id === 'slump')?.unknown).toEqual(['slump: ordered slump of the mix'])
  })

  it('every zone is ticked in order, ids are unique', () => {
    const ids = plan.toRecord.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.filter((id) => id.startsWith('zone:'))).toEqual(
      plan.compaction?.zones.map(({ id }) => `zone:${id}`),
    )
  })

  it('a zone keeps its id wherever the chute stands: what was ticked for its concrete is never taken for another', () => {
    const stood = planPour({
      panel,
      yard,
      family: codeFamily('au'),
      choice: { ...NO_CHOICE, stand: [6000, 3000] },
    })
    const [here, there] = [plan, stood].map(({ compaction }) => compaction?.zones ?? [])
    expect(there?.map(({ id }) => id)).toEqual(here?.map(({ id }) => id).reverse())
    for (const zone of here ?? [])
      expect(there?.find(({ id }) => id === zone.id)?.volume).toBeCloseTo(zone.volume, 9)
  })

  it('the pattern is for the least of the heads that work, and is dealt to all of them', () => {
    const choice = { ...NO_CHOICE, vibrators: { V60: 1, V40: 2 } }
    const three = planPour({ panel, yard, family: codeFamily('au'), choice })
    expect(three.vibrator).toBe('V40')
    expect(three.heads).toEqual(['V40', 'V40', 'V60'])
    expect(three.compaction?.radius).toBeCloseTo(129.9, 9)
    expect(three.compaction?.zones.every(({ shares }) => shares.length === 3)).toBe(true)
    expect(three.compaction?.minutes).toBeLessThan(0.4 * (plan.compaction?.minutes ?? 0))
    expect(three.assumed.some(({ field }) => field === 'vibrators')).toBe(false)
    expect(plan.assumed.find(({ field }) => field === 'vibrators')?.value).toBe('V40')
  })

  it('a head that the yard does not list, or a choice that nobody can read, is not known and named', () => {
    const strange = planPour({
      panel,
      yard,
      family: codeFamily('au'),
      choice: { ...NO_CHOICE, vibrators: { V99: 1 } },
    })
    expect(strange.compaction).toBeNull()
    expect(strange.unknown.join()).toContain('V99')
    const choice = placingChoice({ stand: { value: { x: 'left', y: 0 } }, vibrators: { value: { V40: 0 } } })
    expect(choice).toMatchObject({ stand: null, vibrators: null })
    expect(choice.faults).toHaveLength(2)
    expect(choice.faults[0]).toContain('place.stand: found {"x":"left","y":0}, expected x and y, mm')
  })

  it('a zone is no wider than the heads finish in 15 min; where they cannot, the check fails', () => {
    expect(plan.compaction?.zoneMinutes).toBeLessThanOrEqual(15)
    const slow = panelOf(
      parseDrawing({
        format: 'castwright.drawing/1',
        mark: 'W2',
        outline: [
          [0, 0],
          [12000, 0],
          [12000, 9000],
          [0, 9000],
        ],
        thickness: 150,
        concrete: { strength: 40 },
      }),
    )
    const one = planPour({
      panel: slow,
      yard: { ...yard, vibrators: [{ mark: 'V25', head: 25 }] },
      family: codeFamily('au'),
    })
    expect(one.checks.find(({ id }) => id === 'zone-time')?.verdict).toBe('fail')
  })

  it('seconds of an insertion by the slump of the mix: 80 to 120 mm are 10 s; without a slump 10 s assumed', () => {
    expect(plan.compaction?.seconds).toEqual({ in: 10, moving: 3 })
    expect(plan.assumed.some(({ field }) => field === 'seconds in')).toBe(false)
    const bare = planPour({
      panel,
      yard: { ...yard, mixes: [{ mark: 'm', strength: 40 }] },
      family: codeFamily('au'),
    })
    expect(bare.assumed.some(({ field }) => field === 'seconds in')).toBe(true)
  })

  it('every step replays', () => {
    for (const step of plan.working) {
      const again = replay(step)
      if (again !== null)
        expect(Math.abs(again - (step.result as number))).toBeLessThanOrEqual(1e-9 * Math.abs(again))
    }
  })
})
