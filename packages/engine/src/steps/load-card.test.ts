import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { casting, liftYard } from '../lift/reference-panels.ts'
import { decided, GOOD_LOAD, loadOf } from '../pour/loads/example-load.ts'
import type { DocketWords, Load, LoadDecision } from '../pour/loads/load.ts'
import { askedAtDelivery } from '../pour/pour-asked.ts'
import type { Card } from './card.ts'
import { cardOf } from './card-of.ts'
import {
  ENGINEER,
  LEAD,
  liftOnlyPlan,
  NOW,
  readyToStrip,
  recorded,
  signed,
  withValue,
  yardFacts,
} from './example-facts.ts'
import type { PanelFacts, YardFacts } from './facts.ts'

const MIX = { mark: 'M40', strength: 40, slump: [80, 120] as [number, number], dischargeMinutes: 90 }
const base = liftOnlyPlan({ asked: askedAtDelivery(codeFamily('eu'), MIX) })
const plan = { ...base, pour: { ...base.pour, mix: 'M40', netVolume: 2.9 } }
const yard = (change: Partial<YardFacts> = {}) =>
  yardFacts({ yard: { ...liftYard(), mixes: [MIX] }, ...change })

const withAir = withValue(
  readyToStrip(),
  'deliver',
  'air-temperature',
  recorded(18, { seen: '2026-06-01T12:50:00.000Z' }),
)
const drawn: PanelFacts = { ...withAir, drawing: { ...casting().drawing, concrete: { strength: 40 } } }

function card(dockets: readonly Load[], facts: PanelFacts = drawn, yardNow: YardFacts = yard()): Card {
  return cardOf({ plan, step: 'deliver', facts: { ...facts, dockets }, yard: yardNow, now: NOW })
}

const load = (change: Partial<DocketWords> = {}, decision: LoadDecision | null = null) =>
  loadOf({ ...GOOD_LOAD, ...change }, { decision })

function decision(facts: PanelFacts, id: string, change: Parameters<typeof signed>[1] = {}): PanelFacts {
  const { deliver } = facts.steps
  const decisions = {
    ...deliver.decisions,
    [id]: signed(`x-${id}`, { reason: 'used all the same', ...change }),
  }
  return { ...facts, steps: { ...facts.steps, deliver: { ...deliver, decisions } } }
}

const BAD = load({ slump: 150 })

