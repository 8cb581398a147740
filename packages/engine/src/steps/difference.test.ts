import { describe, expect, it } from 'vitest'
import { liftYard } from '../lift/reference-panels.ts'
import type { Plan } from '../plan.ts'
import { type Check, compare } from '../working/check.ts'
import { COMMON_PRACTICE } from '../working/source.ts'
import type { Card, CardRow } from './card.ts'
import { cardOf } from './card-of.ts'
import { mayDiffer } from './difference.ts'
import {
  differenceOf,
  ENGINEER,
  LEAD,
  liftOnlyPlan,
  NOW,
  readyToStrip,
  recorded,
  signed,
  specimen,
  withDifference,
  withValue,
  yardFacts,
} from './example-facts.ts'
import type { PanelFacts, SignedDifference, YardFacts } from './facts.ts'

const PEAK = 'now:lift-peak:release'
const INSERT = 'now:lift-insert:hang'

function own(
  id: string,
  demand: number | null,
  limit: number | null,
  missing: readonly string[] = [],
): Check {
  return compare({
    id,
    step: 'strip',
    what: id.includes('lift-peak') ? 'Peak tension, leaves the mould' : 'Most loaded insert, hangs upright',
    demand,
    limit,
    unit: id.includes('lift-peak') ? 'MPa' : 'kN',
    sense: 'at most',
    source: COMMON_PRACTICE,
    missing,
  })
}

const FAILS = own(PEAK, 2.4, 1.9)
const NOT_KNOWN = own(INSERT, null, 40, ['uneven legs: which legs count'])

/** A plan whose own results of the lift are these and no others, on the strip card and, without `now:`, in the plan. */
function planWith(checks: readonly Check[], yard = liftYard()): Plan {
  const plan = liftOnlyPlan({ yard })
  const others = plan.checks.filter(({ id }) => !mayDiffer(id))
  const planned = checks.map((check) => ({ ...check, id: check.id.replace('now:', '') }))
  return { ...plan, lift: { ...plan.lift, stages: [] }, checks: [...others, ...planned, ...checks] }
}

function strip(
  facts: PanelFacts,
  checks: readonly Check[] = [FAILS, NOT_KNOWN],
  yard: YardFacts = yardFacts(),
): Card {
  return cardOf({ plan: planWith(checks, yard.yard ?? undefined), step: 'strip', facts, yard, now: NOW })
}

