import {
  canonicalBytes,
  leafHash,
  makeEntry,
  newDevice,
  rootOfLeaves,
  type StoredEntry,
  toHex,
} from '@castwright/record'
import { describe, expect, it } from 'vitest'
import { LogChecker } from './log-check.ts'

function log(count: number): StoredEntry[] {
  let device = newDevice('phone')
  return Array.from({ length: count }, (_, index) => {
    const made = makeEntry({
      device,
      person: { id: 'a', name: 'Anna', role: 'lead' },
      yard: 'Kettle Lane',
      now: Date.parse('2026-04-14T08:00:00.000Z') + index * 1000,
      draft: { kind: 'place', subject: { kind: 'panel', id: 'J/W1' }, value: { place: `rack ${index}` } },
    })
    device = made.device
    return { ...made.entry, stored: made.entry.seen, index }
  })
}

function checked(entries: readonly StoredEntry[]) {
  const checker = new LogChecker()
  checker.add(entries.slice(0, 3))
  checker.add(entries.slice(3))
  return checker.result()
}

describe('the log on a device', () => {
  it('hashes to the root of all its leaves, whatever the batches', () => {
    const entries = log(13)
    const root = toHex(rootOfLeaves(entries.map((entry) => leafHash(canonicalBytes(entry)))))
    expect(checked(entries)).toMatchObject({ size: 13, root, broken: [] })
  })

  it('gives another root and a broken chain when one value was changed', () => {
    const entries = log(13)
    const bent = entries.map((entry, index) =>
      index === 5 ? { ...entry, value: { place: 'elsewhere' } } : entry,
    )
    const [before, after] = [checked(entries), checked(bent)]
    expect(after.root).not.toBe(before.root)
    expect(after.broken).toHaveLength(1)
    expect(after.broken[0]?.text).toContain('Entry 7')
  })

  it('lists each device with its last person', () => {
    expect(checked(log(4)).devices).toEqual([
      { id: 'phone', entries: 4, lastSeen: '2026-04-14T08:00:03.000Z', lastPerson: 'Anna' },
    ])
  })
})
