import { describe, expect, it } from 'vitest'
import type { Draft } from './device.ts'
import type { Entry, Person } from './entry.ts'
import { panelSubject } from './entry.ts'
import {
  DRAWING,
  ENGINEER,
  ExampleDevice,
  FLOOR,
  LEAD,
  PANEL,
  START,
  stored,
  VIEWER,
  YARD_FILE,
} from './example-entries.ts'
import { createFold, fold } from './fold.ts'
import type { AnyEntry } from './order.ts'

const HOUR = 3_600_000
const YARD = { kind: 'yard', id: 'example' } as const

function panelOf(entries: Iterable<AnyEntry>) {
  const panel = fold(entries).panels.get('J1/W1')
  if (panel === undefined) throw new Error('no panel')
  return panel
}

function kindsOf(entries: Iterable<AnyEntry>): string[] {
  return fold(entries).flags.map(({ kind }) => kind)
}

const about = (entry: Entry, draft: Omit<Draft, 'subject' | 'about'>): Draft => ({
  ...draft,
  subject: entry.subject,
  about: entry.id,
})

const DIFFERENCE: Draft = {
  kind: 'difference',
  subject: PANEL,
  step: 'strip',
  check: 'lift-peak:release',
  revision: 'A',
  reason: 'bars as drawn',
  value: { reference: 'LD-3', verdict: 'fail', demand: 2.4, limit: 1.9, unit: 'MPa', missing: [] },
}

describe('values and corrections', () => {
  it('keeps the value seen last, with its verdict, person and revision', () => {
    const device = new ExampleDevice('d1')
    device.value('oil', false, { verdict: 'fail' })
    const last = device.value('oil', true, { revision: 'A' })
    const { values } = panelOf([last]).steps.set
    expect(values.oil).toMatchObject({
      entry: last.id,
      value: true,
      verdict: 'pass',
      by: FLOOR,
      revision: 'A',
      stored: null,
      corrects: [],
    })
  })

  it('takes no verdict for a pass', () => {
    const entry = new ExampleDevice('d1').make(FLOOR, {
      kind: 'value',
      subject: PANEL,
      step: 'set',
      check: 'oil',
      value: true,
    })
    expect(panelOf([entry]).steps.set.values.oil?.verdict).toBe('unknown')
  })

  it('lets a correction of a correction speak, and tells what it corrects', () => {
    const device = new ExampleDevice('d1')
    const first = device.value('slump', 900, { verdict: 'fail' })
    const second = device.make(
      FLOOR,
      about(first, { kind: 'correction', value: 95, reason: 'Typed a nought too many', verdict: 'fail' }),
    )
    const third = device.make(
      FLOOR,
      about(second, { kind: 'correction', value: 90, reason: 'Misread', verdict: 'pass' }),
    )
    const entries = [first, second, third]
    expect(panelOf(entries).steps.set.values.slump).toMatchObject({
      entry: third.id,
      value: 90,
      verdict: 'pass',
      corrects: [first.id, second.id],
      reason: 'Misread',
    })
    expect(kindsOf(entries)).toEqual([])
  })

  it('takes a value back when the correction is nothing, and what was said before speaks again', () => {
    const device = new ExampleDevice('d1')
    const first = device.value('slump', 90)
    const second = device.value('slump', 30, { verdict: 'fail' })
    const back = device.make(
      FLOOR,
      about(second, { kind: 'correction', value: null, reason: 'Another panel' }),
    )
    expect(panelOf([first, second, back]).steps.set.values.slump?.entry).toBe(first.id)
    const alone = device.make(
      FLOOR,
      about(first, { kind: 'correction', value: null, reason: 'Another panel' }),
    )
    expect(panelOf([first, second, back, alone]).steps.set.values.slump).toBeUndefined()
  })

  it.each<[string, (device: ExampleDevice, first: Entry) => Entry]>([
    [
      'points nowhere',
      (device, first) =>
        device.make(FLOOR, {
          ...about(first, { kind: 'correction', value: 1, reason: 'x' }),
          about: '00000000000000000000000001',
        }),
    ],
    [
      'is about another panel',
      (device, first) =>
        device.make(FLOOR, {
          ...about(first, { kind: 'correction', value: 1, reason: 'x' }),
          subject: panelSubject('J1', 'W2'),
        }),
    ],
    [
      'does not have the form of what it corrects',
      (device) => {
        const cast = device.make(FLOOR, {
          kind: 'cast',
          subject: PANEL,
          value: { at: '2026-03-02T06:00:00.000Z' },
        })
        return device.make(FLOOR, about(cast, { kind: 'correction', value: 7, reason: 'x' }))
      },
    ],
  ])('leaves out and flags a correction that %s', (_, make) => {
    const device = new ExampleDevice('d1')
    const first = device.value('slump', 90)
    const wrong = make(device, first)
    const state = fold([first, wrong])
    expect(state.flags.find(({ kind }) => kind === 'astray')?.entries).toEqual([wrong.id])
    expect(state.panels.get('J1/W1')?.steps.set.values.slump?.value).toBe(90)
  })

  it('leaves out and flags what a viewer made, and a limit that is no engineer’s', () => {
    const device = new ExampleDevice('d1')
    const value = device.value('oil', true, {}, VIEWER)
    const limit = device.make(LEAD, {
      kind: 'limit',
      subject: YARD,
      check: 'x',
      value: { value: 1, unit: '', standard: 'S', edition: '1' },
    })
    const state = fold([value, limit])
    expect(state.flags.map(({ kind }) => kind)).toEqual(['entitled', 'entitled'])
    expect(state.panels.get('J1/W1')?.steps.set.values).toEqual({})
    expect(state.yard.limits).toEqual({})
  })

  it('flags two devices that say different things, until one is corrected', () => {
    const [one, two] = [new ExampleDevice('d1'), new ExampleDevice('d2', START + 500)]
    const [a, b] = [one.value('slump', 90), two.value('slump', 70, { verdict: 'fail' })]
    expect(panelOf([a, b]).steps.set.values.slump?.entry).toBe(b.id)
    expect(fold([a, b]).flags).toMatchObject([
      { kind: 'conflict', panel: 'J1/W1', entries: [a.id, b.id].sort() },
    ])
    const settled = one
      .at(START + HOUR)
      .make(FLOOR, about(a, { kind: 'correction', value: 70, reason: 'Measured again', verdict: 'fail' }))
    expect(kindsOf([a, b, settled])).toEqual([])
    expect(kindsOf([a, two.value('slump', 90)])).toEqual(['gap'])
  })
})

