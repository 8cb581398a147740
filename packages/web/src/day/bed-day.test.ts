import { codeFamily } from '@castwright/engine/codes'
import { parseDrawing } from '@castwright/engine/panel'
import { type Plan, plan } from '@castwright/engine/plan'
import { emptyPanelFacts, type PanelFacts, type Signed } from '@castwright/engine/steps'
import { parseYard } from '@castwright/engine/yard'
import { describe, expect, it } from 'vitest'
import { bedDays, bedOf, onBeds } from './bed-day.ts'
import { drawRow } from './bed-row.ts'
import { clockText, dayWindow } from './day-window.ts'
import { heldUp } from './held-up.ts'

const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'eu',
  timezone: 'Europe/Dublin',
  beds: [
    { mark: '1', length: 14_000, width: 3800, heated: true },
    { mark: '2', length: 9000, width: 3600 },
  ],
  insertKinds: [{ mark: 'F30', kind: 'face', rated: 30, ratedStrength: 20, leastStrength: 10 }],
  mixes: [
    {
      mark: 'K40',
      strength: 40,
      curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
      scatter: 0.07,
      reference: 20,
      activation: 38_000,
      initialSet: 4.5,
    },
  ],
})
const drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W1',
  job: 'J',
  revision: 'A',
  outline: [
    [0, 0],
    [4000, 0],
    [4000, 2500],
    [0, 2500],
  ],
  thickness: 150,
  concrete: { strength: 40 },
  inserts: [
    { mark: 'A', at: [800, 600], kind: 'face', type: 'F30' },
    { mark: 'B', at: [3200, 600], kind: 'face', type: 'F30' },
    { mark: 'C', at: [3200, 1900], kind: 'face', type: 'F30' },
    { mark: 'D', at: [800, 1900], kind: 'face', type: 'F30' },
  ],
  lifting: { strength: 15, load: 25, reference: 'LD-3', by: 'designer' },
})
const made: Plan = plan({ drawing, yard, family: codeFamily('eu') })
const beds = yard.beds ?? []
const yardFacts = { yard, gear: {}, limits: {} }
const window = dayWindow('2026-04-14', 'Europe/Dublin')
const HOUR = 3_600_000
const at = (clock: string): number => Date.parse(`2026-04-14T${clock}:00.000Z`) - HOUR // Dublin, summer time

function facts(more: Partial<PanelFacts> = {}): PanelFacts {
  return { ...emptyPanelFacts({ job: 'J', mark: 'W1' }), drawing, revision: 'A', ...more }
}

function signed(instant: number): Signed & { readonly rests: readonly string[] } {
  const seen = new Date(instant).toISOString()
  const by = { id: 'a', name: 'Anna', role: 'lead' } as const
  return { entry: 'e', by, seen, stored: seen, reason: null, revision: 'A', rests: [] }
}

function cast(clock: number, bed: string | null = '1'): NonNullable<PanelFacts['cast']> {
  return { entry: 'c', at: new Date(clock).toISOString(), bed, mix: 'K40' }
}

function rowsOf(panel: PanelFacts, now = at('10:40')) {
  return bedDays({ beds, panels: [{ facts: panel, plan: made, why: null }], window, now, yard: yardFacts })
}

