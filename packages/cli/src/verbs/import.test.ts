import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { lockFolder } from '@castwright/server'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { cli, type Ran } from '../testing.ts'

let folder = ''
let data = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'castwright-import-'))
  data = join(folder, 'data')
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
}
const JOB = {
  format: 'castwright.job/1',
  mark: 'J1',
  yard: 'Mill End',
  drawings: [
    { ...DRAWING, revision: 'A' },
    { ...DRAWING, mark: 'W2', revision: 'A' },
  ],
  due: { W1: '2026-04-01' },
}

function bring(input: unknown, ...args: readonly string[]): Promise<Ran> {
  const text = typeof input === 'string' ? input : JSON.stringify(input)
  return cli(['import', 'file.json', '--data', data, ...args], { 'file.json': text })
}

describe('castwright import', () => {
  it('brings a job into a new record, and nothing twice', async () => {
    const { code, json } = await bring(JOB, '--json')
    expect(code).toBe(0)
    expect(json()).toMatchObject({ stored: 3, known: 0, data })
    expect((await bring(JOB, '--json')).json()).toMatchObject({ stored: 0, known: 3, ids: [] })
    const table = await bring(JOB)
    expect(table.out).toMatch(/In the record before\s+3/)
  })

  it('lists what it took in place of what the drawing does not say', async () => {
    const { json } = await bring(DRAWING, '--json')
    expect(json().assumed).toEqual([
      expect.objectContaining({ field: 'job', value: 'loose' }),
      expect.objectContaining({ field: 'revision', value: '1' }),
    ])
  })

  it('reads standard input', async () => {
    const { code } = await cli(['import', '-', '--data', data], { '-': JSON.stringify(DRAWING) })
    expect(code).toBe(0)
  })

  it.each([
    ['{', /file\.json: found text that is not JSON/],
    [{ ...DRAWING, format: 'castwright.drawing/2' }, /file\.json: format: found "castwright\.drawing\/2"/],
    [{ ...DRAWING, thickness: 0 }, /file\.json: thickness: found 0, expected a number above 0/],
    [{ ...DRAWING, colour: 'red' }, /file\.json: colour: found "red", expected no field/],
    [{ ...JOB, drawings: [DRAWING, { ...DRAWING, mark: 7 }] }, /drawings\[1\]\.mark: found 7/],
    [{ ...JOB, drawings: [DRAWING, DRAWING] }, /drawings\[1\]\.mark: found "W1", expected a mark used once/],
    [
      {
        ...DRAWING,
        outline: [
          [0, 0],
          [1, 1],
          [1, 0],
          [0, 1],
        ],
      },
      /outline\[\d\]: found .*expected a simple polygon/,
    ],
    [
      { format: 'castwright.yard/1', name: 'Mill End', code: 'xx', timezone: 'Europe/Dublin' },
      /code: found "xx"/,
    ],
  ])('refuses %j and leaves nothing behind', async (input, message) => {
    const { code, err, out } = await bring(input)
    expect(code).toBe(2)
    expect(err).toMatch(message)
    expect(out).toBe('')
    expect(existsSync(data)).toBe(false)
  })

  it('refuses a file that is not there, and a folder in use', async () => {
    expect((await cli(['import', 'gone.json', '--data', data])).err).toMatch(/gone\.json/)
    expect((await cli(['import', '--data', data])).code).toBe(2)
    const unlock = lockFolder(data)
    expect((await bring(JOB)).err).toMatch(/--data: found a folder in use by process/)
    unlock()
    expect((await bring(JOB)).code).toBe(0)
  })

  it('refuses another drawing under a revision that is in the record', async () => {
    await bring(JOB)
    const { code, err } = await bring({ ...DRAWING, job: 'J1', revision: 'A', thickness: 200 })
    expect(code).toBe(2)
    expect(err).toMatch(/revision: found "A", expected a revision other than "A"/)
  })
})

describe('castwright export', () => {
  const take = (...args: readonly string[]) => cli(['export', ...args, '--data', data])

  it('gives a job that can be brought in again', async () => {
    await bring(JOB)
    const { code, json, out } = await take('J1', '--json')
    expect(code).toBe(0)
    expect(json()).toMatchObject({ format: 'castwright.job/1', mark: 'J1', yard: 'Mill End', due: JOB.due })
    expect((await bring(out, '--json')).json()).toMatchObject({ stored: 0, known: 3 })
    expect((await take('J1')).out).toMatch(/W1\s+A\s+2026-04-01/)
  })

  it('writes a new file, and does not write over one', async () => {
    await bring(JOB)
    const to = join(folder, 'job.json')
    expect((await take('J1', '--to', to)).code).toBe(0)
    expect(JSON.parse(readFileSync(to, 'utf8'))).toMatchObject({ mark: 'J1' })
    const again = await take('J1', '--to', to)
    expect(again.code).toBe(2)
    expect(again.err).toMatch(/--to: found .*is there already/)
    expect((await take('J1', '--to', join(folder, 'gone/job.json'))).err).toMatch(/--to: found .*ENOENT/)
  })

  it('refuses a job that is not there, a folder without a record, and no job at all', async () => {
    expect((await take('J1')).err).toMatch(/--data: found .* holds no record/)
    expect(existsSync(data)).toBe(false)
    await bring(JOB)
    expect((await take('J2')).err).toMatch(/JOB: found "J2", expected one of J1/)
    expect((await take()).code).toBe(2)
    expect((await take('J1', 'J2')).code).toBe(2)
    expect((await take('J1', '--from', 'x')).code).toBe(2)
  })
})
