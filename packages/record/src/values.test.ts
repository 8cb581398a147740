import { InputError } from '@castwright/engine/working'
import { describe, expect, it } from 'vitest'
import { DRAWING, ENGINEER, FLOOR, LEAD, PANEL, START, YARD_FILE } from './example-entries.ts'
import { parseEntry } from './values.ts'

const ID = '01JNA0000000000000000000A0'
const SHA = 'a'.repeat(64)
const FRAME = {
  format: 'castwright.entry/1',
  id: ID,
  yard: 'example',
  subject: PANEL,
  person: FLOOR,
  device: { id: 'd1', counter: 1, previous: null, clockOffset: null },
  seen: new Date(START).toISOString(),
}
const AT = '2026-03-02T05:00:00.000Z'
const yard = { kind: 'yard', id: 'example' }
const picture = { sha256: SHA, name: 'cage.jpg', type: 'image/jpeg', size: 10 }

/** One good entry of each kind. */
const DIFFERENCE = {
  reference: 'LD-3',
  verdict: 'unknown',
  demand: null,
  limit: 40,
  unit: 'kN',
  missing: ['uneven legs: which legs count'],
}

const GOOD: Readonly<Record<string, object>> = {
  value: { step: 'set', check: 'oil', value: true },
  close: { step: 'place', value: null },
  request: { step: 'strip', value: null },
  opening: { step: 'set', value: null, rests: [ID] },
  decision: { step: 'deliver', check: 'slump', value: null, reason: 'Within what the engineer accepts' },
  design: { revision: 'A', value: { reference: 'LD-3' }, person: ENGINEER },
  defect: { value: { text: 'Chipped corner', place: [0, 3000] } },
  difference: {
    step: 'strip',
    check: 'lift-peak:release',
    revision: 'A',
    reason: 'Bars as drawn carry it',
    value: DIFFERENCE,
    person: ENGINEER,
  },
  disposition: { about: ID, reason: 'Repair by the method', value: { decision: 'repair' } },
  inspection: { about: ID, value: { verdict: 'pass' } },
  correction: { about: ID, reason: 'Misread', value: 95 },
  drawing: { revision: 'A', value: DRAWING },
  yard: { subject: yard, value: YARD_FILE },
  job: {
    subject: { kind: 'job', id: 'J1' },
    value: { mark: 'J1', yard: 'Example yard', due: { W1: '2026-03-09' } },
  },
  cast: { value: { at: AT, bed: 'B1', mix: 'M1' } },
  docket: { value: { number: '1', volume: 3.2, slump: 90, temperature: 18, waterAdded: 0 } },
  'docket-decision': {
    about: ID,
    reason: 'Used on a bed for the yard itself',
    value: { decision: 'send-back' },
    person: LEAD,
  },
  temperature: {
    value: {
      channel: 'core',
      readings: [
        [0, 20],
        [1, 22],
      ],
    },
  },
  specimen: { value: { specimen: 'C1', kind: 'cylinder', age: 18, strength: 17.5 } },
  'specimen-set': {
    value: {
      set: 'S1',
      kind: 'cylinder',
      size: 150,
      made: AT,
      docket: '3061',
      tests: [
        { age: 20, cured: 'panel', specimens: ['S1-1', 'S1-2'] },
        { age: 672, cured: 'standard', specimens: ['S1-3'] },
      ],
    },
  },
  weather: {
    subject: yard,
    value: { readings: [{ at: AT, air: 8, humidity: 80, wind: 6, windHeight: 0.5 }] },
  },
  gear: { subject: { kind: 'gear', id: 'crane-1' }, value: { due: '2026-09-01' } },
  limit: {
    subject: yard,
    check: 'x',
    value: { value: 2, unit: 'mm', standard: 'S', edition: '2019' },
    person: ENGINEER,
  },
  place: { value: { place: 'R1' } },
  photo: { value: null, attachments: [picture] },
  passport: { value: { sha256: SHA, to: 'the site' } },
}

const entry = (kind: string, change: object = {}) => ({ ...FRAME, kind, ...GOOD[kind], ...change })

