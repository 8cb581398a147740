import type { Asked } from '@castwright/engine/working'
import { COMMON_PRACTICE } from '@castwright/engine/working'
import { parseEntry } from '@castwright/record'
import { describe, expect, test } from 'vitest'
import type { EntryDraft } from '../../record/index.ts'
import type { PanelPlace } from './act.ts'
import { askToOpen } from './ask-to-open.ts'
import { changeDocket } from './change-docket.ts'
import { closeStep } from './close-step.ts'
import { confirmDesign } from './confirm-design.ts'
import { correctValue } from './correct-value.ts'
import { decide } from './decide.ts'
import { decideLoad } from './decide-load.ts'
import { enterLimit } from './enter-limit.ts'
import { handOver } from './hand-over.ts'
import { inspectDefect } from './inspect-defect.ts'
import { keepPhoto } from './keep-photo.ts'
import { logInPlace } from './log-in-place.ts'
import { movePanel } from './move-panel.ts'
import { recordAir } from './record-air.ts'
import { recordCast } from './record-cast.ts'
import { recordDocket } from './record-docket.ts'
import { recordSet } from './record-set.ts'
import { recordSpecimen } from './record-specimen.ts'
import { recordSurface } from './record-surface.ts'
import { recordTemperature } from './record-temperature.ts'
import { recordValue } from './record-value.ts'
import { reportDefect } from './report-defect.ts'
import { settleDefect } from './settle-defect.ts'
import { signDifference } from './sign-difference.ts'
import { takeBackSurface } from './take-back-surface.ts'

const PLACE: PanelPlace = { job: 'J1', mark: 'W1', revision: 'B', edition: 'EN 1992-1-1:2004' }
const ABOUT = '01HZZZZZZZZZZZZZZZZZZZZZZ1'
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
const PHOTO = { sha256: 'a'.repeat(64), name: 'p.jpg', type: 'image/jpeg', size: 10 }

const SEEN = '2026-11-25T09:00:00.000Z'

/** What the device adds to a draft. */
function entryOf(draft: EntryDraft): unknown {
  return {
    ...draft,
    format: 'castwright.entry/1',
    id: '01HZZZZZZZZZZZZZZZZZZZZZZ2',
    yard: 'Y',
    person: { id: 'p1', name: 'P', role: 'lead' },
    device: { id: '01HZZZZZZZZZZZZZZZZZZZZZZ3', counter: 1, previous: null, clockOffset: null },
    seen: '2026-11-25T09:00:00.000Z',
  }
}

const ROW = {
  id: 'cover',
  verdict: 'fail',
  limit: 30,
} as Parameters<typeof decide.draft>[1]['row']

const PEAK = {
  id: 'now:lift-peak:release',
  verdict: 'fail',
  demand: 2.4,
  limit: 1.9,
  unit: 'MPa',
  unknown: [],
} as unknown as Parameters<typeof signDifference.draft>[1]['row']

