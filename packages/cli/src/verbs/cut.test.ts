import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const LIST = { stock: [{ length: 6000 }], pieces: [{ length: 1500, count: 4 }] }

function cut(list: unknown, args: readonly string[] = []) {
  return cli(['cut', 'C.json', ...args], { 'C.json': typeof list === 'string' ? list : JSON.stringify(list) })
}

describe('castwright cut', () => {
  it('four pieces of 1500 from one bar of 6000, three with a kerf of 3', async () => {
    const { code, json } = await cut(LIST, ['--json'])
    expect(code).toBe(0)
    expect(json()).toMatchObject({
      bars: [{ stock: 6000, count: 1, pieces: [{ length: 1500, count: 4 }], offcut: 0 }],
      stockLength: 6000,
      rackLength: 0,
      netLength: 6000,
      lowerBound: 6000,
      proven: true,
    })
    const sawn = await cut({ ...LIST, kerf: 3 }, ['--json', '--within', '5'])
    expect(sawn.json()).toMatchObject({ stockLength: 12000, proven: true })
    expect(sawn.json().assumed).toBeUndefined()
  })

  it('takes offcuts first, marks kept', async () => {
    const { json } = await cut(
      {
        stock: [{ length: 6000 }],
        offcuts: [{ length: 1500, count: 1 }],
        kerf: 0,
        pieces: [
          { length: 1500, count: 4, mark: 'A' },
          { length: 1500, count: 1, mark: 'B' },
        ],
      },
      ['--json'],
    )
    expect(json()).toMatchObject({ stockLength: 6000, rackLength: 1500, proven: true })
    const marks: Record<string, number> = {}
    for (const bar of json().bars as { count: number; pieces: { mark: string; count: number }[] }[]) {
      for (const { mark, count } of bar.pieces) marks[mark] = (marks[mark] ?? 0) + count * bar.count
    }
    expect(marks).toEqual({ A: 4, B: 1 })
  })

  it('--explain and the table say what is proven', async () => {
    const { out } = await cut(LIST, ['--explain'])
    expect(out).toMatch(/1 +6000 +4 × 1500/)
    expect(out).toMatch(/Gilmore/)
    expect((await cli(['cut', '--help'])).out).toMatch(/--within/)
  })

  it('says what goes back to the rack, what goes through the shear at once, and who gets each piece', async () => {
    const asked = {
      ...LIST,
      keep: 800,
      together: 5,
      pieces: [{ length: 2500, count: 24, mark: 'B1', panel: 'W7', machine: 'M2', order: 1 }],
    }
    const { json } = await cut(asked, ['--json'])
    expect(json()).toMatchObject({
      keptLength: 12_000,
      bars: [
        {
          count: 12,
          offcut: 1000,
          offcutTo: 'rack',
          batches: [
            { bars: 5, times: 2 },
            { bars: 2, times: 1 },
          ],
          pieces: [{ length: 2500, count: 2, mark: 'B1', panel: 'W7', machine: 'M2', order: 1 }],
        },
      ],
    })
    const { out } = await cut(asked)
    expect(out).toMatch(/2 × 2500 B1 W7 at M2 +.*\(to rack\) +2 × 5 \+ 1 × 2/)
    expect((await cut({ ...asked, keep: -1 })).err).toContain('keep')
  })

  it('writes the cutting sheet into a new file, never over one that is there', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'castwright-cut-'))
    try {
      const path = join(folder, 'sheet.pdf')
      expect((await cut(LIST, ['--sheet', path])).code).toBe(0)
      expect((await readFile(path, 'latin1')).slice(0, 8)).toBe('%PDF-1.7')
      const again = await cut(LIST, ['--sheet', path])
      expect(again.code).toBe(2)
      expect(again.err).toContain('there already')
    } finally {
      await rm(folder, { recursive: true })
    }
  })

  it.each([
    [{ ...LIST, pieces: [] }, [], 'pieces'],
    [{ ...LIST, pieces: [{ length: 7000, count: 1, mark: 'LONG' }] }, [], 'LONG'],
    [
      { ...LIST, stock: [{ length: 6000, count: 1 }], pieces: [{ length: 3500, count: 2 }] },
      [],
      '3500 short',
    ],
    [{ ...LIST, stock: [] }, [], 'stock'],
    [{ ...LIST, kerf: -1 }, [], 'kerf'],
    [{ ...LIST, pieces: [{ length: 1500, count: 1.5 }] }, [], 'pieces[0].count'],
    [LIST, ['--within', '0'], 'within'],
    ['not json', [], 'JSON'],
  ])('refuses bad input %#', async (list, args, field) => {
    const { code, err, out } = await cut(list, args)
    expect(code).toBe(2)
    expect(err).toContain(field)
    expect(out).toBe('')
  })
})