describe('steps, decisions and holds', () => {
  it('keeps a decision only while no later value speaks', () => {
    const device = new ExampleDevice('d1')
    const value = device.value('slump', 70, { step: 'deliver', verdict: 'fail' })
    const decision = device.make(LEAD, {
      kind: 'decision',
      subject: PANEL,
      step: 'deliver',
      check: 'slump',
      value: null,
      reason: 'Placed by hand',
    })
    expect(panelOf([value, decision]).steps.deliver.decisions.slump?.entry).toBe(decision.id)
    const later = device.value('slump', 20, { step: 'deliver', verdict: 'fail' })
    expect(panelOf([value, decision, later]).steps.deliver.decisions).toEqual({})
  })

  it('closes a step, and opens it again when the closing is taken back', () => {
    const device = new ExampleDevice('d1')
    const close = device.make(FLOOR, { kind: 'close', subject: PANEL, step: 'place', value: null })
    expect(panelOf([close]).steps.place.closed?.entry).toBe(close.id)
    const back = device.make(FLOOR, about(close, { kind: 'correction', value: null, reason: 'Not finished' }))
    expect(panelOf([close, back]).steps.place.closed).toBeNull()
  })

  it('takes of two openings the one that was first in the record', () => {
    const device = new ExampleDevice('record')
    const open = () =>
      device.make(LEAD, { kind: 'opening', subject: PANEL, step: 'set', value: null, rests: [] })
    const [first, second] = [open(), open()]
    const log = [...stored([second], 4), ...stored([first], 9)]
    expect(panelOf(log).steps.set.opening?.entry).toBe(second.id)
  })

  it('knows the lifting design only of the revision in force', () => {
    const device = new ExampleDevice('d1')
    const drawing = device.make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'A', value: DRAWING })
    const design = device.make(ENGINEER, {
      kind: 'design',
      subject: PANEL,
      revision: 'A',
      value: { reference: 'LD-3' },
    })
    expect(panelOf([drawing, design]).design?.entry).toBe(design.id)
    const next = device.make(LEAD, {
      kind: 'drawing',
      subject: PANEL,
      revision: 'B',
      value: { ...DRAWING, revision: 'B' },
    })
    expect(panelOf([drawing, design, next])).toMatchObject({ revision: 'B', design: null })
  })

  it('keeps a signed difference with what it was signed for, by an engineer only', () => {
    const device = new ExampleDevice('d1')
    const signs = (person: Person) => device.make(person, DIFFERENCE)
    const [first, second] = [signs(ENGINEER), signs(ENGINEER)]
    expect(panelOf([first]).steps.strip.differences['lift-peak:release']).toEqual({
      entry: first.id,
      by: ENGINEER,
      seen: first.seen,
      stored: null,
      reason: 'bars as drawn',
      revision: 'A',
      ...(DIFFERENCE.value as object),
    })
    expect(panelOf([first, second]).steps.strip.differences['lift-peak:release']?.entry).toBe(second.id)
    const back = device.make(ENGINEER, about(second, { kind: 'correction', value: null, reason: 'too soon' }))
    expect(panelOf([first, second, back]).steps.strip.differences['lift-peak:release']?.entry).toBe(first.id)
    for (const person of [LEAD, FLOOR]) {
      const state = fold([signs(person)])
      expect(state.panels.get('J1/W1')?.steps.strip.differences).toEqual({})
      expect(state.flags.map(({ kind }) => kind)).toContain('entitled')
    }
  })

  it('a difference takes no other value: it is signed again or taken back', () => {
    const device = new ExampleDevice('d1')
    const first = device.make(ENGINEER, DIFFERENCE)
    const other = device.make(
      ENGINEER,
      about(first, { kind: 'correction', value: DIFFERENCE.value, reason: 'higher' }),
    )
    expect(panelOf([first, other]).steps.strip.differences['lift-peak:release']?.entry).toBe(first.id)
    expect(kindsOf([first, other])).toEqual(['astray'])
  })

  it('flags one revision with two drawings', () => {
    const device = new ExampleDevice('d1')
    const make = (thickness: number) =>
      device.make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'A', value: { ...DRAWING, thickness } })
    expect(kindsOf([make(150), make(150)])).toEqual([])
    expect(kindsOf([make(150), make(160)])).toEqual(['gap', 'revision'])
  })
})