const DRAFTS: readonly EntryDraft[] = [
  recordValue.draft(PLACE, { asked: SLUMP, value: 100 }),
  correctValue.draft(PLACE, { asked: SLUMP, about: ABOUT, value: 110, reason: 'misread' }),
  decide.draft(PLACE, { step: 'cage', row: ROW, reason: 'seen by the engineer' }),
  closeStep.draft(PLACE, { step: 'cage' }),
  askToOpen.draft(PLACE, { step: 'set' }),
  confirmDesign.draft(PLACE, { reference: 'LD-3', reason: '' }),
  signDifference.draft(PLACE, { row: PEAK, reference: 'LD-3', reason: 'bars as drawn' }),
  recordCast.draft(PLACE, { at: '2026-11-24T14:10:00.000Z', bed: 'B1', mix: null }),
  recordCast.draft(PLACE, {
    at: '2026-11-24T14:10:00.000Z',
    bed: 'B1',
    mix: 'C40',
    about: ABOUT,
    reason: 'late',
  }),
  recordDocket.draft(PLACE, { number: '3061', slump: 95, volume: 2.6, specimens: ['W1-1'] }),
  decideLoad.draft(PLACE, { about: ABOUT, decision: 'send-back', reason: 'stiff' }),
  recordSpecimen.draft(PLACE, { step: 'strip', specimen: 'S1', kind: 'cylinder', age: 18.5, strength: 16.2 }),
  recordSpecimen.draft(PLACE, {
    step: 'cure',
    specimen: 'S1-3',
    kind: 'cylinder',
    age: 168,
    strength: 41,
    cured: 'standard',
  }),
  recordSet.draft(PLACE, {
    set: 'S1',
    kind: 'cylinder',
    made: '2026-11-24T14:30:00.000Z',
    tests: [{ age: 672, cured: 'standard', specimens: ['S1-1', 'S1-2'] }],
  }),
  recordTemperature.draft(PLACE, {
    channel: 'core',
    readings: [
      [0, 18],
      [1, 19.5],
    ],
  }),
  logInPlace.draft(PLACE, {
    asked: { ...SLUMP, id: 'temperature-log', step: 'cure', kind: 'readings', recordOnly: true },
    channel: 'core',
    readings: [
      [0, 18],
      [1, 19.5],
      [2, 21],
    ],
  }),
  reportDefect.draft(PLACE, {
    step: 'as-built',
    text: 'broken corner',
    place: [12.4, 2999.6],
    attachments: [PHOTO],
  }),
  reportDefect.draft(PLACE, { step: 'as-built', text: 'stained all over', place: null }),
  settleDefect.draft(PLACE, { about: ABOUT, decision: 'repair', reason: 'patch it' }),
  inspectDefect.draft(PLACE, { about: ABOUT, verdict: 'pass', reason: '' }),
  keepPhoto.draft(PLACE, { step: 'set', attachments: [PHOTO] }),
  movePanel.draft(PLACE, { step: 'store', to: ' R2 ' }),
  recordSurface.draft(PLACE, { kind: 'print', value: 6, at: SEEN }),
  recordSurface.draft(PLACE, { kind: 'sheen', value: true, at: SEEN }),
  takeBackSurface.draft(PLACE, { check: `boot-print@${SEEN}`, about: ABOUT }),
  handOver.draft(PLACE, { sha256: 'b'.repeat(64), to: 'site' }),
]

