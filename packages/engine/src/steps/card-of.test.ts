import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FamilyId } from '../codes/index.ts'
import { liftYard } from '../lift/reference-panels.ts'
import { FAMILY_IDS } from '../panel/drawing.ts'
import type { Plan } from '../plan.ts'
import type { Asked } from '../working/asked.ts'
import { type Check, compare } from '../working/check.ts'
import { replay } from '../working/replay.ts'
import { COMMON_PRACTICE } from '../working/source.ts'
import type { Card, CardRow } from './card.ts'
import { cardOf } from './card-of.ts'
import { mayDiffer } from './difference.ts'
import { emptyPanelFacts, emptyStepFacts } from './empty-facts.ts'
import {
  differencesSigned,
  ENGINEER,
  ENTERED_LEAST,
  LEAD,
  liftOnlyPlan,
  NOW,
  readyToStrip,
  recorded,
  signed,
  specimen,
  withValue,
  yardFacts,
} from './example-facts.ts'
import type { Defect, PanelFacts, YardFacts } from './facts.ts'
import { STEP_IDS, STEPS, type StepId } from './steps.ts'

const seed = 20261129

interface StripCase {
  readonly facts?: PanelFacts
  readonly yard?: YardFacts
  readonly family?: FamilyId
  readonly drawing?: object
  readonly now?: string
  /** Every difference that an engineer may sign is signed. */
  readonly signed?: boolean
  /** Where many cards are made of one plan. */
  readonly plan?: Plan
}

function strip({
  facts = readyToStrip(),
  yard = yardFacts(),
  family = 'eu',
  drawing = {},
  now = NOW,
  signed: all = true,
  plan = liftOnlyPlan({ drawing, yard: yard.yard, family, limits: yard.limits }),
}: StripCase = {}): Card {
  const known = all ? differencesSigned({ plan, facts, yard, now }) : facts
  return cardOf({ plan, step: 'strip', facts: known, yard, now })
}

function row(card: Card, id: string): CardRow {
  const found = card.rows.find((candidate) => candidate.id === id)
  if (found === undefined)
    throw new Error(`no row ${id} among ${card.rows.map((each) => each.id).join(', ')}`)
  return found
}

describe('the strip hold opens when everything is on record', () => {
  it.each(FAMILY_IDS)('for %s, with the least strength entered where the family gives none', (family) => {
    const card = strip({ family, yard: yardFacts({ limits: ENTERED_LEAST }) })
    expect(card.missing).toEqual([])
    expect(card.rests).toContain('l1')
    expect(card).toMatchObject({ state: 'open', ready: true, verdict: 'pass', entitled: ['lead'] })
    expect(card.answer).toMatch(/^All .* conditions are met\..*The lead decides\.$/)
    expect(card.answer).not.toMatch(/safe|ok to/i)
  })

  it('rests on design, pour, result, crane, opening of set and every tick', () => {
    const { rests } = strip()
    for (const entry of ['d1', 'c1', 's-24', 'v-C1', 'v-8000', 'v-700', 'o1', 'v-edges-free', 'v-wind']) {
      expect(rests).toContain(entry)
    }
    expect(new Set(rests).size).toBe(rests.length)
  })

  it('with the rigging chosen on the floor where the drawing names none', () => {
    const facts = readyToStrip()
    const drawing = { ...facts.drawing, rigging: undefined } as NonNullable<PanelFacts['drawing']>
    const chosen = withValue({ ...facts, drawing }, 'strip', 'rigging', recorded('R4', { entry: 'v-R4' }))
    const card = strip({ facts: chosen, drawing: { rigging: undefined } })
    expect(card.missing).toEqual([])
    expect(card.ready).toBe(true)
    expect(row(card, 'lift-angle').rests).toContain('v-R4')
    expect(strip({ facts: { ...facts, drawing }, drawing: { rigging: undefined } }).ready).toBe(false)
  })
})