describe('what arrives after a hold was opened', () => {
  const scene = () => {
    const one = new ExampleDevice('d1')
    const two = new ExampleDevice('d2')
    const drawing = one.make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'A', value: DRAWING })
    const good = one.value('oil', true)
    const cast = one.make(FLOOR, {
      kind: 'cast',
      subject: PANEL,
      value: { at: '2026-03-02T08:00:00.000Z', bed: 'B1' },
    })
    const opening = (step: 'set' | 'strip') =>
      new ExampleDevice('record', START + HOUR).make(LEAD, {
        kind: 'opening',
        subject: PANEL,
        step,
        value: null,
        revision: 'A',
        rests: [good.id, cast.id],
      })
    return {
      one,
      two,
      drawing,
      good,
      cast,
      opening,
      log: (step: 'set' | 'strip') => stored([drawing, good, cast, opening(step)]),
    }
  }

  it('leaves the opening as it is and raises a defect that keeps the panel from being loaded', () => {
    const { two, log } = scene()
    const late = two.value('chairs', false, { verdict: 'fail' })
    const panel = panelOf([...log('set'), ...stored([late], 4)])
    expect(panel.steps.set.opening).not.toBeNull()
    expect(panel.defects).toMatchObject([
      { entry: late.id, open: true, step: 'set', text: 'In the record after set was opened: chairs fails.' },
    ])
    expect(kindsOf([...log('set'), ...stored([late], 4)])).toEqual(['late'])
    // The same while it is only kept on the device.
    expect(panelOf([...log('set'), late]).defects).toHaveLength(1)
  })

  it('raises nothing for a pass, for another step, or for what was in the record before', () => {
    const { one, two, log } = scene()
    const pass = two.value('chairs', true)
    const other = two.value('slump', 20, { step: 'deliver', verdict: 'fail' })
    expect(panelOf([...log('set'), ...stored([pass, other], 4)]).defects).toEqual([])
    const before = one.value('chairs', false, { verdict: 'fail' })
    const [drawing, good, cast, opening] = log('set').map((entry, index) => ({ ...entry, index: index * 2 }))
    expect(panelOf([drawing, good, cast, opening, ...stored([before], 3)] as AnyEntry[]).defects).toEqual([])
  })

  it('raises one for a correction that takes away or fails what the opening rested on', () => {
    const { two, good, log } = scene()
    const back = two.make(FLOOR, about(good, { kind: 'correction', value: null, reason: 'Another panel' }))
    expect(panelOf([...log('set'), ...stored([back], 4)]).defects.map(({ text }) => text)).toEqual([
      'In the record after set was opened: a value that it rested on was taken back.',
    ])
    const wrong = two.make(
      FLOOR,
      about(good, { kind: 'correction', value: false, reason: 'Misread', verdict: 'fail' }),
    )
    expect(panelOf([...log('set'), ...stored([wrong], 4)]).defects).toMatchObject([
      { entry: wrong.id, open: true },
    ])
  })

  it('raises one for a cylinder below the strength of the lifting design', () => {
    const { two, log } = scene()
    const make = (strength: number) =>
      two.make(FLOOR, {
        kind: 'specimen',
        subject: PANEL,
        value: { specimen: 'C2', kind: 'cylinder', age: 18, strength },
      })
    expect(panelOf([...log('strip'), ...stored([make(15)], 4)]).defects).toEqual([])
    expect(panelOf([...log('strip'), ...stored([make(14.9)], 4)]).defects[0]?.text).toContain(
      'below the 15 MPa',
    )
    expect(panelOf([...log('set'), ...stored([make(14.9)], 4)]).defects).toEqual([])
  })

  it('holds a cube that comes late against that strength as four fifths of itself', () => {
    const { two, log } = scene()
    const make = (strength: number) =>
      two.make(FLOOR, {
        kind: 'specimen',
        subject: PANEL,
        value: { specimen: 'C2', kind: 'cube', age: 18, strength },
      })
    expect(panelOf([...log('strip'), ...stored([make(18.8)], 4)]).defects).toEqual([])
    expect(panelOf([...log('strip'), ...stored([make(18.7)], 4)]).defects[0]?.text).toContain(
      'four fifths of it, below the 15 MPa',
    )
  })

  it('raises one for a difference that it rested on and that was taken back before', () => {
    const { two, differs } = differing()
    const back = two.make(
      ENGINEER,
      about(differs.signed, { kind: 'correction', value: null, reason: 'bars are not there' }),
    )
    expect(panelOf([...differs.log, ...stored([back], 6)]).defects).toMatchObject([
      {
        entry: back.id,
        open: true,
        text: expect.stringContaining('a difference that it rested on was taken'),
      },
    ])
  })

  it('raises one for a result below the one at which a difference was signed, though the design asks less', () => {
    const { two, differs } = differing()
    const make = (strength: number) =>
      two.make(FLOOR, {
        kind: 'specimen',
        subject: PANEL,
        value: { specimen: 'C2', kind: 'cylinder', age: 18, strength },
      })
    expect(panelOf([...differs.log, ...stored([make(21)], 6)]).defects).toEqual([])
    expect(panelOf([...differs.log, ...stored([make(20.9)], 6)]).defects[0]?.text).toBe(
      'In the record after strip was opened: cylinder C2 gave 20.9 MPa, below the 21 MPa at which a difference was signed.',
    )
    expect(panelOf([...differs.log, ...stored([make(14)], 6)]).defects[0]?.text).toMatch(
      /below the 15 MPa of the lifting design and the 21 MPa at which/,
    )
  })

  it('raises none for a difference that comes later: it keeps nothing shut', () => {
    const { two, differs } = differing()
    const again = two.make(ENGINEER, DIFFERENCE)
    expect(panelOf([...differs.log, ...stored([again], 6)]).defects).toEqual([])
  })

  /** A strip that opened on a result of 21 MPa and a signed difference. */
  function differing() {
    const { one, two, drawing, good, cast } = scene()
    const result = one.make(FLOOR, {
      kind: 'specimen',
      subject: PANEL,
      value: { specimen: 'C1', kind: 'cylinder', age: 18, strength: 21 },
    })
    const signed = one.make(ENGINEER, DIFFERENCE)
    const opening = new ExampleDevice('record', START + HOUR).make(LEAD, {
      kind: 'opening',
      subject: PANEL,
      step: 'strip',
      value: null,
      revision: 'A',
      rests: [cast.id, result.id, signed.id],
    })
    return { two, differs: { signed, log: stored([drawing, good, cast, result, signed, opening]) } }
  }

  it('raises one for gear that was not in date, when the date it rested on is corrected', () => {
    const { two, drawing } = scene()
    const subject = { kind: 'gear', id: 'crane' } as const
    const gear = two.make(LEAD, { kind: 'gear', subject, value: { due: '2026-10-01' } })
    const opening = new ExampleDevice('record', START + HOUR).make(LEAD, {
      kind: 'opening',
      subject: PANEL,
      step: 'strip',
      value: null,
      rests: [gear.id],
    })
    const log = stored([drawing, gear, opening])
    const correct = (value: Entry['value']) =>
      two.make(LEAD, about(gear, { kind: 'correction', value, reason: 'Wrong plate read' }))
    const texts = (entry: Entry) => panelOf([...log, ...stored([entry], 3)]).defects.map(({ text }) => text)
    expect(texts(correct({ due: '2026-03-01' }))).toEqual([
      'In the record after strip was opened: crane was in date only up to 2026-03-01.',
    ])
    expect(texts(correct({ due: '2026-03-02' }))).toEqual([])
    expect(texts(correct(null))).toHaveLength(1)
    const folding = createFold()
    folding.add(log)
    folding.state()
    folding.add([correct(null)])
    expect(folding.state().panels.get('J1/W1')?.defects).toHaveLength(1)
  })

  it('raises one for a revision that was there before the hold opened', () => {
    const { two, log } = scene()
    const newer = (when: number) =>
      new ExampleDevice('d3')
        .at(when)
        .make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'B', value: { ...DRAWING, revision: 'B' } })
    expect(panelOf([...log('set'), ...stored([newer(START)], 4)]).defects).toHaveLength(1)
    expect(panelOf([...log('set'), ...stored([newer(START + 9 * HOUR)], 4)]).defects).toEqual([])
    expect(two.state.counter).toBe(0)
  })
})

