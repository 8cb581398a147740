import { describe, expect, it } from 'vitest'
import type { Draft } from './device.ts'
import type { Entry, Person } from './entry.ts'
import { panelSubject } from './entry.ts'
import { ENGINEER, ExampleDevice, FLOOR, LEAD, PANEL, stored } from './example-entries.ts'
import { fold } from './fold.ts'

const docket = (device: ExampleDevice, value: object, subject = PANEL): Entry =>
  device.make(FLOOR, {
    kind: 'docket',
    subject,
    step: 'deliver',
    value: { number: '77', ...value } as Entry['value'],
  })

const decide = (
  device: ExampleDevice,
  about: Entry,
  decision: 'accept' | 'send-back',
  person: Person = LEAD,
  more: Partial<Draft> = {},
): Entry =>
  device.make(person, {
    kind: 'docket-decision',
    subject: about.subject,
    about: about.id,
    reason: 'stiff, seen at the chute',
    revision: 'A',
    value: { decision },
    ...more,
  })

const correct = (device: ExampleDevice, about: Entry, value: Entry['value'], person = FLOOR): Entry =>
  device.make(person, {
    kind: 'correction',
    subject: about.subject,
    about: about.id,
    value,
    reason: 'misread',
  })

const loads = (entries: readonly Entry[]) => fold(entries).panels.get('J1/W1')?.dockets ?? []
const flags = (entries: readonly Entry[]) => fold(entries).flags.map(({ kind, text }) => [kind, text])