describe('the strip hold stays shut', () => {
  const facts = readyToStrip()
  const without = (change: Partial<PanelFacts>): StripCase => ({ facts: { ...facts, ...change } })
  const gear = (change: object): StripCase => ({ yard: yardFacts({ yard: liftYard(change) }) })
  const value = (id: string, found: Parameters<typeof withValue>[3]): StripCase => ({
    facts: withValue(facts, 'strip', id, found),
  })
  const { lifting: _, ...undesigned } = facts.drawing as NonNullable<PanelFacts['drawing']>

  it.each<[string, StripCase, string]>([
    ['without a confirmed design', without({ design: null }), 'design'],
    ['with a design that the lead confirmed', without({ design: signed('d1') }), 'design'],
    [
      'with a design of another revision',
      without({ design: signed('d1', { by: ENGINEER, revision: 'B' }) }),
      'design',
    ],
    [
      'without a design on the drawing',
      { ...without({ drawing: undesigned }), drawing: { lifting: undefined } },
      'design',
    ],
    ['without a pour on record', without({ cast: null }), 'strength'],
    ['without a result of this pour', without({ specimens: [] }), 'strength'],
    ['with a cube only', without({ specimens: [specimen(40, { kind: 'cube' })] }), 'strength'],
    ['with a result from the future', without({ specimens: [specimen(24, { age: 19 })] }), 'strength'],
    ['with a result whose low edge is short', without({ specimens: [specimen(18)] }), 'strength'],
    [
      'with one good and one bad cylinder',
      without({ specimens: [specimen(30), specimen(14.9)] }),
      'strength',
    ],
    [
      'with a cold log that keeps the curve low',
      {
        ...without({
          temperatures: [
            {
              entry: 't1',
              entries: ['t1'],
              channel: 'core',
              by: LEAD,
              readings: [
                [0, 5],
                [18, 5],
              ],
            },
          ],
        }),
        ...gear({
          mixes: [
            {
              mark: 'M40',
              strength: 40,
              scatter: 0.08,
              curve: { form: 'hyperbolic', ultimate: 50, rate: 0.03, offset: 4 },
            },
          ],
        }),
      },
      'strength',
    ],
    [
      'with two results and no scatter of the mix',
      {
        ...without({ specimens: [specimen(30), specimen(31)] }),
        ...gear({ mixes: [{ mark: 'M40', strength: 40 }] }),
      },
      'strength',
    ],
    [
      'with inserts rated below the design load at this hour',
      gear({ insertKinds: [{ mark: 'F1', kind: 'face', rated: 25, ratedStrength: 30, leastStrength: 10 }] }),
      'now:design-load:F1',
    ],
    [
      'below the maker’s least strength',
      gear({ insertKinds: [{ mark: 'F1', kind: 'face', rated: 50, ratedStrength: 30, leastStrength: 25 }] }),
      'strength',
    ],
    ['with an insert kind the yard does not list', gear({ insertKinds: [] }), 'now:design-load'],
    [
      'with rigging out of date',
      gear({
        rigging: [{ mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 8000, due: '2026-06-01' }],
      }),
      'rigging-date',
    ],
    [
      'with rigging of no date',
      gear({ rigging: [{ mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 8000 }] }),
      'rigging-date',
    ],
    [
      'with rigging rated too low',
      gear({
        rigging: [{ mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 7000, due: '2026-12-31' }],
      }),
      'rigging-rated',
    ],
    [
      'with rigging that leans too far',
      gear({
        rigging: [{ mark: 'R4', legs: 4, length: 2100, equalised: true, rated: 8000, due: '2026-12-31' }],
      }),
      'lift-angle',
    ],
    ['with rigging the yard does not list', gear({ rigging: [] }), 'rigging-rated'],
    [
      'with a crane out of date',
      gear({ cranes: [{ mark: 'C1', chart: [[9000, 9000]], due: '2026-06-01' }] }),
      'crane-date',
    ],
    ['with a crane too small at that radius', value('crane-radius', recorded(11_000)), 'crane-rated'],
    ['with a radius beyond the chart', value('crane-radius', recorded(13_000)), 'crane-rated'],
    ['without a radius', value('crane-radius', undefined), 'crane-rated'],
    ['without the mass below the hook', value('below-hook', undefined), 'crane-rated'],
    ['with a heavy beam below the hook', value('below-hook', recorded(2500)), 'crane-rated'],
    ['without a crane', value('crane', undefined), 'crane-rated'],
    ['with a crane that is not listed', value('crane', recorded('C9')), 'crane-date'],
    ['with an edge not free', value('edges-free', recorded(false)), 'edges-free'],
    ['with somebody in the zone', value('zone-clear', recorded(false)), 'zone-clear'],
    ['with a tick that nobody made', value('wind', undefined), 'wind'],
    ['with a tick made for another revision', value('wind', recorded(true, { revision: 'B' })), 'wind'],
    [
      'with a radius measured for another revision',
      value('crane-radius', recorded(8000, { revision: 'B' })),
      'crane-rated',
    ],
    ['without a yard', { yard: yardFacts({ yard: null }) }, 'strength'],
  ])('%s', (_name, change, id) => {
    const card = strip(change)
    expect(card.ready).toBe(false)
    expect(card.state).toBe('open')
    expect(row(card, id).verdict).not.toBe('pass')
    if (row(card, id).verdict === 'unknown') expect(row(card, id).unknown.length).toBeGreaterThan(0)
    expect(card.missing.length).toBeGreaterThan(0)
    expect(card.answer).not.toMatch(/conditions are met/)
  })

  it.each<FamilyId>(['nz', 'au', 'us'])(
    'for %s while no least strength is confirmed or entered',
    (family) => {
      const card = strip({ family })
      expect(card.ready).toBe(false)
      expect(row(card, 'strength').unknown.join()).toMatch(/no confirmed value/)
    },
  )

  it('behind a shut set', () => {
    const shut = without({ steps: { ...facts.steps, set: emptyStepFacts() }, cast: null })
    const card = strip(shut)
    expect(card).toMatchObject({ state: 'waiting', ready: false, answer: 'Waits until Set is opened.' })
    expect(card.missing[0]).toBe('Set to open first')
  })

  it('whatever a decision says: a hold knows no exceptions', () => {
    const decided = withValue(facts, 'strip', 'wind', recorded(false))
    const decisions = { wind: signed('x', { by: ENGINEER, reason: 'go on' }) }
    const card = strip({
      facts: { ...decided, steps: { ...decided.steps, strip: { ...decided.steps.strip, decisions } } },
    })
    expect(card.ready).toBe(false)
  })

  it('gear inspected since the yard’s list is in date', () => {
    const late = liftYard({ cranes: [{ mark: 'C1', chart: [[9000, 9000]], due: '2026-06-01' }] })
    const card = strip({ yard: yardFacts({ yard: late, gear: { C1: { entry: 'g1', due: '2027-06-01' } } }) })
    expect(card.ready).toBe(true)
    expect(row(card, 'crane-date').rests).toEqual(['g1'])
  })
})

