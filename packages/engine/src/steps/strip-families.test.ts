import { describe, expect, it } from 'vitest'
import type { FamilyId } from '../codes/index.ts'
import { liftYard } from '../lift/reference-panels.ts'
import { FAMILY_IDS } from '../panel/drawing.ts'
import type { Card } from './card.ts'
import { cardOf } from './card-of.ts'
import {
  differencesSigned,
  ENGINEER,
  liftOnlyPlan,
  NOW,
  readyToStrip,
  specimen,
  withValue,
  yardFacts,
} from './example-facts.ts'
import type { EnteredLimit, PanelFacts } from './facts.ts'

/** The yard says depth, head, shank and steel of its inserts: what the anchor rules of eu and us ask of a kind. */
const YARD = liftYard({
  insertKinds: [
    {
      mark: 'F1',
      kind: 'face',
      rated: 50,
      ratedStrength: 15,
      leastStrength: 10,
      depth: 120,
      head: 2600,
      shaft: 24,
      steel: 230,
    },
  ],
})

type Entered = Readonly<Record<string, readonly [value: number, unit: string]>>

/** What an engineer enters in each family where it has no confirmed value of its own, for four face inserts and a flat lift. */
const ENTERED: Readonly<Record<FamilyId, Entered>> = {
  nz: {
    'lift.leastStrength': [12, 'MPa'],
    'lift.factor:release': [1.5, ''],
    'lift.insertFactor:release': [1.5, ''],
    'lift.tension': [0.3, '√MPa'],
  },
  au: { 'lift.leastStrength': [12, 'MPa'], 'lift.tension': [0.3, '√MPa'] },
  eu: { 'lift.insertMargin': [2.5, ''] },
  us: { 'lift.leastStrength': [12, 'MPa'], 'lift.insertFactor:release': [1.3, ''] },
}

/** Result of the cylinder, MPa: the us margin of 4 asks for more concrete than the others. */
const RESULT: Readonly<Record<FamilyId, number>> = { nz: 24, au: 24, eu: 24, us: 40 }

const WHOLE_CARD = [
  'design',
  'strength',
  'now:design-load:F1',
  'now:lift-peak:release',
  'now:lift-insert:release',
  'rigging-date',
  'rigging-rated',
  'lift-angle',
  'crane-date',
  'crane-rated',
  'lift-uplift',
  'design-load:F1',
  'crane',
  'crane-radius',
  'below-hook',
  'edges-free',
  'inserts-clean',
  'release',
  'zone-clear',
  'wind',
]

function limits(entered: Entered): Readonly<Record<string, EnteredLimit>> {
  return Object.fromEntries(
    Object.entries(entered).map(([key, [value, unit]]) => [
      key,
      { entry: `entered ${key}`, value, unit, standard: 'Works rule 4', edition: '2025', by: ENGINEER },
    ]),
  )
}

interface Case {
  readonly family: FamilyId
  readonly entered?: Entered
  readonly result?: number
  readonly facts?: (facts: PanelFacts) => PanelFacts
  readonly signed?: boolean
}

function card({
  family,
  entered = ENTERED[family],
  result = RESULT[family],
  facts: change = (facts) => facts,
  signed = false,
}: Case): Card {
  const yard = yardFacts({ yard: YARD, limits: limits(entered) })
  const plan = liftOnlyPlan({ family, yard: YARD, limits: yard.limits })
  const facts = change({ ...readyToStrip(), specimens: [specimen(result)] })
  const known = signed ? differencesSigned({ plan, facts, yard, now: NOW }) : facts
  return cardOf({ plan, step: 'strip', facts: known, yard, now: NOW })
}

describe.each(FAMILY_IDS)('the first lift by %s', (family) => {
  it('opens on our own results with every entry that it needs, and rests on exactly those', () => {
    const found = card({ family })
    expect(found.missing).toEqual([])
    expect(found).toMatchObject({ ready: true, state: 'open', verdict: 'pass', entitled: ['lead'] })
    expect(found.rows.map(({ id }) => id).sort()).toEqual([...WHOLE_CARD].sort())
    expect(found.rows.every(({ verdict, replaced }) => verdict === 'pass' && replaced === undefined)).toBe(
      true,
    )
    expect([...found.rests].sort()).toEqual(
      [
        'd1', // lifting design confirmed by the engineer
        'c1', // the pour: when water met cement
        `s-${RESULT[family]}`, // cylinder of this pour
        'v-C1',
        'v-8000',
        'v-700',
        ...['edges-free', 'inserts-clean', 'release', 'zone-clear', 'wind'].map((tick) => `v-${tick}`),
        'o1', // opening of set
        ...Object.keys(ENTERED[family]).map((key) => `entered ${key}`),
      ].sort(),
    )
  })

  it('stays shut without any one of the limits that an engineer enters there', () => {
    for (const key of Object.keys(ENTERED[family])) {
      const { [key]: _, ...rest } = ENTERED[family]
      const found = card({ family, entered: rest })
      expect(found.ready, key).toBe(false)
      expect(found.rows.some(({ verdict, unknown }) => verdict === 'unknown' && unknown.length > 0)).toBe(
        true,
      )
    }
  })

  it('stays shut without a result, with a poor one, without the design, with a tick amiss', () => {
    const shut: readonly ((facts: PanelFacts) => PanelFacts)[] = [
      (facts) => ({ ...facts, specimens: [] }),
      (facts) => ({ ...facts, specimens: [specimen(14)] }),
      (facts) => ({ ...facts, design: null }),
      (facts) => withValue(facts, 'strip', 'zone-clear', undefined),
    ]
    for (const facts of shut) expect(card({ family, facts, signed: true }).ready).toBe(false)
  })
})

describe('where ours fails and the design holds', () => {
  it('us with 24 MPa: the insert by the margin of 4; shut until an engineer signs the difference', () => {
    const shut = card({ family: 'us', result: 24 })
    const [row] = shut.rows.filter(({ verdict }) => verdict !== 'pass')
    expect(row).toMatchObject({ id: 'now:lift-insert:release', verdict: 'fail', difference: { may: true } })
    expect(shut.missing).toHaveLength(1)
    expect(shut.ready).toBe(false)
    const open = card({ family: 'us', result: 24, signed: true })
    expect(open).toMatchObject({ ready: true, missing: [] })
    expect(open.rests).toContain('diff-now:lift-insert:release')
  })

  it('eu without a margin: not known; shut until an engineer signs, and no signature lifts the strength', () => {
    expect(card({ family: 'eu', entered: {} }).ready).toBe(false)
    expect(card({ family: 'eu', entered: {}, signed: true }).ready).toBe(true)
    for (const family of ['nz', 'au', 'us'] as const)
      expect(card({ family, entered: {}, signed: true }).ready).toBe(false)
  })
})