describe('defects', () => {
  const found = () => {
    const device = new ExampleDevice('d1')
    const defect = device.make(FLOOR, {
      kind: 'defect',
      subject: PANEL,
      step: 'strip',
      value: { text: 'Chipped corner', place: [0, 3000] },
    })
    const dispose = (decision: string) =>
      device.make(LEAD, about(defect, { kind: 'disposition', reason: 'By the method', value: { decision } }))
    const inspect = (verdict: string) =>
      device.make(FLOOR, about(defect, { kind: 'inspection', value: { verdict } }))
    return { defect, dispose, inspect }
  }

  it('is open until it is accepted', () => {
    const { defect, dispose } = found()
    expect(panelOf([defect]).defects).toMatchObject([
      { open: true, text: 'Chipped corner', place: [0, 3000], step: 'strip' },
    ])
    expect(panelOf([defect, dispose('accept')]).defects[0]?.open).toBe(false)
  })

  it('is open until a repair has passed an inspection made after the decision', () => {
    const { defect, dispose, inspect } = found()
    const early = inspect('pass')
    const repair = dispose('repair')
    expect(panelOf([defect, early, repair]).defects[0]).toMatchObject({ open: true, inspection: null })
    const failed = inspect('fail')
    expect(panelOf([defect, early, repair, failed]).defects[0]?.open).toBe(true)
    expect(panelOf([defect, early, repair, failed, inspect('pass')]).defects[0]?.open).toBe(false)
  })

  it('stays open on a rejected panel, whatever is inspected', () => {
    const { defect, dispose, inspect } = found()
    expect(panelOf([defect, dispose('reject'), inspect('pass')]).defects[0]?.open).toBe(true)
  })

  it('is not closed by somebody who is not entitled', () => {
    const { defect } = found()
    const device = new ExampleDevice('d2')
    const wrong = device.make(
      FLOOR,
      about(defect, { kind: 'disposition', reason: 'Looks fine', value: { decision: 'accept' } }),
    )
    expect(panelOf([defect, wrong]).defects[0]?.open).toBe(true)
    expect(kindsOf([defect, wrong])).toEqual(['entitled'])
  })
})