describe('no mixture of facts opens a hold past a row', () => {
  it(`ready means every row passes or is a signed difference (seed ${seed})`, () => {
    const whole = readyToStrip()
    const some = <T>(good: T, ...other: T[]) =>
      fc.oneof({ weight: 40, arbitrary: fc.constant(good) }, ...other.map((bad) => fc.constant(bad)))
    const mixture = fc.record({
      design: some(whole.design, null, signed('d1'), signed('d2', { by: ENGINEER, revision: 'B' })),
      cast: some(whole.cast, null),
      specimens: some(
        whole.specimens,
        [],
        [specimen(17)],
        [specimen(24), specimen(12)],
        [specimen(Number.NaN)],
      ),
      revision: some<string | null>('A', 'B', null),
      values: fc.record(
        Object.fromEntries(
          Object.entries(whole.steps.strip.values).map(([id, good]) => [
            id,
            some<typeof good | undefined>(
              good,
              undefined,
              { ...good, value: false },
              { ...good, value: null },
              { ...good, revision: 'B' },
              { ...good, value: 1e9 },
            ),
          ]),
        ),
      ),
      opening: some(whole.steps.set.opening, null),
      family: some<FamilyId>('eu', 'us', 'nz', 'au'),
      due: some<string | undefined>('2026-12-31', '2026-06-01', undefined),
    })
    let [open, shut] = [0, 0]
    // A plan knows nothing of cranes: one a family serves every mixture.
    const plans = Object.fromEntries(FAMILY_IDS.map((id) => [id, liftOnlyPlan({ family: id })]))
    fc.assert(
      fc.property(mixture, ({ values, opening, family, due, ...change }) => {
        const kept = Object.fromEntries(Object.entries(values).filter(([, found]) => found !== undefined))
        const facts: PanelFacts = {
          ...whole,
          ...change,
          steps: {
            ...whole.steps,
            set: { ...whole.steps.set, opening },
            strip: { ...whole.steps.strip, values: kept as PanelFacts['steps']['strip']['values'] },
          },
        }
        const crane = { mark: 'C1', chart: [[9000, 9000]], ...(due === undefined ? {} : { due }) }
        const card = strip({
          facts,
          family,
          plan: plans[family] as Plan,
          yard: yardFacts({ yard: liftYard({ cranes: [crane] }) }),
        })
        const holds = card.rows.every(
          ({ id, verdict, replaced }) => verdict === 'pass' || (replaced !== undefined && mayDiffer(id)),
        )
        if (card.ready) {
          open += 1
          expect(holds && card.state === 'open').toBe(true)
        } else {
          shut += 1
          expect(holds && card.state === 'open').toBe(false)
          expect(card.missing.length).toBeGreaterThan(0)
        }
        expect(card.verdict === 'pass').toBe(
          card.rows.every(({ verdict, replaced }) => verdict === 'pass' || replaced !== undefined),
        )
      }),
      { seed, numRuns: 600 },
    )
    expect(Math.min(open, shut)).toBeGreaterThan(10)
  })
})