describe('a bed’s day', () => {
  it('has a row for every bed, also for an empty one', () => {
    expect(rowsOf(facts({ cast: cast(at('08:00')) })).map(({ bed, note }) => [bed, note])).toEqual([
      ['1', '14 m, heated'],
      ['2', '9 m'],
    ])
  })

  it('counts pour, float window and strength from mixing', () => {
    const [row] = rowsOf(facts({ cast: cast(at('08:00')) }))
    const pour = row?.blocks.find(({ kind }) => kind === 'pour')
    const float = row?.blocks.find(({ kind }) => kind === 'finish')
    expect(pour).toMatchObject({ from: at('08:00'), to: at('08:00') + made.pour.minutes.pour * 60_000 })
    expect(float?.from).toBeCloseTo(at('08:00') + (made.pour.finish?.opens ?? Number.NaN) * HOUR, 3)
    // A straight line between two points of the curve: within a minute of the plan's own hour.
    const planned = at('08:00') + (made.cure.hourLow ?? Number.NaN) * HOUR
    expect(Math.abs((row?.curves[0]?.met ?? Number.NaN) - planned)).toBeLessThan(60_000)
    expect(row?.curves[0]).toMatchObject({ wanted: 15, cast: true })
  })

  it('moves the float window by what was read, and says that it is by readings', () => {
    const mixed = at('08:00')
    const values = {
      'concrete-temperature': {
        ...signed(mixed + HOUR / 2),
        value: 11,
        verdict: 'pass',
        corrects: [],
        attachments: [],
      },
    } as const
    const empty = facts({ cast: cast(mixed) })
    const cold = {
      ...empty,
      steps: { ...empty.steps, deliver: { ...empty.steps.deliver, values } },
    }
    const float = (panel: PanelFacts) => rowsOf(panel)[0]?.blocks.find(({ kind }) => kind === 'finish')
    expect(float(empty)?.by).toBe('plan')
    expect(float(cold)?.by).toBe('readings')
    expect((float(cold)?.from ?? 0) - (float(empty)?.from ?? 0)).toBeGreaterThan(HOUR)
  })

  it('does not plan a pour in the past', () => {
    const [row] = rowsOf(facts({ place: 'bed 1' }), at('16:00'))
    expect(row?.blocks.find(({ kind }) => kind === 'pour')?.from).toBeGreaterThanOrEqual(at('16:00'))
    expect(row?.curves[0]?.cast).toBe(false)
  })

  it('ends the curve where the panel was lifted', () => {
    const panel = facts({ cast: cast(at('08:00') - 20 * HOUR) })
    const strip = { ...panel.steps.strip, opening: signed(at('07:00')) }
    const [row] = rowsOf({ ...panel, steps: { ...panel.steps, strip } })
    expect(row?.curves[0]?.points.at(-1)?.at).toBe(at('07:00'))
    expect(row?.blocks.find(({ kind }) => kind === 'strip')).toMatchObject({ from: at('07:00'), done: true })
  })

  it('starts the curve at 05:00 for what was poured yesterday, between the points of the plan', () => {
    const [row] = rowsOf(facts({ cast: cast(at('14:00') - 24 * HOUR) }))
    const [first, ...rest] = row?.curves[0]?.points ?? []
    expect(first?.at).toBe(window.from)
    expect(first?.strength).toBeLessThan(rest.at(-1)?.strength ?? 0)
    expect(rest.at(-1)?.at).toBe(window.to)
  })

  it('adds a row for a bed that the yard does not list', () => {
    expect(rowsOf(facts({ cast: cast(at('08:00'), '9') })).at(-1)).toMatchObject({
      bed: '9',
      note: 'not in the yard’s list',
    })
  })

  it('says why a panel is not drawn', () => {
    const panel = facts({ cast: cast(at('08:00')) })
    const [row] = bedDays({
      beds,
      panels: [{ facts: panel, plan: null, why: 'no code' }],
      window,
      now: at('10:00'),
      yard: yardFacts,
    })
    expect(row?.unknown).toEqual(['W1: no code'])
  })
})

describe('which panels are looked at', () => {
  it.each([
    ['cast that day', facts({ cast: cast(at('08:00')) }), 1],
    ['cast the day after', facts({ cast: cast(at('08:00') + 24 * HOUR) }), 0],
    ['standing on a bed, not cast', facts({ place: 'Bed 2' }), 1],
    ['in a rack, not cast', facts({ place: 'rack 2' }), 0],
    ['cast with no bed known', facts({ cast: cast(at('08:00'), null), place: 'bed 1' }), 0],
  ])('%s', (_name, panel, count) => {
    expect(onBeds([panel], beds, window)).toHaveLength(count)
  })

  it('the bed of the pour outranks the place where it stands now', () => {
    expect(bedOf(facts({ cast: cast(at('08:00')), place: 'rack 1' }), beds)).toBe('1')
  })
})

