import { EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry, Person } from './entry.ts'
import { panelSubject } from './entry.ts'
import {
  DRAWING,
  ENGINEER,
  ExampleDevice,
  FLOOR,
  LEAD,
  START,
  stored,
  VIEWER,
  YARD_FILE,
} from './example-entries.ts'
import { createFold, fold, type YardState } from './fold.ts'
import type { AnyEntry } from './order.ts'

const SEED = 20261125

/** What somebody does next in a random history; `pick` chooses among what is there. */
interface Act {
  readonly what: string
  readonly device: number
  readonly person: number
  readonly pick: number
  readonly later: number
}

const PEOPLE: readonly Person[] = [LEAD, ENGINEER, FLOOR, FLOOR, VIEWER]
const CHECKS = ['oil', 'chairs', 'slump']
const VERDICTS = ['pass', 'fail', 'unknown'] as const

const act: fc.Arbitrary<Act> = fc.record({
  what: fc.constantFrom(
    'value',
    'value',
    'value',
    'correct',
    'correct',
    'back',
    'defect',
    'dispose',
    'inspect',
    'opening',
    'request',
    'close',
    'decision',
    'drawing',
    'design',
    'difference',
    'specimen',
    'specimen-set',
    'cast',
    'docket',
    'docket',
    'docket-decision',
    'temperature',
    'temperature',
    'gear',
    'weather',
    'yard',
    'place',
    'bundle',
    'bundle',
    'release',
    'release',
    'rack',
    'used',
    'cut-plan',
    'cut',
    'cut',
    'cut',
  ),
  device: fc.nat(3),
  person: fc.nat(PEOPLE.length - 1),
  pick: fc.nat(10_000),
  later: fc.integer({ min: -5000, max: 60_000 }),
})

const history = fc.record({
  acts: fc.array(act, { minLength: 1, maxLength: 40 }),
  /** Which entries have reached the record, and in which order. */
  order: fc.infiniteStream(fc.nat(1_000_000)),
  kept: fc.infiniteStream(fc.boolean()),
})

function play(acts: readonly Act[]): Entry[] {
  const devices = ['d1', 'd2', 'd3', 'record'].map((id) => new ExampleDevice(id))
  const entries: Entry[] = []
  let now = START
  for (const { what, device, person, pick, later } of acts) {
    now += later
    const hand = (devices[device] as ExampleDevice).at(now)
    const who = PEOPLE[person] as Person
    const entry = made(what, hand, who, pick, entries)
    if (entry) entries.push(entry)
  }
  return entries
}