const SLUMP: Asked = {
  id: 'slump',
  step: 'deliver',
  what: 'Slump',
  kind: 'number',
  unit: 'mm',
  low: 80,
  high: 120,
  source: COMMON_PRACTICE,
}
const SEEN: Asked = {
  id: 'seen',
  step: 'deliver',
  what: 'Truck number',
  kind: 'text',
  unit: '',
  recordOnly: true,
  source: COMMON_PRACTICE,
}

function planned(verdict: 'pass' | 'fail' | 'unknown', step: StepId): Check {
  const demand = verdict === 'unknown' ? null : verdict === 'pass' ? 1 : 3
  return compare({
    id: 'own',
    step,
    what: 'Order',
    demand,
    limit: 2,
    unit: 'm³',
    sense: 'at most',
    source: COMMON_PRACTICE,
  })
}

function deliver(facts: PanelFacts, check: Check | null = planned('pass', 'deliver')): Card {
  const plan = liftOnlyPlan({ asked: [SLUMP, SEEN], checks: check ? [check] : [] })
  return cardOf({ plan, step: 'deliver', facts, yard: yardFacts(), now: NOW })
}

function decided(facts: PanelFacts, id: string, change: Parameters<typeof signed>[1]): PanelFacts {
  const step = {
    ...facts.steps.deliver,
    decisions: { ...facts.steps.deliver.decisions, [id]: signed(`dec-${id}`, change) },
  }
  return { ...facts, steps: { ...facts.steps, deliver: step } }
}