describe('entry as it comes in', () => {
  it.each(Object.keys(GOOD))('reads a good %s', (kind) => {
    expect(parseEntry(entry(kind))).toEqual(entry(kind))
  })

  it.each<[string, object, string]>([
    ['an unknown kind', entry('song'), 'kind'],
    ['another format', entry('value', { format: 'castwright.entry/2' }), 'format'],
    ['an id that is no ULID', entry('value', { id: 'x' }), 'id'],
    ['an unknown field', entry('value', { colour: 'red' }), 'colour'],
    ['a counter of 0', entry('value', { device: { ...FRAME.device, counter: 0 } }), 'device.counter'],
    ['a local time', entry('value', { seen: '2026-03-02T05:00:00' }), 'seen'],
    ['a panel without a job', entry('value', { subject: { kind: 'panel', id: 'W1' } }), 'subject.id'],
    ['a value without a check', entry('value', { check: undefined }), 'check'],
    ['a value without a step', entry('value', { step: undefined }), 'step'],
    ['a value of nothing', entry('value', { value: null }), 'value'],
    ['a value that is no number', entry('value', { value: Number.NaN }), 'value'],
    ['an unknown step', entry('value', { step: 'paint' }), 'step'],
    ['a hold that is closed', entry('close', { step: 'set' }), 'step'],
    ['a step without hold that is asked to open', entry('request', { step: 'place' }), 'step'],
    ['a request with a value', entry('request', { value: true }), 'value'],
    ['an opening without what it rests on', entry('opening', { rests: undefined }), 'rests'],
    ['a decision without reason', entry('decision', { reason: undefined }), 'reason'],
    ['a decision with an empty reason', entry('decision', { reason: '' }), 'reason'],
    ['a design of no revision', entry('design', { revision: undefined }), 'revision'],
    ['a difference at another hold', entry('difference', { step: 'set' }), 'step'],
    ['a difference of no row', entry('difference', { check: undefined }), 'check'],
    ['a difference without reason', entry('difference', { reason: '' }), 'reason'],
    ['a difference of no revision', entry('difference', { revision: undefined }), 'revision'],
    [
      'a difference on a pass',
      entry('difference', { value: { ...DIFFERENCE, verdict: 'pass' } }),
      'value.verdict',
    ],
    [
      'a difference that says not what it is for',
      entry('difference', { value: { reference: 'LD-3', verdict: 'fail' } }),
      'value.demand',
    ],
    ['a defect without words', entry('defect', { value: { text: '' } }), 'value.text'],
    ['a disposition about nothing', entry('disposition', { about: undefined }), 'about'],
    ['an unknown disposition', entry('disposition', { value: { decision: 'hide' } }), 'value.decision'],
    ['a correction without reason', entry('correction', { reason: undefined }), 'reason'],
    [
      'a drawing that crosses itself',
      entry('drawing', {
        value: {
          ...DRAWING,
          outline: [
            [0, 0],
            [1000, 1000],
            [1000, 0],
            [0, 1000],
          ],
        },
      }),
      'value.outline',
    ],
    ['a drawing of another mark', entry('drawing', { value: { ...DRAWING, mark: 'W2' } }), 'value.mark'],
    ['a drawing of another job', entry('drawing', { value: { ...DRAWING, job: 'J2' } }), 'value.job'],
    ['a drawing of another revision', entry('drawing', { revision: 'B' }), 'value.revision'],
    ['a thickness of 0', entry('drawing', { value: { ...DRAWING, thickness: 0 } }), 'value.thickness'],
    ['a yard file about a panel', entry('yard', { subject: PANEL }), 'subject.kind'],
    ['a job under another mark', entry('job', { subject: { kind: 'job', id: 'J2' } }), 'value.mark'],
    ['a time of mixing without a zone', entry('cast', { value: { at: '2026-03-02 05:00' } }), 'value.at'],
    [
      'more into the panel than the truck held',
      entry('docket', { value: { number: '1', volume: 3, used: 3.1 } }),
      'value.used',
    ],
    ['a load decided without reason', entry('docket-decision', { reason: undefined }), 'reason'],
    ['a load decided about no docket', entry('docket-decision', { about: undefined }), 'about'],
    ['a load decided otherwise', entry('docket-decision', { value: { decision: 'keep' } }), 'value.decision'],
    ['a negative volume', entry('docket', { value: { number: '1', volume: -1 } }), 'value.volume'],
    [
      'readings that go back',
      entry('temperature', {
        value: {
          channel: 'c',
          readings: [
            [1, 20],
            [1, 21],
          ],
        },
      }),
      'value.readings',
    ],
    ['no readings', entry('temperature', { value: { channel: 'c', readings: [] } }), 'value.readings'],
    [
      'a specimen of no strength',
      entry('specimen', { value: { specimen: 'C', kind: 'cube', age: 18, strength: 0 } }),
      'value.strength',
    ],
    [
      'a specimen that is to be tested twice',
      entry('specimen-set', {
        value: {
          set: 'S1',
          kind: 'cube',
          made: AT,
          tests: [
            { age: 20, cured: 'panel', specimens: ['S1-1'] },
            { age: 672, cured: 'standard', specimens: ['S1-1'] },
          ],
        },
      }),
      'value',
    ],
    [
      'a set that nobody is to test',
      entry('specimen-set', { value: { set: 'S1', kind: 'cube', made: AT, tests: [] } }),
      'value.tests',
    ],
    [
      'a humidity of 101 %',
      entry('weather', { value: { readings: [{ at: AT, air: 8, humidity: 101, wind: 1 }] } }),
      'value.readings[0].humidity',
    ],
    [
      'a wind read on the ground',
      entry('weather', {
        value: { readings: [{ at: AT, air: 8, humidity: 80, wind: 1, windHeight: 0 }] },
      }),
      'value.readings[0].windHeight',
    ],
    ['a date that is none', entry('gear', { value: { due: '2026-02-30' } }), 'value.due'],
    ['a limit of no check', entry('limit', { check: undefined }), 'check'],
    [
      'a limit without edition',
      entry('limit', { value: { value: 2, unit: 'mm', standard: 'S' } }),
      'value.edition',
    ],
    ['a photo without a picture', entry('photo', { attachments: [] }), 'attachments'],
    [
      'a picture whose hash is none',
      entry('photo', { attachments: [{ ...picture, sha256: 'x' }] }),
      'attachments[0].sha256',
    ],
    ['words', 'nonsense' as unknown as object, ''],
  ])('refuses %s and names the field', (_, wrong, path) => {
    try {
      parseEntry(wrong)
      expect.unreachable('it was read')
    } catch (error) {
      expect(error).toBeInstanceOf(InputError)
      const paths = (error as InputError).issues.map((issue) => issue.path)
      expect(
        paths.some((found) => found === path || found.startsWith(`${path}[`)),
        paths.join(', '),
      ).toBe(true)
    }
  })
})