describe('what an act puts into the record', () => {
  test('every act makes an entry that the record reads', () => {
    for (const draft of DRAFTS) expect(parseEntry(entryOf(draft))).toMatchObject({ kind: draft.kind })
  })

  test('every act is about this panel and says the drawing revision that it was made under', () => {
    for (const draft of DRAFTS) {
      expect(draft.subject).toEqual({ kind: 'panel', id: 'J1/W1' })
      expect(draft.revision).toBe('B')
    }
  })

  test('each reading of a surface stands for itself, the passes asked only once', () => {
    expect(recordSurface.draft(PLACE, { kind: 'print', value: 6, at: SEEN })).toMatchObject({
      step: 'finish',
      check: `boot-print@${SEEN}`,
      unit: 'mm',
    })
    expect(recordSurface.draft(PLACE, { kind: 'passes', value: 3, at: SEEN }).check).toBe('passes-asked')
  })

  test('air read at a panel is weather of the yard, its wind at half a metre', () => {
    const draft = recordAir.draft({ yard: 'Y', at: SEEN, air: 9, humidity: null, wind: 6 })
    expect(parseEntry(entryOf(draft))).toMatchObject({ kind: 'weather', subject: { kind: 'yard', id: 'Y' } })
    expect(draft.value).toEqual({
      readings: [{ at: SEEN, air: 9, humidity: null, wind: 6, windHeight: 0.5 }],
    })
    const still = recordAir.draft({ yard: 'Y', at: SEEN, air: 9, humidity: 70, wind: null })
    expect(JSON.stringify(still.value)).not.toContain('windHeight')
  })

  test('a value carries its verdict with the limit it was held against, as seen', () => {
    expect(recordValue.draft(PLACE, { asked: SLUMP, value: 100 })).toMatchObject({
      kind: 'value',
      check: 'slump',
      value: 100,
      unit: 'mm',
      verdict: 'pass',
      limit: '80 to 120',
    })
    expect(recordValue.draft(PLACE, { asked: SLUMP, value: 121 }).verdict).toBe('fail')
    expect(recordValue.draft(PLACE, { asked: SLUMP, value: 'wet' }).verdict).toBe('unknown')
  })

  test('a limit goes to the yard with its source, and with the reason where one is given', () => {
    const input = { yard: 'Y', key: 'lift.factor:release', value: 2.2, unit: '', standard: 'S', edition: '1' }
    const draft = enterLimit.draft({ ...input, reason: 'deep ribs' })
    expect(parseEntry(entryOf(draft))).toMatchObject({
      kind: 'limit',
      check: 'lift.factor:release',
      value: { value: 2.2, unit: '', standard: 'S', edition: '1' },
      reason: 'deep ribs',
    })
    expect(enterLimit.draft(input)).not.toHaveProperty('reason')
  })

  test('a signed difference says what it is signed for', () => {
    expect(
      signDifference.draft(PLACE, { row: PEAK, reference: 'LD-3', reason: 'bars as drawn' }),
    ).toMatchObject({
      kind: 'difference',
      step: 'strip',
      check: 'now:lift-peak:release',
      reason: 'bars as drawn',
      value: { reference: 'LD-3', verdict: 'fail', demand: 2.4, limit: 1.9, unit: 'MPa', missing: [] },
    })
  })

  test('a correction is a new entry that points at the old one and says why', () => {
    expect(
      correctValue.draft(PLACE, { asked: SLUMP, about: ABOUT, value: 130, reason: 'misread' }),
    ).toMatchObject({
      kind: 'correction',
      about: ABOUT,
      value: 130,
      verdict: 'fail',
      reason: 'misread',
    })
  })

  test('correcting the pour keeps the first entry and points at it', () => {
    const draft = recordCast.draft(PLACE, {
      at: '2026-11-24T14:10:00.000Z',
      bed: null,
      mix: null,
      about: ABOUT,
      reason: 'late',
    })
    expect([draft.kind, draft.about]).toEqual(['correction', ABOUT])
  })

  test('a defect is placed on whole millimetres, or nowhere', () => {
    expect(reportDefect.draft(PLACE, { step: 'load', text: 'chip', place: [12.4, 2999.6] }).value).toEqual({
      text: 'chip',
      place: [12, 3000],
    })
    expect(reportDefect.draft(PLACE, { step: 'load', text: 'chip', place: null }).value).toMatchObject({
      place: null,
    })
  })

  test('without a drawing revision nothing is said of one', () => {
    expect(closeStep.draft({ ...PLACE, revision: null, edition: null }, { step: 'cage' })).toEqual({
      kind: 'close',
      step: 'cage',
      value: null,
      subject: { kind: 'panel', id: 'J1/W1' },
    })
  })

  test('what is new of a docket is an entry of its own, what was said otherwise is corrected where it was said', () => {
    const by = { id: 'p3', name: 'Sam Pell', role: 'floor' } as const
    const ticket = {
      entry: ABOUT,
      by,
      seen: '2026-11-24T10:00:00.000Z',
      number: '3061',
      volume: 3,
      slump: 95,
    }
    const truck = { ...ticket, entry: ABOUT.replace(/1$/, '2'), slump: 140 }
    const before = { number: '3061', volume: 3, slump: 140 }
    const after = { number: '3061', volume: 3, slump: 110, temperature: 19 }
    const drafts = changeDocket(PLACE, { parts: [ticket, truck], before, after, reason: 'misread' })
    expect(drafts.map(({ kind, about, value }) => [kind, about, value])).toEqual([
      ['docket', undefined, { number: '3061', temperature: 19 }],
      ['correction', ticket.entry, { number: '3061', volume: 3, slump: 110 }],
      ['correction', truck.entry, { number: '3061', volume: 3, slump: 110 }],
    ])
    const { volume: _, ...without } = before
    const taken = changeDocket(PLACE, { parts: [ticket], before, after: without, reason: 'of another truck' })
    expect(taken.map(({ value }) => value)).toEqual([{ number: '3061', slump: 95 }])
    expect(changeDocket(PLACE, { parts: [ticket], before, after: before, reason: '' })).toEqual([])
  })

  test('two recordings that differ are settled as the form shows them', () => {
    const by = { id: 'p3', name: 'Sam Pell', role: 'floor' } as const
    const one = { entry: ABOUT, by, seen: '2026-11-24T10:00:00.000Z', number: '3061', slump: 95 }
    const words = { number: '3061', slump: 140 }
    const drafts = changeDocket(PLACE, {
      parts: [one, { ...one, entry: ABOUT.replace(/1$/, '2'), slump: 140 }],
      before: words,
      after: words,
      differs: ['slump'],
      reason: 'second test',
    })
    expect(drafts.map(({ about, value }) => [about, value])).toEqual([[ABOUT, words]])
  })

  test('a list of editions longer than an entry takes is cut, not refused', () => {
    const long = recordValue.draft({ ...PLACE, edition: 'x'.repeat(900) }, { asked: SLUMP, value: 100 })
    expect(long.edition).toHaveLength(200)
  })
})
