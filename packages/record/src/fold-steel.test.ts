import { EXAMPLE_BUNDLE as EXAMPLE } from '@castwright/engine/steel/incoming'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Draft } from './device.ts'
import type { Entry } from './entry.ts'
import { ENGINEER, ExampleDevice, FLOOR, LEAD, PANEL, stored } from './example-entries.ts'
import { fold } from './fold.ts'
import { panelsOfHeat } from './fold-steel.ts'
import { passportEntries } from './passport-entries.ts'
import { parseEntry } from './values.ts'

/** As an entry's value: plain JSON, no field undefined. */
const EXAMPLE_BUNDLE = EXAMPLE as unknown as Record<string, Entry['value']>
const BUNDLE = { kind: 'bundle', id: 'B-7' } as const
const BAR = { kind: 'bar', id: 'shear' } as const

function cut(change: Record<string, unknown> = {}): Draft {
  return {
    kind: 'cut',
    subject: BAR,
    value: {
      plan: null,
      line: null,
      diameter: 12,
      grade: '500E',
      from: { bundle: 'B-7' },
      stock: 6000,
      bars: 2,
      pieces: [{ length: 2900, count: 1, mark: 'MX1', panel: PANEL.id }],
      offcut: 3000,
      kept: true,
      ...change,
    } as Entry['value'],
  }
}

/** A bundle accepted, cut, and its offcut cut again. */
function week() {
  const device = new ExampleDevice('d-1')
  const came = device.make(FLOOR, {
    kind: 'bundle',
    subject: BUNDLE,
    value: EXAMPLE_BUNDLE as unknown as Entry['value'],
  })
  const accepted = device.make(FLOOR, { kind: 'release', subject: BUNDLE, value: { decision: 'accept' } })
  const drawing = device.value('mark', 'yes', { step: 'steel-in' })
  const first = device.make(FLOOR, cut())
  const second = device.make(
    FLOOR,
    cut({
      from: { rack: first.id },
      stock: 3000,
      bars: 1,
      pieces: [{ length: 2000, count: 1, panel: 'J1/W2' }],
      offcut: 990,
    }),
  )
  return { device, came, accepted, drawing, first, second, all: [came, accepted, drawing, first, second] }
}

