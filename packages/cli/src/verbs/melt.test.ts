import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import { type Draft, makeEntry, newDevice } from '@castwright/record'
import { openStore } from '@castwright/record/store'
import { beforeAll, describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const folder = mkdtempSync(join(tmpdir(), 'castwright-melt-'))
const PERSON = { id: 'p-1', name: 'Tom Reed', role: 'floor' } as const

/** A bundle of heat H4022, and bars cut from it for two panels. */
beforeAll(async () => {
  const store = await openStore({ folder, yard: 'test-yard' })
  const cut = (panel: string): Draft => ({
    kind: 'cut',
    subject: { kind: 'bar', id: 'shear' },
    value: {
      plan: null,
      line: null,
      diameter: 12,
      grade: '500E',
      from: { bundle: 'B-1' },
      stock: 6000,
      bars: 2,
      pieces: [{ length: 2900, count: 2, mark: 'MX1', panel }],
      offcut: 200,
      kept: false,
    },
  })
  const came = {
    kind: 'bundle',
    subject: { kind: 'bundle', id: 'B-1' },
    value: EXAMPLE_BUNDLE,
  } as unknown as Draft
  let device = newDevice('d-1')
  let count = 0
  const entries = [came, cut('J1/W1'), cut('J1/W2')].map((draft) => {
    count += 1
    const nextId = (): string => String(count).padStart(26, '0')
    const made = makeEntry({
      device,
      person: PERSON,
      yard: 'test-yard',
      now: Date.now() - 10_000 + count,
      draft,
      nextId,
    })
    device = made.device
    return made.entry
  })
  await store.append(entries)
  await store.close()
})

describe('castwright melt', () => {
  it('names the panels that hold steel of a heat, however it is written', async () => {
    const { code, json } = await cli(['melt', 'h-4022', '--data', folder, '--json'])
    expect(code).toBe(0)
    expect((json().panels as { panel: string }[]).map(({ panel }) => panel)).toEqual(['J1/W1', 'J1/W2'])
  })

  it('says what it does not see where no panel holds it', async () => {
    const { code, out } = await cli(['melt', 'H9', '--data', folder])
    expect(code).toBe(0)
    expect(out).toContain('without a record is not seen')
  })

  it('refuses an empty number and a folder without a record', async () => {
    expect((await cli(['melt', ' ', '--data', folder])).code).toBe(2)
    expect((await cli(['melt', 'H1', '--data', join(folder, 'none')])).code).toBe(2)
  })
})