function made(
  what: string,
  hand: ExampleDevice,
  who: Person,
  pick: number,
  entries: readonly Entry[],
): Entry | null {
  const subject = panelSubject('J1', `W${1 + (pick % 2)}`)
  const check = CHECKS[pick % CHECKS.length] as string
  const verdict = VERDICTS[pick % 3] as (typeof VERDICTS)[number]
  const some = (kinds: readonly string[]) => {
    const found = entries.filter(({ kind }) => kinds.includes(kind))
    return found[pick % Math.max(found.length, 1)]
  }
  switch (what) {
    case 'docket':
      return hand.make(who, {
        kind: 'docket',
        subject,
        value: { number: String(pick % 3), slump: 80 + (pick % 4), ...(pick % 2 ? { volume: 3 } : {}) },
      })
    case 'docket-decision': {
      const docket = some(['docket', 'correction', 'value'])
      return docket?.subject.kind === 'panel'
        ? hand.make(who, {
            kind: 'docket-decision',
            subject: docket.subject,
            about: docket.id,
            reason: 'seen at the chute',
            value: { decision: pick % 2 ? 'accept' : 'send-back' },
          })
        : null
    }
    case 'value':
      return hand.make(who, {
        kind: 'value',
        subject,
        step: pick % 5 === 0 ? 'deliver' : 'set',
        check,
        value: pick % 7,
        verdict,
      })
    case 'correct':
    case 'back': {
      const target = some([
        'value',
        'correction',
        'cast',
        'docket',
        'docket-decision',
        'temperature',
        'specimen',
        'close',
        'gear',
        ...STEEL_KINDS,
      ])
      return target
        ? hand.make(who, {
            kind: 'correction',
            subject: target.subject,
            about: target.id,
            value: what === 'back' ? null : corrected(target, pick),
            reason: 'x',
            verdict,
          })
        : null
    }
    case 'defect':
      return hand.make(who, { kind: 'defect', subject, value: { text: `Chip ${pick}` } })
    case 'dispose': {
      const target = some(['defect', 'value', 'correction'])
      const decision = ['accept', 'repair', 'reject'][pick % 3] as string
      return target
        ? hand.make(who, { kind: 'disposition', subject, about: target.id, reason: 'x', value: { decision } })
        : null
    }
    case 'inspect': {
      const target = some(['defect', 'value'])
      return target
        ? hand.make(who, { kind: 'inspection', subject, about: target.id, value: { verdict } })
        : null
    }
    case 'opening':
      return hand.make(who, {
        kind: 'opening',
        subject,
        step: pick % 2 ? 'set' : 'strip',
        value: null,
        rests: entries.filter((_, index) => (index + pick) % 3 === 0).map(({ id }) => id),
      })
    case 'request':
      return hand.make(who, { kind: 'request', subject, step: 'set', value: null })
    case 'close':
      return hand.make(who, { kind: 'close', subject, step: 'place', value: null })
    case 'decision':
      return hand.make(who, { kind: 'decision', subject, step: 'deliver', check, value: null, reason: 'x' })
    case 'drawing':
      return hand.make(who, {
        kind: 'drawing',
        subject,
        revision: pick % 3 ? 'A' : 'B',
        value: {
          ...DRAWING,
          mark: subject.id.slice(3),
          revision: pick % 3 ? 'A' : 'B',
          thickness: 150 + (pick % 2),
        },
      })
    case 'design':
      return hand.make(who, { kind: 'design', subject, revision: 'A', value: { reference: 'LD-3' } })
    case 'difference':
      return hand.make(who, {
        kind: 'difference',
        subject,
        step: 'strip',
        check: `lift-peak:${check}`,
        revision: pick % 3 ? 'A' : 'B',
        reason: 'x',
        value: { reference: 'LD-3', verdict: 'fail', demand: pick % 7, limit: 2, unit: 'MPa', missing: [] },
      })
    case 'specimen':
      return hand.make(who, {
        kind: 'specimen',
        subject,
        value: { specimen: 'C1', kind: 'cylinder', age: 18, strength: 10 + (pick % 10) },
      })
    case 'specimen-set':
      return hand.make(who, {
        kind: 'specimen-set',
        subject,
        value: {
          set: `S${pick % 3}`,
          kind: 'cylinder',
          made: new Date(START + pick).toISOString(),
          tests: [{ age: 24 + (pick % 5), cured: 'panel', specimens: [`S${pick % 3}-1`] }],
        },
      })
    case 'cast':
      return hand.make(who, { kind: 'cast', subject, value: { at: new Date(START + pick).toISOString() } })
    case 'temperature':
      return hand.make(who, {
        kind: 'temperature',
        subject,
        value: {
          channel: pick % 3 ? 'core' : 'face',
          readings: [[(pick % 8) / 2, pick % 60]],
          ...(pick % 2 ? { mixed: new Date(START + (pick % 4) * 1_800_000).toISOString() } : {}),
        },
      })
    case 'gear':
      return hand.make(who, {
        kind: 'gear',
        subject: { kind: 'gear', id: 'crane' },
        value: { due: `2026-0${1 + (pick % 9)}-01` },
      })
    case 'weather':
      return hand.make(who, {
        kind: 'weather',
        subject: { kind: 'yard', id: 'example' },
        value: {
          readings: [
            { at: new Date(START + (pick % 5)).toISOString(), air: pick % 30, humidity: null, wind: null },
          ],
        },
      })
    case 'yard':
      return hand.make(who, {
        kind: 'yard',
        subject: { kind: 'yard', id: 'example' },
        value: { ...YARD_FILE, name: `Yard ${pick % 3}` },
      })
    case 'bundle':
    case 'release':
    case 'rack':
    case 'used':
    case 'cut-plan':
    case 'cut':
      return madeOfSteel(what, hand, who, pick, some)
    default:
      return hand.make(who, { kind: 'place', subject, value: { place: `R${pick % 4}` } })
  }
}

const STEEL_KINDS = ['bundle', 'release', 'rack', 'used', 'cut']

/** The value of a correction: of the form of what it corrects where it is of steel, so that it takes hold. */
function corrected(target: Entry, pick: number): Entry['value'] {
  const { value } = target
  if (target.kind === 'bundle') return bundleOf(pick)
  if (target.kind === 'rack') return { ...(value as object), count: 1 + (pick % 9) } as Entry['value']
  if (target.kind === 'docket') return { ...(value as object), slump: pick % 200 } as Entry['value']
  if (target.kind === 'temperature') return { ...(value as object), readings: [[1, pick % 60]] }
  if (target.kind === 'cut') return { ...(value as object), bars: 1 + (pick % 9) } as Entry['value']
  return target.kind === 'used' ? { panel: `J1/W${pick % 4}` } : pick % 9
}

function bundleOf(pick: number): Entry['value'] {
  const grade = pick % 4 === 0 ? '300E' : '500E'
  return {
    ...EXAMPLE_BUNDLE,
    ordered: { ...EXAMPLE_BUNDLE.ordered, grade },
    tag: pick % 3 === 0 ? null : { heat: `H ${pick % 3}` },
    counted: 1 + (pick % 30),
  } as unknown as Entry['value']
}