describe('the yard', () => {
  it('knows its file, gear, limits, jobs, weather and people', () => {
    const device = new ExampleDevice('d1')
    const at = '2026-03-02T06:00:00.000Z'
    const entries = [
      device.make(LEAD, { kind: 'yard', subject: YARD, value: YARD_FILE }),
      device.make(LEAD, {
        kind: 'gear',
        subject: { kind: 'gear', id: 'crane' },
        value: { due: '2026-04-01' },
      }),
      device.make(LEAD, {
        kind: 'gear',
        subject: { kind: 'gear', id: 'crane' },
        value: { due: '2026-10-01' },
      }),
      device.make(ENGINEER, {
        kind: 'limit',
        subject: YARD,
        check: 'x',
        value: { value: 2, unit: 'mm', standard: 'S', edition: '1' },
      }),
      device.make(LEAD, {
        kind: 'job',
        subject: { kind: 'job', id: 'J1' },
        value: { mark: 'J1', yard: 'Example yard', due: { W1: '2026-03-09' } },
      }),
      device.make(FLOOR, {
        kind: 'weather',
        subject: YARD,
        value: { readings: [{ at, air: 8, humidity: 80, wind: 5 }] },
      }),
      device.make(FLOOR, {
        kind: 'weather',
        subject: YARD,
        value: { readings: [{ at, air: 9, humidity: null, wind: 5 }] },
      }),
      device.make(LEAD, {
        kind: 'weather',
        subject: YARD,
        value: { forecast: true, readings: [{ at, air: 11, humidity: null, wind: 5, sun: 300 }] },
      }),
    ]
    const state = fold(entries)
    expect(state.yard.yard?.name).toBe('Example yard')
    expect(state.yard.gear).toMatchObject({ crane: { due: '2026-10-01' } })
    expect(state.yard.limits).toMatchObject({ x: { value: 2, unit: 'mm', by: ENGINEER } })
    expect(state.jobs.get('J1')?.due).toEqual({ W1: '2026-03-09' })
    expect(state.weather).toEqual([{ entry: entries[6]?.id, at, air: 9, humidity: null, wind: 5 }])
    expect(state.forecast).toEqual([
      { entry: entries[7]?.id, at, air: 11, humidity: null, wind: 5, sun: 300 },
    ])
    expect([...state.people.values()].map(({ name, entries: count }) => `${name} ${count}`)).toEqual([
      'Ines Vale 1',
      'Tom Reed 2',
      'Rua Hale 5',
    ])
    expect(state.flags).toEqual([])
  })

  it('keeps pour, night and place of a panel', () => {
    const device = new ExampleDevice('d1')
    const about = { subject: PANEL }
    const sha256 = 'a'.repeat(64)
    const entries = [
      device.make(FLOOR, {
        ...about,
        kind: 'cast',
        value: { at: '2026-03-02T08:00:00.000Z', bed: 'B1', mix: 'M1' },
      }),
      device.make(FLOOR, { ...about, kind: 'docket', value: { number: '77', slump: 90 } }),
      device.make(FLOOR, {
        ...about,
        kind: 'temperature',
        value: {
          channel: 'core',
          readings: [
            [0, 20],
            [1, 23],
          ],
        },
      }),
      device.make(FLOOR, {
        ...about,
        kind: 'specimen',
        value: { specimen: 'C1', kind: 'cylinder', age: 18, strength: 17 },
      }),
      device.make(FLOOR, {
        ...about,
        kind: 'specimen-set',
        value: {
          set: 'S1',
          kind: 'cylinder',
          made: '2026-03-02T08:20:00.000Z',
          tests: [{ age: 672, cured: 'standard', specimens: ['S1-1'] }],
        },
      }),
      device.make(FLOOR, { ...about, kind: 'place', value: { place: 'R1' } }),
      device.make(FLOOR, {
        ...about,
        kind: 'photo',
        value: { text: 'East end' },
        attachments: [{ sha256, name: 'a.jpg', type: 'image/jpeg', size: 1 }],
      }),
      device.make(LEAD, { ...about, kind: 'passport', value: { sha256 } }),
    ]
    const state = fold(entries)
    expect(state.panels.get('J1/W1')).toMatchObject({
      cast: { at: '2026-03-02T08:00:00.000Z', bed: 'B1', mix: 'M1' },
      specimens: [{ specimen: 'C1', strength: 17, by: FLOOR }],
      sets: [{ set: 'S1', tests: [{ age: 672, specimens: ['S1-1'] }], by: FLOOR }],
      temperatures: [
        {
          channel: 'core',
          readings: [
            [0, 20],
            [1, 23],
          ],
        },
      ],
      place: 'R1',
    })
    expect(state.dockets.get('J1/W1')).toMatchObject([{ number: '77', slump: 90 }])
    expect(state.photos.get('J1/W1')).toMatchObject([{ text: 'East end', attachments: [{ sha256 }] }])
    expect(state.passports.get('J1/W1')).toMatchObject([{ sha256 }])
  })
})