describe('a step that is not a hold', () => {
  const bare = readyToStrip()
  const good = withValue(
    withValue(bare, 'deliver', 'slump', recorded(100)),
    'deliver',
    'seen',
    recorded('T4'),
  )

  it('is ready when everything is recorded and passes', () => {
    expect(deliver(good)).toMatchObject({ ready: true, verdict: 'pass', missing: [] })
    expect(deliver(good).entitled).toEqual(['floor', 'lead', 'engineer'])
  })

  it('waits for what is not recorded', () => {
    const card = deliver(withValue(good, 'deliver', 'slump', undefined))
    expect(card.ready).toBe(false)
    expect(row(card, 'slump').unknown).toEqual(['not recorded yet'])
  })

  it('a decision does not stand in for recording', () => {
    expect(
      deliver(decided(withValue(good, 'deliver', 'slump', undefined), 'slump', { reason: 'later' })).ready,
    ).toBe(false)
  })

  it.each(['fail', 'unknown'] as const)(
    'a planned check that is %s wants a decision with name and reason, and stays visible',
    (verdict) => {
      const check = planned(verdict, 'deliver')
      expect(deliver(good, check).ready).toBe(false)
      for (const change of [
        { reason: null },
        { reason: '  ' },
        { reason: 'x', revision: 'B' },
        { reason: 'x', by: { ...LEAD, role: 'viewer' as const } },
      ]) {
        expect(deliver(decided(good, 'own', change), check).ready).toBe(false)
      }
      const card = deliver(decided(good, 'own', { reason: 'ordered more' }), check)
      expect(card).toMatchObject({ ready: true, verdict })
      expect(row(card, 'own')).toMatchObject({ verdict, decision: { entry: 'dec-own' } })
      expect(card.answer).toMatch(/Each has a decision/)
    },
  )

  it('a value of an older revision is shown but not counted', () => {
    const card = deliver(withValue(good, 'deliver', 'slump', recorded(100, { revision: null })))
    expect(card.ready).toBe(false)
    expect(row(card, 'slump')).toMatchObject({
      verdict: 'unknown',
      unknown: ['recorded for revision none, now A'],
    })
    expect(row(card, 'slump').recorded?.value).toBe(100)
  })

  it.each([
    [80, 'pass'],
    [79.9, 'fail'],
    [120, 'pass'],
    [120.1, 'fail'],
    ['100', 'unknown'],
    [Number.NaN, 'unknown'],
  ] as const)('a slump of %s is %s', (value, verdict) => {
    expect(row(deliver(withValue(good, 'deliver', 'slump', recorded(value))), 'slump').verdict).toBe(verdict)
  })

  it('shows limits to five figures, rounded inward, and judges by all of them', () => {
    const side: Asked = { ...SLUMP, low: 6700.203932499369, high: 6716.203932499369 }
    const plan = liftOnlyPlan({ asked: [side] })
    const facts = withValue(bare, 'deliver', 'slump', recorded(6700.2039))
    const card = cardOf({ plan, step: 'deliver', facts, yard: yardFacts(), now: NOW })
    expect(row(card, 'slump')).toMatchObject({ limit: '6700.3 to 6716.2', verdict: 'fail' })
  })

  it('is done when closed for this revision, and open again for the next', () => {
    const closed = {
      ...good,
      steps: { ...good.steps, deliver: { ...good.steps.deliver, closed: signed('z') } },
    }
    expect(deliver(closed)).toMatchObject({ state: 'done', ready: false })
    expect(deliver({ ...closed, revision: 'B' }).state).not.toBe('done')
  })
})

describe('holds and what stands behind them', () => {
  const card = (step: StepId, facts: PanelFacts) =>
    cardOf({ plan: liftOnlyPlan(), step, facts, yard: yardFacts(), now: NOW })

  it('nothing is open behind set while it is shut', () => {
    const empty = { ...emptyPanelFacts({ job: 'J', mark: 'P6' }), revision: 'A' }
    const states = STEP_IDS.map((step) => card(step, empty).state)
    expect(states.slice(0, 5)).toEqual(['open', 'open', 'open', 'open', 'open'])
    expect(states.slice(5).every((state) => state === 'waiting')).toBe(true)
  })

  it('with set open, what comes after strip still waits', () => {
    const states = STEP_IDS.map((step) => card(step, readyToStrip()).state)
    expect(states[4]).toBe('done')
    expect(states.slice(5, 10).every((state) => state === 'open')).toBe(true)
    expect(states.slice(10).every((state) => state === 'waiting')).toBe(true)
  })

  it('a set opened for an older revision is shut again until concrete is in it', () => {
    const facts = { ...readyToStrip(), revision: 'B' }
    expect(card('set', { ...facts, cast: null }).state).toBe('open')
    expect(card('set', facts).state).toBe('done')
  })

  it('each step’s card can be made from nothing at all', () => {
    for (const { id } of STEPS) {
      const found = card(id, emptyPanelFacts({ job: 'J', mark: 'P6' }))
      expect(found.answer).not.toBe('')
      expect(found.step).toBe(id)
    }
  })
})