function madeOfSteel(
  what: string,
  hand: ExampleDevice,
  who: Person,
  pick: number,
  some: (kinds: readonly string[]) => Entry | undefined,
): Entry {
  const bundle = { kind: 'bundle', id: `B-${pick % 3}` } as const
  const bar = { kind: 'bar', id: '12 500E' } as const
  const steel = { diameter: pick % 5 === 0 ? 16 : 12, grade: '500E' }
  const about = pick % 2 ? some([what, 'correction'])?.id : undefined
  const named = about === undefined ? {} : { about }
  const pieces = [{ length: 900, count: 1 + (pick % 2), mark: 'MX1', panel: `J1/W${1 + (pick % 3)}` }]
  switch (what) {
    case 'bundle':
      return hand.make(who, { kind: 'bundle', subject: bundle, value: bundleOf(pick) })
    case 'release': {
      const decision = ['accept', 'quarantine', 'return'][pick % 3] as string
      const on = pick % 2 ? some(['bundle', 'correction'])?.id : undefined
      return hand.make(who, {
        kind: 'release',
        subject: bundle,
        value: { decision },
        reason: 'x',
        ...(on === undefined ? {} : { about: on }),
      })
    }
    case 'rack':
      return hand.make(who, {
        kind: 'rack',
        subject: bar,
        value: { ...steel, length: 2000, count: 1 + (pick % 4), bundle: pick % 2 ? bundle.id : null },
      })
    case 'used':
      return hand.make(who, { kind: 'used', subject: bundle, value: { panel: `J1/W${1 + (pick % 3)}` } })
    case 'cut-plan':
      return hand.make(who, {
        kind: 'cut-plan',
        subject: { kind: 'yard', id: 'example' },
        value: {
          ...steel,
          kerf: 3,
          keep: null,
          lines: [{ stock: 2000, count: 1 + (pick % 4), rack: pick % 2 === 0, pieces, offcut: 100 }],
        },
        ...named,
      })
    default: {
      const source = some(['cut', 'rack', 'value'])
      const plan = some(['cut-plan'])?.id ?? null
      return hand.make(who, {
        kind: 'cut',
        subject: bar,
        value: {
          ...steel,
          plan: pick % 3 ? plan : null,
          line: pick % 3 ? 1 + (pick % 2) : null,
          from: pick % 2 && source !== undefined ? { rack: source.id } : { bundle: bundle.id },
          stock: 2000,
          bars: 1 + (pick % 3),
          pieces,
          offcut: 100,
          kept: pick % 4 < 2,
        },
      })
    }
  }
}

/** Maps with their order, so that equality covers it. */
function plain(state: YardState): unknown {
  return JSON.parse(JSON.stringify(state, (_, value: unknown) => (value instanceof Map ? [...value] : value)))
}

function shuffled<T>(items: readonly T[], stream: Iterator<number>): T[] {
  return items
    .map((item) => ({ item, key: stream.next().value as number }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item)
}

describe(`fold of random histories (seed ${SEED})`, () => {
  const arranged = history.map(({ acts, order, kept }) => {
    const entries = play(acts)
    const inRecord = shuffled(
      entries.filter(() => kept.next().value),
      order,
    )
    const set: AnyEntry[] = [...stored(inRecord), ...entries.filter((entry) => !inRecord.includes(entry))]
    // Repeated, in another order, some first as kept copies and then as stored ones.
    const again = shuffled([...set, ...set, ...entries.filter(() => kept.next().value)], order)
    return { set, again, cut: (order.next().value as number) % (again.length + 1) }
  })

  it('says one state whatever order and however often entries come', () => {
    fc.assert(
      fc.property(arranged, ({ set, again }) => {
        expect(plain(fold(again))).toEqual(plain(fold(set)))
      }),
      { seed: SEED, numRuns: 300 },
    )
  })

  it('says the same when it is asked in between', () => {
    fc.assert(
      fc.property(arranged, ({ set, again, cut }) => {
        const folding = createFold()
        folding.add(again.slice(0, cut))
        folding.state()
        for (const entry of again.slice(cut)) {
          folding.add([entry])
          folding.state()
        }
        expect(plain(folding.state())).toEqual(plain(fold(set)))
      }),
      { seed: SEED, numRuns: 150 },
    )
  })

  it('never forgets an entry: each speaks, was corrected, or is flagged', () => {
    fc.assert(
      fc.property(arranged, ({ set }) => {
        const state = fold(set)
        expect(state.size).toBe(new Set(set.map(({ id }) => id)).size)
        const entitled = set.filter(({ kind, person }) => kind === 'defect' && person.role !== 'viewer')
        const listed = new Set(
          [...state.panels.values()].flatMap(({ defects }) => defects.map(({ entry }) => entry)),
        )
        for (const { id } of entitled) expect(listed.has(id)).toBe(true)
      }),
      { seed: SEED, numRuns: 150 },
    )
  })
})