describe('the card of the concrete that arrives', () => {
  it('asks as before where no docket is on record', () => {
    const ids = card([]).rows.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['docket-number', 'slump', 'age-at-discharge', 'water-added']))
    expect(ids.some((id) => id.startsWith('load'))).toBe(false)
  })

  it('asks nothing twice that a docket says', () => {
    const found = card([load()])
    expect(found.rows.filter(({ from }) => from === 'asked').map(({ id }) => id)).toEqual(['air-temperature'])
    expect(found).toMatchObject({ ready: true, verdict: 'pass', missing: [] })
    expect(found.rests).toContain('d-7001')
  })

  it('keeps a measured value that no docket says, so that a fail cannot be hidden by a docket', () => {
    const measured = withValue(drawn, 'deliver', 'slump', recorded(150))
    const found = card([load()], measured)
    expect(found.rows.find(({ id }) => id === 'slump')?.verdict).toBe('fail')
    expect(found.ready).toBe(false)
  })

  it('wants a decision for each fail and each not-known of a load', () => {
    const found = card([BAD])
    expect(found.missing).toEqual(['Load 7001: slump: fails, needs a decision'])
    const unknown = card([load({ temperature: undefined })])
    expect(unknown.missing).toEqual(['Load 7001: temperature of the concrete: not known, needs a decision'])
    expect(card([BAD], decision(drawn, 'load:7001:slump')).ready).toBe(true)
  })

  it('a load that still discharges waits for its end, whatever was decided: nothing is asked before it', () => {
    const running = load({ discharged: undefined })
    const facts = decision(drawn, 'load:7001:age')
    for (const found of [
      card([running]),
      card([running], facts),
      card([{ ...running, decision: decided('accept') }]),
    ]) {
      expect(found).toMatchObject({
        ready: false,
        verdict: 'unknown',
        missing: ['Load 7001: still discharging'],
      })
      expect(found.rows.find(({ id }) => id === 'load:7001:age')?.decision).toBeNull()
    }
    // The wait of the next load rests on the same end, and is told once.
    const next = load({
      number: '7002',
      began: '2026-06-01T12:55:00.000Z',
      discharged: '2026-06-01T13:05:00.000Z',
    })
    expect(card([running, next]).missing).toEqual(['Load 7001: still discharging'])
    expect(card([load()]).ready).toBe(true)
    // A load of which nobody said that it began does not run: its age is a matter of decision.
    expect(card([load({ began: undefined, discharged: undefined })]).missing).toEqual([
      'Load 7001: age at the end of discharge: not known, needs a decision',
    ])
  })

  it('what else is against a running load can be decided at once', () => {
    const running = { ...load({ slump: 150, discharged: undefined }), decision: decided('accept') }
    const found = card([running])
    expect(found.missing).toEqual(['Load 7001: still discharging'])
    expect(found.rows.find(({ id }) => id === 'load:7001:slump')?.decision?.by.name).toBe('Nora Quill')
  })

  it('an accepted load is decided at each of its rows, by name', () => {
    const accepted = { ...BAD, decision: decided('accept') }
    const found = card([accepted])
    expect(found.ready).toBe(true)
    expect(found.verdict).toBe('fail')
    expect(found.rows.find(({ id }) => id === 'load:7001:slump')?.decision?.by.name).toBe('Nora Quill')
    expect(found.rests).toContain('dd-accept')
  })

  it.each<[string, Partial<LoadDecision>]>([
    ['without a reason', { reason: ' ' }],
    ['for another revision', { revision: 'B' }],
    ['by the floor', { by: { ...LEAD, role: 'floor' } }],
    ['before what it covers was said', { seen: '2026-06-01T12:00:00.000Z' }],
  ])('an acceptance %s counts for nothing', (_, change) => {
    expect(card([{ ...BAD, decision: decided('accept', change) }]).ready).toBe(false)
  })

  it('a docket corrected after the decision is judged again', () => {
    const later = '2026-06-02T07:00:00.000Z'
    const corrected = { ...BAD, said: { ...BAD.said, slump: { entry: 'c-1', seen: later } } }
    expect(card([corrected], decision(drawn, 'load:7001:slump')).ready).toBe(false)
    expect(card([corrected], decision(drawn, 'load:7001:slump', { seen: later })).ready).toBe(true)
    expect(card([{ ...corrected, decision: decided('accept') }]).ready).toBe(false)
    // What was said later of something else takes no decision away.
    const ended = { ...BAD, said: { ...BAD.said, discharged: { entry: 'c-1', seen: later } } }
    expect(card([ended], decision(drawn, 'load:7001:slump')).ready).toBe(true)
  })

  it('a load that was sent back counts for nothing, and the panel is short of it', () => {
    const back = { ...BAD, decision: decided('send-back') }
    const found = card([back])
    expect(
      found.rows.filter(({ id }) => id.startsWith('load')).map(({ id, verdict }) => [id, verdict]),
    ).toEqual([
      ['load:7001:back', 'pass'],
      ['loads:volume', 'fail'],
    ])
    const next = load({ number: '7002' })
    expect(card([back, next])).toMatchObject({ ready: true, verdict: 'pass' })
  })

  it('a second mix is for an engineer alone', () => {
    const second = { began: '2026-06-01T12:55:00.000Z', discharged: '2026-06-01T13:05:00.000Z' }
    const two = [load({ volume: 2 }), load({ number: '7002', mix: 'M50', ...second })]
    const facts = decision(drawn, 'load:7002:mix')
    expect(card(two, decision(facts, 'loads:one-mix')).missing).toEqual([
      'One mix in all loads: fails, needs a decision',
    ])
    expect(card(two, decision(facts, 'loads:one-mix', { by: ENGINEER })).ready).toBe(true)
  })

  it('takes the air for a joint as measured, else as logged or foretold', () => {
    const two = [load({ volume: 2 }), load({ number: '7002', began: '2026-06-01T13:10:00.000Z' })]
    const joint = (facts: PanelFacts, change: Partial<YardFacts> = {}) =>
      card(two, facts, yard(change)).rows.find(({ id }) => id === 'load:7002:joint')
    expect(joint(drawn)).toMatchObject({ verdict: 'pass', demand: 20, limit: 22.5 })
    const unmeasured = withValue(drawn, 'deliver', 'air-temperature', undefined)
    expect(joint(unmeasured)?.verdict).toBe('unknown')
    const hot = [{ at: '2026-06-01T12:50:00.000Z', air: 28, humidity: null, wind: null }]
    expect(joint(unmeasured, { forecast: hot })).toMatchObject({ verdict: 'fail', limit: 15 })
    expect(joint(unmeasured, { weather: hot })?.note).toContain('logged')
  })

  it('stays in sight on later cards: decisions by the name of their row, loads by what was decided', () => {
    const back = load({ number: '7002' }, decided('send-back', { revision: 'old' }))
    const accepted = { ...BAD, decision: decided('accept') }
    const facts = { ...decision(drawn, 'load:7001:slump'), dockets: [accepted, back] }
    const { carried } = cardOf({ plan, step: 'place', facts, yard: yard(), now: NOW })
    expect(carried.map(({ kind, check, what }) => [kind, check, what])).toEqual([
      ['decision', 'load:7001:slump', 'Load 7001: slump'],
      ['load', 'load:7001', 'Load 7001'],
      ['load', 'load:7002', 'Load 7002'],
    ])
  })
})