describe('steel in the record', () => {
  it('reads its entries by their form and refuses what cannot be', () => {
    const { all } = week()
    for (const entry of all) expect(parseEntry(entry)).toEqual(entry)
    const { device, first } = week()
    const long = cut({ pieces: [{ length: 2900, count: 2, panel: PANEL.id }] })
    expect(() => device.make(FLOOR, long)).toThrow(/within the length of the bar/)
    expect(() => parseEntry({ ...first, subject: PANEL })).toThrow(/subject.kind/)
  })

  it('follows bars from the bundle through the rack to the panel, and counts what is left', () => {
    const { first, second, all } = week()
    const { steel } = fold(all)
    expect(steel.bundles.get('B-7')).toMatchObject({ cutBars: 2, came: EXAMPLE_BUNDLE })
    expect(steel.rack.map(({ entry, length, count, bundle }) => [entry, length, count, bundle])).toEqual([
      [first.id, 3000, 1, 'B-7'],
      [second.id, 990, 1, 'B-7'],
    ])
    expect(steel.byPanel.get('J1/W2')?.[0]?.entries).toEqual(expect.arrayContaining([first.id, second.id]))
    expect(panelsOfHeat(steel, 'h-4022').map(({ panel }) => panel)).toEqual([PANEL.id, 'J1/W2'])
    expect(panelsOfHeat(steel, 'H4023')).toEqual([])
  })

  it('gives the panel its bundles, with what was decided about them', () => {
    const { all, accepted } = week()
    const facts = fold(all).panels.get(PANEL.id)
    expect(facts?.steel).toHaveLength(1)
    expect(facts?.steel?.[0]?.decisions.map(({ entry }) => entry)).toEqual([accepted.id])
  })

  it('takes a decision as made on what was on record then', () => {
    const { device, came, all } = week()
    const later = device.make(FLOOR, {
      kind: 'correction',
      subject: BUNDLE,
      about: came.id,
      reason: 'looked again',
      value: { ...EXAMPLE_BUNDLE, surface: ['pitted'] } as unknown as Entry['value'],
    })
    const bundle = fold([...all, later]).steel.bundles.get('B-7')
    expect(bundle?.came.surface).toEqual(['pitted'])
    expect(bundle?.decisions[0]?.stale).toBe(true)
    const again = device.make(LEAD, {
      kind: 'release',
      subject: BUNDLE,
      value: { decision: 'accept' },
      reason: 'ok',
    })
    expect(
      fold([...all, later, again])
        .steel.bundles.get('B-7')
        ?.decisions.at(-1)?.stale,
    ).toBe(false)
  })

  it('flags bars cut that nobody put into the rack, and more than lay there', () => {
    const { device, first, all } = week()
    const nowhere = device.make(
      FLOOR,
      cut({ from: { rack: all[0]?.id ?? '' }, stock: 3000, pieces: [], offcut: 0, kept: false }),
    )
    const many = device.make(
      FLOOR,
      cut({ from: { rack: first.id }, stock: 3000, bars: 2, pieces: [], offcut: 0, kept: false }),
    )
    const { flags, steel } = fold([...all, nowhere, many])
    expect(flags.filter(({ kind }) => kind === 'astray').map(({ entries }) => entries[0])).toEqual(
      expect.arrayContaining([nowhere.id, first.id]),
    )
    expect(steel.rack.every(({ count }) => count > 0)).toBe(true)
  })

  it('leaves two bars that name each other without an origin, and still ends', () => {
    const device = new ExampleDevice('d-2')
    const a = device.make(FLOOR, cut({ from: { rack: '00000000000000000000000000' } }))
    const b = { ...device.make(FLOOR, cut({ from: { rack: a.id } })) }
    const ring = { ...a, value: { ...(a.value as object), from: { rack: b.id } } } as Entry
    expect(fold([ring, b]).steel.byPanel.get(PANEL.id)?.[0]?.bundle).toBeNull()
  })

  it('flags a panel that was cleared for the pour before its bundle was kept apart', () => {
    const { device, all, accepted } = week()
    const opening = device.make(LEAD, {
      kind: 'opening',
      subject: PANEL,
      step: 'set',
      value: null,
      rests: [accepted.id],
    })
    const late = () => fold([...all, opening, recalled]).flags.filter(({ kind }) => kind === 'late')
    const recalled = device.make(LEAD, {
      kind: 'release',
      subject: BUNDLE,
      value: { decision: 'quarantine' },
      reason: 'the mill recalled the heat',
    })
    expect(late().map(({ panel, entries }) => [panel, entries])).toEqual([[PANEL.id, [recalled.id]]])
    expect(fold([...all, opening]).flags.filter(({ kind }) => kind === 'late')).toEqual([])
  })

  it('counts the bars cut of each line of a plan, and which plan took its place', () => {
    const device = new ExampleDevice('d-3')
    const plan = {
      diameter: 12,
      grade: '500E',
      kerf: 0,
      keep: null,
      lines: [
        { stock: 6000, count: 3, rack: false, pieces: [{ length: 2900, count: 2 }], offcut: 200 },
        { stock: 6000, count: 1, rack: false, pieces: [{ length: 2900, count: 1 }], offcut: 3100 },
      ],
    }
    const issued = device.make(LEAD, {
      kind: 'cut-plan',
      subject: { kind: 'yard', id: 'example' },
      value: plan,
    })
    const done = device.make(
      FLOOR,
      cut({ plan: issued.id, line: 1, bars: 2, pieces: [{ length: 2900, count: 2 }], offcut: 200 }),
    )
    const wrong = device.make(FLOOR, cut({ plan: issued.id, line: 3 }))
    const next = device.make(LEAD, {
      kind: 'cut-plan',
      subject: { kind: 'yard', id: 'example' },
      value: plan,
      about: issued.id,
    })
    const state = fold([issued, done, wrong, next])
    expect(state.steel.plans.map(({ cut: bars, replacedBy }) => [bars, replacedBy])).toEqual([
      [[2, 0], next.id],
      [[0, 0], null],
    ])
    expect(state.flags.some(({ entries }) => entries[0] === wrong.id)).toBe(true)
  })

  it('accepts neither of two bundles of one name until one is taken back, and still finds both heats', () => {
    const { all, accepted } = week()
    const other = new ExampleDevice('d-9')
    const came = other.make(FLOOR, {
      kind: 'bundle',
      subject: BUNDLE,
      value: { ...EXAMPLE_BUNDLE, tag: { heat: 'K 1' }, certificate: null },
    })
    const both = fold([...all, came])
    expect(both.steel.bundles.get('B-7')?.decisions).toEqual([])
    expect(both.steel.bundles.get('B-7')?.others).toHaveLength(1)
    expect(both.panels.get(PANEL.id)?.steel?.[0]?.doubt).toContain('Two bundles')
    expect(both.flags.some(({ text }) => text.startsWith('Two bundles'))).toBe(true)
    for (const heat of ['H4022', 'K1']) expect(panelsOfHeat(both.steel, heat)).toHaveLength(2)
    const back = other.make(FLOOR, {
      kind: 'correction',
      subject: BUNDLE,
      about: came.id,
      reason: 'was B-8',
      value: null,
    })
    const { decisions } = fold([...all, came, back]).steel.bundles.get('B-7') ?? {}
    expect(decisions?.map(({ entry }) => entry)).toEqual([accepted.id])
  })

  it('takes a decision as made on the readings that it names, whatever the clocks say', () => {
    const { device, came, all } = week()
    const value = { ...EXAMPLE_BUNDLE, surface: ['pitted'] }
    const correction = { kind: 'correction', subject: BUNDLE, about: came.id, reason: 'x', value } as const
    const unseen = new ExampleDevice('d-0').make(FLOOR, correction)
    const later = device.make(LEAD, {
      kind: 'release',
      subject: BUNDLE,
      about: came.id,
      reason: 'brushed',
      value: { decision: 'accept' },
    })
    const stale = (...more: Entry[]) =>
      fold([...all, ...more])
        .steel.bundles.get('B-7')
        ?.decisions.at(-1)?.stale
    expect(stale(later)).toBe(false)
    expect(stale(later, { ...unseen, seen: all.at(-1)?.seen ?? '' })).toBe(true)
  })

  it('leaves what an engineer decided where somebody below takes it back', () => {
    const { device, all } = week()
    const kept = device.make(ENGINEER, {
      kind: 'release',
      subject: BUNDLE,
      value: { decision: 'quarantine' },
      reason: 'recall',
    })
    const draft = { kind: 'correction', subject: BUNDLE, about: kept.id, reason: 'x', value: null } as const
    const last = (entry: Entry) =>
      fold([...all, kept, entry])
        .steel.bundles.get('B-7')
        ?.decisions.at(-1)?.decision
    expect(last(device.make(FLOOR, draft))).toBe('quarantine')
    expect(last(device.make(LEAD, draft))).toBe('quarantine')
    expect(last(device.make(ENGINEER, draft))).toBe('accept')
  })

  it('tells steel that was cut as another than its bundle, its plan or its place in the rack is', () => {
    const { device, all, first } = week()
    const other = device.make(FLOOR, cut({ diameter: 16 }))
    const { flags, panels } = fold([...all, other])
    expect(flags.find(({ entries }) => entries[0] === other.id)?.text).toContain(
      'other steel than bundle B-7',
    )
    expect(panels.get(PANEL.id)?.steel?.[0]?.doubt).toBe('Cut as 16 mm 500E, but bundle B-7 is 12 mm 500E.')
    const longer = device.make(FLOOR, cut({ from: { rack: first.id }, stock: 6000, bars: 1 }))
    const unplanned = device.make(FLOOR, cut({ plan: other.id, line: 1 }))
    const many = device.make(FLOOR, cut({ bars: 119 }))
    const texts = fold([...all, longer, unplanned, many]).flags.map(({ text }) => text)
    expect(texts).toEqual(
      expect.arrayContaining([
        'The bar that was cut is not the one that lay in the rack.',
        'A cut names a plan that is not here.',
        'More bars were cut from bundle B-7 than it held.',
      ]),
    )
  })

  it('tells a plan that two others replace, one cut after it was replaced, and bars cut over its lines', () => {
    const device = new ExampleDevice('d-4')
    const lines = [{ stock: 6000, count: 1, rack: false, pieces: [{ length: 2900, count: 2 }], offcut: 200 }]
    const plan = (about?: string) =>
      device.make(LEAD, {
        kind: 'cut-plan',
        subject: { kind: 'yard', id: 'example' },
        value: { diameter: 12, grade: '500E', kerf: 0, keep: null, lines },
        ...(about === undefined ? {} : { about }),
      })
    const first = plan()
    const [second, third] = [plan(first.id), plan(first.id)]
    const late = device.make(FLOOR, cut({ plan: first.id, line: 1, bars: 2 }))
    const { flags, steel } = fold([first, second, third, late])
    expect(steel.plans[0]?.replacedBy).toBe(second.id)
    expect(flags.map(({ text, entries }) => [text.slice(0, 12), entries[0]])).toEqual(
      expect.arrayContaining([
        ['Two plans to', third.id],
        ['Cut from a p', late.id],
        ['More bars we', first.id],
      ]),
    )
  })

  it('refuses a panel that is not job and mark, and keeps marks with a slash or a space', () => {
    const device = new ExampleDevice('d-5')
    const to = (panel: string) => device.make(FLOOR, cut({ pieces: [{ length: 2900, count: 1, panel }] }))
    expect(() => to('W1')).toThrow(/job\/mark/)
    const entry = to('J 1/W 1/a')
    expect([...fold([entry]).steel.byPanel.keys()]).toEqual(['J 1/W 1/a'])
  })

  it('refuses a plan whose pieces are longer than their bar', () => {
    const line = { stock: 6000, count: 1, rack: false, pieces: [{ length: 2900, count: 2 }], offcut: 200 }
    const plan = (change: object) =>
      new ExampleDevice('d-6').make(LEAD, {
        kind: 'cut-plan',
        subject: { kind: 'yard', id: 'example' },
        value: { diameter: 12, grade: '500E', kerf: 0, keep: null, lines: [{ ...line, ...change }] },
      })
    expect(plan({}).kind).toBe('cut-plan')
    expect(() => plan({ offcut: 201 })).toThrow(/within the length of the bar/)
    expect(() => plan({ pieces: [{ length: 1e6, count: 1_000_000 }] })).toThrow(
      /within the length of the bar/,
    )
  })

  it('gives bars, pieces and offcuts back where a cut is taken back, and tells what was cut from them since', () => {
    const { device, first, second, all } = week()
    const back = device.make(FLOOR, {
      kind: 'correction',
      subject: BAR,
      about: first.id,
      reason: 'x',
      value: null,
    })
    const { steel, flags } = fold([...all, back])
    expect(steel.bundles.get('B-7')?.cutBars).toBe(0)
    expect(steel.byPanel.has(PANEL.id)).toBe(false)
    expect(steel.rack.map(({ entry }) => entry)).toEqual([second.id])
    expect(steel.byPanel.get('J1/W2')?.[0]?.bundle).toBeNull()
    expect(flags.map(({ entries }) => entries[0])).toContain(second.id)
  })

  it('puts what the rack was corrected to into the passport', () => {
    const { device, came, accepted } = week()
    const value = { diameter: 12, grade: '500E', length: 3000, count: 1, bundle: null }
    const rack = device.make(FLOOR, { kind: 'rack', subject: BAR, value })
    const known = device.make(FLOOR, {
      kind: 'correction',
      subject: BAR,
      about: rack.id,
      reason: 'tag found',
      value: { ...value, bundle: 'B-7' },
    })
    const used = device.make(FLOOR, cut({ from: { rack: rack.id }, stock: 3000, bars: 1, kept: false }))
    const drawing = device.value('mark', 'yes', { step: 'steel-in' })
    const log = stored([came, accepted, rack, known, used, drawing])
    const ids = passportEntries(PANEL.id, log).map(({ id }) => id)
    expect(ids).toContain(known.id)
  })

  it('says the same in any order of arrival', () => {
    const { device, came, all } = week()
    const more = [
      device.make(ENGINEER, {
        kind: 'release',
        subject: BUNDLE,
        value: { decision: 'quarantine' },
        reason: 'recall',
      }),
      device.make(FLOOR, {
        kind: 'rack',
        subject: BAR,
        value: { diameter: 16, grade: '500E', length: 1200, count: 4 },
      }),
      device.make(FLOOR, { kind: 'used', subject: BUNDLE, value: { panel: 'J1/W3' } }),
      device.make(FLOOR, { kind: 'correction', subject: BUNDLE, about: came.id, reason: 'x', value: null }),
    ]
    const entries = [...all, ...more]
    const wanted = fold(entries)
    fc.assert(
      fc.property(fc.shuffledSubarray(entries, { minLength: entries.length }), (shuffled) => {
        const { steel, panels } = fold(shuffled)
        expect({ steel, panels }).toEqual({ steel: wanted.steel, panels: wanted.panels })
      }),
      { numRuns: 40 },
    )
  })

  it('puts bundle, decision and cuts into the passport of the panel and no other', () => {
    const { device, all } = week()
    const foreign = device.make(FLOOR, {
      kind: 'bundle',
      subject: { kind: 'bundle', id: 'B-8' },
      value: EXAMPLE_BUNDLE,
    })
    const log = stored([...all, foreign])
    const ids = passportEntries(PANEL.id, log).map(({ id }) => id)
    expect(ids).toEqual(all.slice(0, 4).map(({ id }) => id))
  })
})
