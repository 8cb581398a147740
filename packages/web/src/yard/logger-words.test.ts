import { emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import { expect, it } from 'vitest'
import { loggerWords, longText, panelsToRead } from './logger-words.ts'

const now = new Date('2026-03-10T12:00:00.000Z')
const last = (at: string, panel = 'J1/W1') => ({ at, panel, channel: 'core', celsius: 31.4 })
const words = (logger: object, poured = true) =>
  loggerWords({ last: null, panel: 'J1/W1', active: true, ...logger }, { poured, now })

it('says how long something is ago', () => {
  expect([0, -90_000, 59.9 * 60_000, 3_600_000, 47.9 * 3_600_000, 48 * 3_600_000].map(longText)).toEqual([
    '0 min',
    '0 min',
    '59 min',
    '1 h',
    '47 h',
    '2 d',
  ])
})

it('names the last reading and its age, and stands out when nothing came for an hour', () => {
  expect(words({ last: last('2026-03-10T11:59:30.000Z') })).toEqual({
    look: false,
    text: 'core 31.4 °C, just now',
  })
  expect(words({ last: last('2026-03-10T11:01:00.000Z') }).text).toBe('core 31.4 °C, 59 min ago')
  expect(words({ last: last('2026-03-10T11:00:00.000Z') }).look).toBe(true)
  expect(words({ last: last('2026-03-10T09:00:00.000Z') })).toEqual({
    look: true,
    text: 'Nothing for 3 h; last core 31.4 °C',
  })
  expect(words({ last: last('2026-03-10T11:30:00.000Z', 'J1/W9') }).text).toBe(
    'core 31.4 °C in J1/W9, 30 min ago',
  )
})

it('stands out with a value that no sensor reads', () => {
  const broken = { ...last('2026-03-10T11:59:30.000Z'), celsius: -127 }
  expect(words({ last: broken })).toEqual({
    look: true,
    text: 'core −127 °C, just now: no sensor in concrete reads that',
  })
})

it('does not miss readings that cannot come: no panel, no pour, closed', () => {
  const old = { last: last('2026-03-09T09:00:00.000Z') }
  expect(words({ ...old, panel: null }).look).toBe(false)
  expect(words({ ...old, active: false }).look).toBe(false)
  expect(words(old, false).look).toBe(false)
  expect(words({}, false)).toEqual({ look: false, text: 'Nothing yet' })
  expect(words({}).look).toBe(true)
})

it('offers poured panels first, the latest at the top, and none that is lifted', () => {
  const panel = (mark: string, at: string | null, opened = false): [string, PanelFacts] => {
    const facts = emptyPanelFacts({ job: 'J1', mark })
    const signed = {
      entry: 'e',
      by: { id: 'p', name: 'P', role: 'lead' as const },
      seen: '',
      stored: '',
      reason: null,
    }
    const opening = opened ? { ...signed, revision: null, rests: [] } : null
    return [
      `J1/${mark}`,
      {
        ...facts,
        drawing: {} as PanelFacts['drawing'],
        cast: at === null ? null : { entry: 'c', at, bed: null, mix: null },
        steps: { ...facts.steps, strip: { ...facts.steps.strip, opening } },
      },
    ]
  }
  const panels = new Map([
    panel('A', null),
    panel('B', '2026-03-09T06:00:00.000Z'),
    panel('C', '2026-03-10T06:00:00.000Z'),
    panel('D', '2026-03-08T06:00:00.000Z', true),
  ])
  expect(panelsToRead(panels)).toEqual({ poured: ['J1/C', 'J1/B'], others: ['J1/A'] })
})