describe('the row’s picture', () => {
  it('is made of finite numbers inside the frame', () => {
    const [row] = rowsOf(facts({ cast: cast(at('08:00')) }))
    if (row === undefined) throw new Error('no row')
    const clock = (time: number): string => clockText(time, 'Europe/Dublin')
    const drawn = drawRow(row, { window, left: 140, right: 1400, clock, nowX: 500 })
    for (const { x, width } of drawn.blocks) {
      expect(x).toBeGreaterThanOrEqual(140)
      expect(x + width).toBeLessThanOrEqual(1403)
    }
    expect(drawn.curves[0]?.line).toMatch(/^M[\d.]+ [\d.]+(L[\d.]+ [\d.]+)+$/)
    expect(drawn.curves[0]?.band).not.toContain('NaN')
    for (const { x, width } of drawn.labels) expect(x + width < 498 || x > 502).toBe(true)
  })
})

describe('what holds the day up', () => {
  const told = (panel: PanelFacts, now = new Date(at('10:40'))) => {
    const panels = [{ facts: panel, plan: made, why: null }]
    const rows = bedDays({ beds, panels, window, now: now.getTime(), yard: yardFacts })
    return heldUp({ panels, rows, yard: yardFacts, now, zone: 'Europe/Dublin' })
  }

  it('names an open defect first', () => {
    const defect = {
      ...signed(at('09:00')),
      text: 'chair missing',
      place: null,
      step: 'set' as const,
      attachments: [],
      disposition: null,
      inspection: null,
      open: true,
    }
    expect(told(facts({ place: 'bed 1', defects: [defect] }))[0]).toMatchObject({
      kind: 'fail',
      title: 'Bed 1: W1 has an open defect',
      text: 'chair missing',
      step: 'set',
    })
  })

  it('says that a hold waits, and never that something may be lifted', () => {
    const panel = facts({ cast: cast(at('10:40') - 20 * HOUR) })
    const done = signed(at('06:00'))
    const steps = { ...panel.steps }
    for (const id of [
      'steel-in',
      'cut-bend',
      'cage',
      'mould',
      'deliver',
      'place',
      'finish',
      'cure',
    ] as const) {
      steps[id] = { ...steps[id], closed: done }
    }
    steps.set = { ...steps.set, opening: done }
    const [first] = told({ ...panel, steps })
    expect(first).toMatchObject({ step: 'strip', kind: expect.stringMatching(/fail|unknown/) })
    expect(`${first?.title} ${first?.text}`).not.toMatch(/\b(safe|OK)\b/i)
  })

  it('looks at the strip of a panel that cures past the hour planned for its strength', () => {
    const panel = facts({ cast: cast(at('10:40') - 60 * HOUR) })
    const done = signed(at('06:00'))
    const steps = { ...panel.steps, set: { ...panel.steps.set, opening: done } }
    for (const id of ['steel-in', 'cut-bend', 'cage', 'mould', 'deliver', 'place', 'finish'] as const) {
      steps[id] = { ...steps[id], closed: done }
    }
    expect(told({ ...panel, steps })[0]).toMatchObject({ step: 'strip' })
  })

  it('tells the float window that comes next, with its times', () => {
    const sentence = told(facts({ cast: cast(at('08:00')) })).at(-1)
    expect(sentence).toMatchObject({ kind: 'accent', step: 'finish' })
    expect(sentence?.text).toMatch(/^Planned window \d\d:\d\d to \d\d:\d\d\. The surface decides\.$/)
  })

  it('is at most three sentences', () => {
    const panels = ['A', 'B', 'C', 'D', 'E'].map((mark) => ({
      facts: {
        ...facts({ place: 'bed 1' }),
        mark,
        defects: [
          {
            ...signed(0),
            text: mark,
            place: null,
            step: null,
            attachments: [],
            disposition: null,
            inspection: null,
            open: true,
          },
        ],
      },
      plan: made,
      why: null,
    }))
    expect(
      heldUp({ panels, rows: [], yard: yardFacts, now: new Date(at('10:40')), zone: 'Europe/Dublin' }),
    ).toHaveLength(3)
  })
})