describe('loads of a pour', () => {
  it('takes entries of before, and says who said what', () => {
    const first = docket(new ExampleDevice('d1'), { slump: 90, volume: 3 })
    expect(loads([first])).toMatchObject([
      {
        number: '77',
        slump: 90,
        volume: 3,
        entry: first.id,
        entries: [first.id],
        differs: [],
        decision: null,
        said: { slump: { entry: first.id, seen: first.seen } },
      },
    ])
  })

  it('adds up what the office and the truck say of one number, on two devices', () => {
    const [office, phone] = [new ExampleDevice('d1'), new ExampleDevice('d2')]
    const ticket = docket(office, { volume: 3, mix: 'M40', truck: '4', specimens: ['W1-1'] })
    const truck = docket(phone.at(Date.parse(ticket.seen)), {
      slump: 95,
      mix: 'M40',
      truck: 'truck 4',
      specimens: ['W1-1', 'W1-2'],
    })
    for (const entries of [
      [ticket, truck],
      [truck, ticket],
    ]) {
      expect(loads(entries)).toMatchObject([
        { volume: 3, mix: 'M40', slump: 95, truck: 'truck 4', specimens: ['W1-1', 'W1-2'], differs: [] },
      ])
      expect(flags(entries)).toEqual([])
    }
    // Who said the mix first stands for it: the second said the same.
    expect(loads([ticket, truck])[0]?.said.mix?.entry).toBe(ticket.id)
  })

  it('says so where two devices say different things, until one is corrected', () => {
    const [one, two] = [new ExampleDevice('d1'), new ExampleDevice('d2')]
    const first = docket(one, { slump: 90 })
    const second = docket(two.at(Date.parse(first.seen)), { slump: 150 })
    expect(loads([first, second])).toMatchObject([{ slump: 150, differs: ['slump'] }])
    expect(flags([first, second])).toEqual([
      [
        'conflict',
        'deliver: docket 77 was recorded twice with different slump; what was seen last is in force.',
      ],
    ])
    const mended = correct(two, second, { number: '77', slump: 90 })
    expect(loads([first, second, mended])).toMatchObject([{ slump: 90, differs: [] }])
    const back = correct(two, second, null)
    expect(loads([first, second, back])).toMatchObject([{ slump: 90, differs: [] }])
  })

  it('dates what a correction changed, and leaves what it did not', () => {
    const device = new ExampleDevice('d1')
    const first = docket(device, { slump: 150, temperature: 20 })
    const mended = correct(device, first, { number: '77', slump: 110, temperature: 20 })
    const [load] = loads([first, mended])
    expect(load?.said.slump?.seen).toBe(mended.seen)
    expect(load?.said.temperature?.seen).toBe(first.seen)
  })

  it('a decision goes with its docket, also where it points at a correction of it', () => {
    const device = new ExampleDevice('d1')
    const first = docket(device, { slump: 150 })
    const mended = correct(device, first, { number: '77', slump: 160 })
    for (const about of [first, mended]) {
      const sent = decide(device, about, 'send-back')
      expect(loads([first, mended, sent])[0]?.decision).toMatchObject({
        decision: 'send-back',
        entry: sent.id,
        by: LEAD,
        reason: 'stiff, seen at the chute',
      })
    }
  })

  it('the later decision stands, an engineer’s over a lead’s', () => {
    const device = new ExampleDevice('d1')
    const first = docket(device, { slump: 150 })
    const accept = decide(device, first, 'accept')
    const back = decide(device, first, 'send-back')
    expect(loads([first, accept, back])[0]?.decision?.decision).toBe('send-back')
    const engineer = decide(device, first, 'send-back', ENGINEER)
    const lead = decide(device, first, 'accept')
    expect(loads([first, engineer, lead])[0]?.decision?.decision).toBe('send-back')
    expect(flags([first, accept, back, engineer, lead])).toEqual([
      ['entitled', 'A lead may not decide again what the engineer decided.'],
    ])
  })

  it('can be taken back, not by a lower role', () => {
    const device = new ExampleDevice('d1')
    const first = docket(device, { slump: 150 })
    const back = decide(device, first, 'send-back', ENGINEER)
    const byLead = correct(device, back, null, LEAD)
    expect(loads([first, back, byLead])[0]?.decision?.decision).toBe('send-back')
    const byEngineer = correct(device, back, null, ENGINEER)
    expect(loads([first, back, byLead, byEngineer])[0]?.decision).toBeNull()
  })

  it('the floor decides nothing, and a decision about no docket is flagged', () => {
    const device = new ExampleDevice('d1')
    const first = docket(device, { slump: 150 })
    const floor = decide(device, first, 'accept', FLOOR)
    const value = device.value('oil', true)
    const astray = decide(device, value, 'accept')
    expect(loads([first, floor, value, astray])[0]?.decision).toBeNull()
    expect(flags([first, floor, value, astray]).map(([kind]) => kind)).toEqual(['astray', 'entitled'])
  })

  it('one truck over two panels counts only as far as it reaches', () => {
    const other = panelSubject('J1', 'W2')
    const at = { batched: '2026-03-02T08:00:00.000Z' }
    const pair = (first: object, second: object) => {
      const device = new ExampleDevice('d1')
      return [
        docket(device, { volume: 6, ...at, ...first }),
        docket(device, { volume: 6, ...at, ...second }, other),
      ]
    }
    const [wrong] = flags(pair({}, {}))
    expect(wrong?.[1]).toContain('docket 77 is counted for J1/W1 and J1/W2')
    expect(flags(pair({ used: 3 }, { used: 3 }))).toEqual([])
    expect(flags(pair({ used: 3 }, { used: 3.1 }))).toHaveLength(1)
    // The number of another year is another load.
    expect(flags(pair({}, { batched: '2027-03-02T08:00:00.000Z' }))).toEqual([])
  })

  it('stored or kept, in any order: the same loads', () => {
    const [one, two] = [new ExampleDevice('d1'), new ExampleDevice('d2')]
    const first = docket(one, { slump: 90 })
    const second = docket(two.at(Date.parse(first.seen)), { volume: 3 })
    const back = decide(one, first, 'send-back')
    const plain = (entries: Parameters<typeof fold>[0]) =>
      JSON.stringify(fold(entries).panels.get('J1/W1')?.dockets).replace(/"stored":"?[^,"]*"?,/g, '')
    expect(plain([back, second, first])).toBe(plain(stored([first, second, back])))
  })
})