describe('load', () => {
  const defect = (open: boolean): Defect => ({
    ...signed('f1'),
    text: 'Corner broken',
    place: null,
    step: 'strip',
    attachments: [],
    disposition: null,
    inspection: null,
    open,
  })
  const lifted = (): PanelFacts => {
    const facts = readyToStrip()
    return {
      ...facts,
      steps: { ...facts.steps, strip: { ...facts.steps.strip, opening: { ...signed('o2'), rests: [] } } },
    }
  }
  const card = (facts: PanelFacts) =>
    cardOf({ plan: liftOnlyPlan(), step: 'load', facts, yard: yardFacts(), now: NOW })

  it('is not ready with an open defect, even a decided one', () => {
    const facts = { ...lifted(), defects: [defect(true)] }
    const decisions = { 'no-open-defect': signed('x', { reason: 'go' }) }
    const decidedFacts = { ...facts, steps: { ...facts.steps, load: { ...facts.steps.load, decisions } } }
    expect(card(facts).ready).toBe(false)
    expect(card(decidedFacts).ready).toBe(false)
    expect(row(card(facts), 'no-open-defect').note).toBe('Corner broken')
  })

  it('is ready when the defect is dealt with and the tension on the road, not known in eu, is decided', () => {
    const facts = { ...lifted(), defects: [defect(false)] }
    expect(card(facts).missing).toEqual(['Tension of the panel, on the trailer: not known, needs a decision'])
    const decisions = { 'lift-peak:travel': signed('x', { reason: 'slow road, one mile' }) }
    const decided = { ...facts, steps: { ...facts.steps, load: { ...facts.steps.load, decisions } } }
    expect(card(decided).ready).toBe(true)
  })
})

describe('working on cards', () => {
  it('replays', () => {
    const cards = [
      strip(),
      strip({
        facts: { ...readyToStrip(), specimens: [specimen(30), specimen(31), specimen(29)] },
        yard: yardFacts({ yard: liftYard({ mixes: [{ mark: 'M40', strength: 40 }] }) }),
      }),
    ]
    let count = 0
    for (const step of cards.flatMap(({ rows }) => rows.flatMap(({ working }) => working))) {
      const again = replay(step)
      if (again === null) continue
      count += 1
      expect(Math.abs(again - Number(step.result))).toBeLessThanOrEqual(1e-9 * Math.abs(Number(step.result)))
    }
    expect(count).toBeGreaterThan(10)
  })
})

describe('advice of a computed night', () => {
  const failing = compare({
    id: 'night-least',
    step: 'cure',
    what: 'Lowest temperature of the concrete, computed',
    demand: 2,
    limit: 5,
    unit: '°C',
    sense: 'at least',
    source: COMMON_PRACTICE,
  })

  it('stands on the card of the cure and on no other, and keeps nothing shut', () => {
    const facts = readyToStrip()
    const plan = liftOnlyPlan()
    const base = { plan, facts, yard: yardFacts(), now: NOW }
    const without = cardOf({ ...base, step: 'cure' })
    const card = cardOf({ ...base, step: 'cure', night: [failing] })
    expect(card.rows.filter(({ advice }) => advice)).toMatchObject([{ id: 'night-least', verdict: 'fail' }])
    expect({ ...card, rows: [] }).toEqual({ ...without, rows: [] })
    expect(cardOf({ ...base, step: 'strip', night: [failing] })).toEqual(cardOf({ ...base, step: 'strip' }))
  })
})
