import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Entry, makeEntry, newDevice, panelSubject } from '@castwright/record'
import { openStore } from '@castwright/record/store'
import { DatabaseSync } from '@photostructure/sqlite'
import { type BenchLine, secondsOf } from './line.ts'

const YARD = 'bench'

/** A chain of plain values as one phone makes them. */
function entriesOf(device: string, count: number): Entry[] {
  let state = newDevice(device)
  return Array.from({ length: count }, (_, index) => {
    const made = makeEntry({
      device: state,
      person: { id: 'p1', name: 'Bench', role: 'floor' },
      yard: YARD,
      now: Date.UTC(2026, 4, 12, 8) + index * 1000,
      draft: {
        kind: 'value',
        subject: panelSubject('J1', `W${index % 40}`),
        step: 'deliver',
        check: 'slump',
        value: 100,
        unit: 'mm',
        verdict: 'pass',
        limit: '80 to 120',
        revision: 'A',
      },
    })
    state = made.device
    return made.entry
  })
}

/** Committed entries of the record beside the bare store putting down the same bytes, each with one sync a commit. */
export async function committedEntries(count: number): Promise<BenchLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-bench-'))
  try {
    const phones = 16
    const single = entriesOf('d-single', count)
    const many = Array.from({ length: phones }, (_, phone) =>
      entriesOf(`d-${phone}`, Math.ceil(count / phones)),
    )

    const store = await openStore({ folder: join(folder, 'record'), yard: YARD })
    const one = await secondsOf(async () => {
      for (const entry of single) await store.append([entry])
    })
    const together = await secondsOf(async () => {
      await Promise.all(
        many.map(async (entries) => {
          for (const entry of entries) await store.append([entry])
        }),
      )
    })
    await store.close()

    const bare = new DatabaseSync(join(folder, 'bare.db'))
    bare.exec(
      'PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; CREATE TABLE entry (id TEXT PRIMARY KEY, body TEXT NOT NULL)',
    )
    const insert = bare.prepare('INSERT INTO entry (id, body) VALUES (?, ?)')
    const plain = await secondsOf(async () => {
      for (const entry of single) insert.run(entry.id, JSON.stringify(entry))
    })
    bare.close()
    const sent = many.length * (many[0]?.length ?? 0)
    return [
      line('entries/s, one phone at a time', count / one, count / plain),
      line(`entries/s, ${phones} phones at once`, sent / together, count / plain),
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function line(what: string, rate: number, bare: number): BenchLine {
  return {
    what,
    value: `${rate.toFixed(0)} /s`,
    beside: `bare store, one sync a commit, no tree, no checks: ${bare.toFixed(0)} /s; ratio ${(rate / bare).toFixed(2)}`,
  }
}