describe('devices', () => {
  it('shows what is missing and what stands twice in a device’s chain', () => {
    const device = new ExampleDevice('d1')
    const [a, b, c, d] = [
      device.value('a', 1),
      device.value('b', 2),
      device.value('c', 3),
      device.value('d', 4),
    ]
    expect(fold([a, d] as Entry[]).flags.map(({ text }) => text)).toEqual([
      'Device d1: entries 2 to 3 are not here.',
    ])
    const twin = { ...(b as Entry), id: '00000000000000000000000001' }
    expect(fold([a, b, twin, c, d] as Entry[]).flags.map(({ kind }) => kind)).toEqual(['fork'])
  })

  it.each([
    [120_000, []],
    [-120_000, []],
    [120_001, ['The clock of device d1 was 2 minutes fast.']],
    [-600_000, ['The clock of device d1 was 10 minutes slow.']],
  ])('says a clock that is %i ms off: %j', (clockOffset, texts) => {
    const device = new ExampleDevice('d1')
    device.state = { ...device.state, clockOffset }
    expect(fold([device.value('a', 1)]).flags.map(({ text }) => text)).toEqual(texts)
  })
})

describe('a fold that goes on', () => {
  it('folds again only the panels that are spoken of', () => {
    const device = new ExampleDevice('d1')
    const folding = createFold()
    folding.add([device.value('a', 1), device.value('a', 1, { subject: panelSubject('J1', 'W2') })])
    const before = folding.state()
    expect(folding.state()).toBe(before)
    folding.add([device.value('b', 2)])
    const after = folding.state()
    expect(after.panels.get('J1/W2')).toBe(before.panels.get('J1/W2'))
    expect(after.panels.get('J1/W1')).not.toBe(before.panels.get('J1/W1'))
  })

  it('puts the stored entry in the place of its kept copy, in either order', () => {
    const entry = new ExampleDevice('d1').value('a', 1)
    const [kept] = stored([entry])
    for (const order of [
      [entry, kept],
      [kept, entry],
    ] as AnyEntry[][]) {
      expect(panelOf(order).steps.set.values.a?.stored).toBe(entry.seen)
      expect(fold(order)).toMatchObject({ size: 1, flags: [] })
    }
  })

  it('flags one id with two contents and takes the one that is stored', () => {
    const entry = new ExampleDevice('d1').value('a', 1)
    const [kept] = stored([{ ...entry, value: 2 }])
    for (const order of [
      [entry, kept],
      [kept, entry],
    ] as AnyEntry[][]) {
      expect(panelOf(order).steps.set.values.a?.value).toBe(2)
      expect(kindsOf(order)).toEqual(['twice'])
    }
  })

  it('folds 20,000 entries in a second or two', () => {
    const device = new ExampleDevice('d1')
    const model = device.value('a', 1)
    const many = Array.from(
      { length: 20_000 },
      (_, index): Entry => ({
        ...model,
        id: `0${String(index).padStart(25, '0')}`,
        subject: panelSubject('J1', `W${index % 400}`),
        check: `c${index % 37}`,
        device: { ...model.device, counter: index + 1 },
      }),
    )
    const start = performance.now()
    expect(fold(many).panels.size).toBe(400)
    expect(performance.now() - start).toBeLessThan(5000)
  })
})
