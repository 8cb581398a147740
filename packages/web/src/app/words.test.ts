import { describe, expect, it } from 'vitest'
import type { KeptEntry } from '../record/database.ts'
import type { SyncState } from '../record/sync.ts'
import { recordWord, spanText } from './record-word.ts'
import { weatherWord } from './weather-word.ts'

const sync: SyncState = {
  online: true,
  doing: 'nothing',
  halt: null,
  fault: null,
  at: '2026-04-14T10:00:00.000Z',
}
const kept = (state: KeptEntry['state']): KeptEntry => ({ state }) as KeptEntry

describe('what the head says of the record', () => {
  it.each([
    ['all sent', { kept: [], sync }, 'Record', 'all in the record'],
    ['two wait', { kept: [kept('waiting'), kept('waiting')], sync }, 'Record', '2 kept here'],
    [
      'no network',
      { kept: [kept('waiting')], sync: { ...sync, online: false } },
      'No network',
      '1 kept here',
    ],
    [
      'no network, nothing made',
      { kept: [], sync: { ...sync, online: false } },
      'No network',
      'nothing waits',
    ],
    ['one refused', { kept: [kept('refused'), kept('waiting')], sync }, 'Record', '1 refused'],
    ['not asked yet', { kept: [], sync: { ...sync, online: null, at: null } }, 'Record', 'asking'],
  ] as const)('%s', (_name, snapshot, label, text) => {
    expect(recordWord(snapshot)).toMatchObject({ label, text })
  })

  it.each([
    [3 * 60_000, '3 minutes'],
    [3 * 3_600_000, '3 hours'],
    [3 * 86_400_000, '3 days'],
  ])('%i ms are %s', (ms, text) => {
    expect(spanText(ms)).toBe(text)
  })
})

describe('the air in the head', () => {
  const reading = { entry: 'e', at: '2026-04-14T09:00:00.000Z', air: -1.4, humidity: null, wind: 9 }
  it('is the last that was logged, with its time and what was measured only', () => {
    expect(weatherWord([reading], new Date('2026-04-14T10:00:00.000Z'), 'Europe/Dublin')).toEqual({
      label: 'Air, logged 10:00',
      text: '−1 °C, wind 9 km/h',
    })
  })
  it('is left out when it is older than twelve hours or still to come', () => {
    expect(weatherWord([reading], new Date('2026-04-14T21:30:00.000Z'), 'UTC')).toBeNull()
    expect(weatherWord([reading], new Date('2026-04-14T08:00:00.000Z'), 'UTC')).toBeNull()
  })
})
