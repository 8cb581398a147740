import { InputError } from '@castwright/engine/working'
import { describe, expect, it } from 'vitest'
import { canonicalBytes } from './canonical.ts'
import { checkChain, makeEntry, newDevice } from './device.ts'
import { ExampleDevice, FLOOR, PANEL, START } from './example-entries.ts'
import { sha256Hex } from './hash.ts'

const DRAFT = { kind: 'value', subject: PANEL, step: 'set', check: 'oil', value: true } as const

describe('entries as a device makes them', () => {
  it('numbers from 1 and carries the hash of the one before', () => {
    const first = makeEntry({
      device: newDevice('d1'),
      person: FLOOR,
      yard: 'example',
      now: START,
      draft: DRAFT,
    })
    const second = makeEntry({
      device: first.device,
      person: FLOOR,
      yard: 'example',
      now: START,
      draft: DRAFT,
    })
    expect(first.entry.device).toEqual({ id: 'd1', counter: 1, previous: null, clockOffset: null })
    expect(second.entry.device.counter).toBe(2)
    expect(second.entry.device.previous).toBe(sha256Hex(canonicalBytes(first.entry)))
    expect(second.device.counter).toBe(2)
    expect(first.entry.seen).toBe('2026-03-02T05:00:00.000Z')
  })

  it('gives ids that rise, also within a millisecond and when the clock goes back', () => {
    let device = newDevice('d1')
    const ids = [START + 5, START + 5, START, START + 6].map((now) => {
      const made = makeEntry({ device, person: FLOOR, yard: 'example', now, draft: DRAFT })
      device = made.device
      return made.entry.id
    })
    expect([...ids].sort()).toEqual(ids)
    expect(new Set(ids).size).toBe(4)
  })

  it('refuses a draft that its kind does not allow and leaves the device where it was', () => {
    const device = newDevice('d1')
    const draft = { ...DRAFT, kind: 'close' } as const
    expect(() => makeEntry({ device, person: FLOOR, yard: 'example', now: START, draft })).toThrow(InputError)
    expect(device.counter).toBe(0)
  })
})

describe('chain of a device', () => {
  const device = new ExampleDevice('d1')
  const entries = Array.from({ length: 5 }, (_, index) => device.value(`c${index}`, index))

  it('fits in any order, and with entries missing', () => {
    expect(checkChain([...entries].reverse())).toEqual([])
    expect(checkChain(entries.filter((_, index) => index !== 2))).toEqual([])
  })

  it('shows a changed entry at the one that follows it', () => {
    const changed = entries.map((entry, index) => (index === 2 ? { ...entry, value: 99 } : entry))
    expect(checkChain(changed).map(({ entries: ids }) => ids)).toEqual([[entries[3]?.id]])
  })

  it('is not disturbed by what the record adds', () => {
    expect(checkChain(entries.map((entry, index) => ({ ...entry, stored: entry.seen, index })))).toEqual([])
  })

  it('shows a first entry that points back', () => {
    const [first] = entries as [(typeof entries)[0]]
    expect(checkChain([{ ...first, device: { ...first.device, previous: '0'.repeat(64) } }])).toHaveLength(1)
  })
})