function row(card: Card, id: string): CardRow {
  const found = card.rows.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no row ${id}`)
  return found
}

const bare = readyToStrip()
const PEAK_SIGNED = differenceOf(row(strip(bare), PEAK))
const INSERT_SIGNED = differenceOf(row(strip(bare), INSERT))
const both = (peak: Partial<SignedDifference> = {}, facts = bare): PanelFacts =>
  withDifference(facts, { [PEAK]: { ...PEAK_SIGNED, ...peak }, [INSERT]: INSERT_SIGNED })

describe('our own result beside the lifting design', () => {
  it('keeps the hold shut where it fails and where it is not known, whatever the design says', () => {
    const card = strip(bare)
    expect(card.ready).toBe(false)
    expect(card.missing).toEqual([
      'Peak tension, leaves the mould: not met; waits for a difference signed by an engineer with a reason',
      'Most loaded insert, hangs upright: not known; waits for a difference signed by an engineer with a reason',
    ])
    expect(row(card, PEAK).difference).toEqual({ signed: null, may: true, gap: 'not signed' })
    expect(row(card, PEAK).replaced).toBeUndefined()
  })

  it('waits no more once an engineer has signed each difference with a reason', () => {
    const card = strip(both())
    expect(card).toMatchObject({ ready: true, verdict: 'pass', missing: [], entitled: ['lead'] })
    expect(card.answer).toMatch(
      /^All .* other conditions are met\. Two differences are signed by an engineer\. The lead decides\.$/,
    )
    expect(row(card, PEAK)).toMatchObject({
      verdict: 'fail',
      replaced: 'difference signed by Ada Roe, engineer: held beside the design by hand',
      difference: { may: false, gap: null },
    })
    expect(card.rests).toEqual(expect.arrayContaining([PEAK_SIGNED.entry, INSERT_SIGNED.entry]))
  })

  it('is not asked for where ours passes, and a signature there is no part of the opening', () => {
    const passes = own(PEAK, 1.2, 1.9)
    const card = strip(both(), [passes, NOT_KNOWN])
    expect(card.ready).toBe(true)
    expect(row(card, PEAK).difference).toBeUndefined()
    expect(card.rests).not.toContain(PEAK_SIGNED.entry)
  })

  it('each row wants its own signature', () => {
    expect(strip(withDifference(bare, { [PEAK]: PEAK_SIGNED })).ready).toBe(false)
    expect(strip(withDifference(bare, { [INSERT]: INSERT_SIGNED })).ready).toBe(false)
  })
})

describe('a signature does not count', () => {
  it.each<[string, Partial<SignedDifference>, RegExp]>([
    ['by the lead', { by: LEAD }, /Nora Quill, who is no engineer/],
    ['without a reason', { reason: null }, /without a reason/],
    ['with an empty reason', { reason: '  ' }, /without a reason/],
    ['for another revision', { revision: 'B' }, /for revision B, now A/],
    ['for no revision', { revision: null }, /for revision none, now A/],
    ['for another lifting design', { reference: 'LD-2' }, /another lifting design, LD-2/],
    ['for not known where it fails now', { verdict: 'unknown' }, /was not known, now it fails/],
    ['for a result that has grown since', { demand: 2.39 }, /the result is worse/],
    ['for a limit that has fallen since', { limit: 1.91 }, /the limit is lower/],
    ['without the numbers', { demand: null }, /without the numbers/],
    ['in another unit', { unit: 'psi' }, /signed in psi, now in MPa/],
    ['with numbers that are none', { demand: Number.NaN }, /worse/],
  ])('%s', (_name, change, gap) => {
    const card = strip(both(change))
    expect(card.ready).toBe(false)
    expect(row(card, PEAK).replaced).toBeUndefined()
    expect(row(card, PEAK).difference?.gap).toMatch(gap)
    expect(row(card, PEAK).difference?.may).toBe(true)
    expect(card.rests).not.toContain(PEAK_SIGNED.entry)
  })

  it('where something is missing now that was not when it was signed', () => {
    const facts = both()
    const more = own(INSERT, null, 40, ['uneven legs: which legs count', 'insert B: no confirmed value'])
    expect(row(strip(facts, [FAILS, more]), INSERT).difference?.gap).toBe(
      'missing now and not when it was signed: insert B: no confirmed value',
    )
    expect(strip(facts, [FAILS, own(INSERT, 44, 40)]).ready).toBe(false)
  })

  it.each<[string, PanelFacts]>([
    ['without a confirmed design', { ...bare, design: null }],
    ['with a design that the lead confirmed', { ...bare, design: signed('d1') }],
    [
      'with a design confirmed for another revision',
      { ...bare, design: signed('d1', { by: ENGINEER, revision: 'B' }) },
    ],
    [
      'with no design on the drawing',
      { ...bare, drawing: { ...bare.drawing, lifting: undefined } as unknown as PanelFacts['drawing'] },
    ],
    ['with concrete below what the design wants', { ...bare, specimens: [specimen(12)] }],
    ['with no result of this pour', { ...bare, specimens: [] }],
  ])('%s: then there is nothing to differ from', (_name, facts) => {
    const card = strip(both({}, facts))
    expect(card.ready).toBe(false)
    expect(row(card, PEAK)).not.toHaveProperty('replaced')
    expect(row(card, PEAK).difference).toMatchObject({ may: false })
  })

  it('where the load of the design is above what the inserts may carry', () => {
    const weak = liftYard({
      insertKinds: [{ mark: 'F1', kind: 'face', rated: 25, ratedStrength: 30, leastStrength: 10 }],
    })
    const card = strip(both(), [FAILS, NOT_KNOWN], yardFacts({ yard: weak }))
    expect(row(card, 'now:design-load:F1').verdict).toBe('fail')
    expect(row(card, PEAK).difference).toMatchObject({ may: false })
    expect(card.ready).toBe(false)
  })
})

describe('a signature still counts', () => {
  it.each<[string, Check]>([
    ['while nothing changes', FAILS],
    ['when the concrete has gained and the limit with it', own(PEAK, 2.4, 2.1)],
    ['when the result has become smaller', own(PEAK, 2.1, 1.9)],
  ])('%s', (_name, check) => {
    expect(strip(both(), [check, NOT_KNOWN]).ready).toBe(true)
  })

  it('when less is missing', () => {
    const wider = { ...INSERT_SIGNED, missing: [...INSERT_SIGNED.missing, 'something that is known by now'] }
    expect(strip(withDifference(both(), { [INSERT]: wider })).ready).toBe(true)
  })
})

describe('nothing else opens on a fail or a not-known', () => {
  const whole = strip(both())
  const others = whole.rows.map(({ id }) => id).filter((id) => !mayDiffer(id))

  it.each(others)('a difference signed on %s changes nothing', (id) => {
    const card = strip(withDifference(both(), { [id]: { ...PEAK_SIGNED, entry: 'x' } }))
    expect(row(card, id)).not.toHaveProperty('difference')
    expect(card.rests).not.toContain('x')
    const tick = row(whole, id).asked
    if (tick?.kind !== 'tick') return
    const shut = withValue(
      withDifference(both(), { [id]: { ...PEAK_SIGNED, reason: 'go on' } }),
      'strip',
      id,
      recorded(false),
    )
    expect(strip(shut).ready).toBe(false)
  })

  it.each([
    ['lift-peak', true],
    ['lift-peak:release', true],
    ['now:lift-peak:release', true],
    ['now:lift-insert:hang', true],
    ['lift-peaks', false],
    ['lift-angle', false],
    ['lift-uplift', false],
    ['insert-place', false],
    ['design', false],
    ['strength', false],
    ['now:design-load:F1', false],
    ['x:lift-peak', false],
  ])('%s may differ: %s', (id, may) => {
    expect(mayDiffer(id)).toBe(may)
  })

  it('at the strip hold only: another card with such a row asks for a decision as ever', () => {
    const check = { ...FAILS, id: 'lift-peak:release', step: 'store' as const }
    const facts = both()
    const strip = { ...facts.steps.strip, opening: { ...signed('o2'), rests: [] } }
    const open: PanelFacts = { ...facts, steps: { ...facts.steps, strip } }
    const card = cardOf({ plan: planWith([check]), step: 'store', facts: open, yard: yardFacts(), now: NOW })
    expect(row(card, check.id).difference).toBeUndefined()
    expect(card.missing).toContain('Peak tension, leaves the mould: fails, needs a decision')
  })
})

describe('later cards', () => {
  const opened = (rests: readonly string[], facts = both()): PanelFacts => ({
    ...facts,
    steps: { ...facts.steps, strip: { ...facts.steps.strip, opening: { ...signed('o2'), rests } } },
  })
  const later = (facts: PanelFacts): Card =>
    cardOf({ plan: planWith([FAILS, NOT_KNOWN]), step: 'load', facts, yard: yardFacts(), now: NOW })

  it('go on showing who signed which difference and why', () => {
    expect(later(opened(['o1'])).carried).toEqual([
      {
        step: 'strip',
        kind: 'difference',
        check: INSERT,
        what: 'Most loaded insert, hangs upright, at this hour',
        signed: INSERT_SIGNED,
      },
      {
        step: 'strip',
        kind: 'difference',
        check: PEAK,
        what: 'Peak tension, leaves the mould, at this hour',
        signed: PEAK_SIGNED,
      },
    ])
    expect(strip(both()).carried).toEqual([])
  })

  it('also under a new revision, where the lift rested on it; else not', () => {
    const revised = (facts: PanelFacts): PanelFacts => ({ ...facts, revision: 'B' })
    expect(later(revised(opened([PEAK_SIGNED.entry]))).carried.map(({ check }) => check)).toEqual([PEAK])
    expect(later(revised(opened([]))).carried).toEqual([])
  })

  it('and the decisions of earlier steps, by name and reason', () => {
    const facts = both()
    const deliver = {
      ...facts.steps.deliver,
      decisions: { slump: signed('x1', { reason: 'used all the same' }), wind: signed('x2') },
    }
    const card = later({ ...facts, steps: { ...facts.steps, deliver } })
    expect(card.carried[0]).toMatchObject({ step: 'deliver', kind: 'decision', check: 'slump' })
    expect(card.carried.map(({ check }) => check)).not.toContain('wind')
  })
})
