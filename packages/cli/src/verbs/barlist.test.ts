import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cli, type Ran } from '../testing.ts'

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  job: 'Hall',
  code: 'nz',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40, aggregate: 19 },
  cover: { mould: 30, top: 30, edge: 40 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 },
    {
      bar: 'U1',
      diameter: 12,
      grade: '500E',
      role: 'main',
      legs: [400, 90, 400],
      turns: [90, 90],
      inside: 60,
    },
  ],
}
const HEAD = 'Mark,Diameter,Grade,Count,A,B,Inside'
const GOOD = `${HEAD}\r\nB1,12,500E,24,600,300,60\r\nB2,16,500E,4,2500,,\r\n`
const BAD = `${HEAD}\r\nB1,12,500E,24,600,300,60\r\nB2,16,500X,4,2500,,\r\nB3,x,500E,4,2500,,\r\n`

let folder: string
const at = (name: string): string => join(folder, name)

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'castwright-list-'))
  writeFileSync(at('good.csv'), GOOD)
  writeFileSync(at('bad.csv'), BAD)
})

afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
})

function barlist(file: string, ...args: readonly string[]): Promise<Ran> {
  return cli(['barlist', file === '-' ? file : at(file), '--family', 'nz', ...args], {
    '-': GOOD,
    'W.json': JSON.stringify(DRAWING),
    'map.json': JSON.stringify({ format: 'castwright.barlist-map/1', columns: { count: { letter: 'E' } } }),
  })
}

describe('castwright barlist', () => {
  it('gives listed bars, the row of each, and what was assumed', async () => {
    const { code, json } = await barlist('good.csv', '--json')
    expect(code).toBe(0)
    expect(json()).toMatchObject({
      bars: [
        {
          bar: 'B1',
          diameter: 12,
          grade: '500E',
          role: 'main',
          legs: [600, 300],
          turns: [90],
          inside: 60,
          count: 24,
        },
        { bar: 'B2', diameter: 16, grade: '500E', role: 'main', legs: [2500], count: 4 },
      ],
      rows: [2, 3],
      warnings: [],
      errors: [],
    })
    expect((json().assumed as { field: string }[]).map(({ field }) => field)).toEqual([
      'unit',
      'role',
      'turns',
    ])
    expect((await barlist('-', '--json')).json()).toEqual(json())
  })

  it('one bad row and none is taken: each is named by row and column, nothing is printed', async () => {
    const { code, out, err } = await barlist('bad.csv', '--json')
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err.split('\n')).toEqual([
      `${at('bad.csv')}: row 3, column C (Grade): found "500X", expected one of 300E, 500E`,
      `${at('bad.csv')}: row 4, column B (Diameter): found "x", expected a length above 0 to 60 mm`,
      '',
    ])
  })

  it('takes the good rows where that is asked for, and lists the others', async () => {
    const { code, json } = await barlist('bad.csv', '--take-good', '--json')
    expect(code).toBe(1)
    expect(json()).toMatchObject({
      rows: [2],
      errors: [
        { row: 3, column: 'C' },
        { row: 4, column: 'B' },
      ],
    })
    expect((await barlist('bad.csv', '--take-good')).out).toContain('Left out: row 3, column C (Grade)')
  })

  it('prints a drawing with the bars added', async () => {
    const { code, json } = await barlist('good.csv', '--into', 'W.json', '--json')
    expect(code).toBe(0)
    expect(json()).toMatchObject({ format: 'castwright.drawing/1', mark: 'W1' })
    expect((json().steel as { bar?: string }[]).map(({ bar }) => bar)).toEqual([undefined, 'U1', 'B1', 'B2'])
  })

  it('a mark that the drawing has is refused, unless it is to give way', async () => {
    writeFileSync(at('again.csv'), `${HEAD}\nU1,12,500E,7,600,,\n`)
    const refused = await barlist('again.csv', '--into', 'W.json', '--json')
    expect(refused.code).toBe(2)
    expect(refused.err).toContain('W.json: steel[1].bar: found "U1", which is in the list too')
    const { json } = await barlist('again.csv', '--into', 'W.json', '--replace', '--json')
    expect((json().steel as object[]).slice(1)).toEqual([
      { bar: 'U1', diameter: 12, grade: '500E', role: 'main', legs: [600], count: 7 },
    ])
  })

  it('a panel’s own list goes back into its drawing without its mats a second time', async () => {
    const lines = `${HEAD}\nMX1,12,500E,16,5920,,\nU1,12,500E,7,600,,\nN1,12,500E,7,600,,\n`
    writeFileSync(at('own.csv'), lines)
    const refused = await barlist('own.csv', '--into', 'W.json', '--json')
    expect(refused.code).toBe(2)
    expect(refused.err).toContain('found "MX1", which is in the list too')
    const { json } = await barlist('own.csv', '--into', 'W.json', '--keep', '--json')
    expect((json().steel as { bar?: string }[]).map(({ bar }) => bar)).toEqual([undefined, 'U1', 'N1'])
  })

  it('reads by a map and writes the one that it read by', async () => {
    const mapped = await barlist('good.csv', '--map', 'map.json', '--json')
    expect(mapped.code).toBe(2)
    expect(mapped.err).toContain('row 1, Legs: found')
    await barlist('good.csv', '--save-map', at('saved.json'))
    const saved = JSON.parse(readFileSync(at('saved.json'), 'utf8'))
    expect(saved).toMatchObject({
      format: 'castwright.barlist-map/1',
      columns: { mark: 'Mark', legs: ['A', 'B'] },
    })
    expect((await barlist('good.csv', '--save-map', at('saved.json'))).code).toBe(2)
  })

  it.each([
    [['none.csv', '--family', 'nz'], 'none.csv'],
    [['-'], '--family'],
    [['-', '--family', 'xx'], '--family'],
    [['-', '--family', 'nz', '--sheet', 'Bars'], 'no sheets'],
    [['-', '--family', 'nz', '--tolerance', '-1'], '--tolerance'],
    [['-', '--family', 'nz', '--decimal', 'dot'], '--decimal'],
    [['-', '--family', 'nz', '--replace'], '--replace'],
    [['-', '--family', 'nz', '--into', 'W.json', '--keep', '--replace'], '--keep'],
    [['-', '--family', 'eu', '--into', 'W.json'], '--family'],
    [['-', '--family', 'nz', '--panel', 'N05'], 'N05'],
  ])('refuses %j', async (args, word) => {
    const { code, err, out } = await cli(['barlist', ...args], {
      '-': GOOD,
      'W.json': JSON.stringify(DRAWING),
    })
    expect(code).toBe(2)
    expect(err).toContain(word)
    expect(out).toBe('')
  })
})

describe('castwright schedule as a file', () => {
  const schedule = (...args: readonly string[]): Promise<Ran> =>
    cli(['schedule', 'W.json', '--json', ...args], { 'W.json': JSON.stringify(DRAWING) })

  it.each([
    ['--csv', 'bars.csv'],
    ['--xlsx', 'bars.xlsx'],
  ])('%s writes what barlist reads, and the JSON stays as it is', async (option, name) => {
    const written = await schedule(option, at(name))
    expect(written.code).toBe(0)
    expect(written.out).toBe((await schedule()).out)
    const { json } = await barlist(name, '--json')
    expect(json().bars).toEqual([
      { bar: 'MX1', diameter: 12, grade: '500E', role: 'main', legs: [5920], count: 16 },
      {
        bar: 'U1',
        diameter: 12,
        grade: '500E',
        role: 'main',
        legs: [400, 90, 400],
        turns: [90, 90],
        inside: 60,
        count: 1,
      },
    ])
    const again = await schedule(option, at(name))
    expect(again.code).toBe(2)
    expect(again.err).toContain('which is there already')
  })

  it('of a job has every panel, and barlist reads one of them', async () => {
    const drawings = [DRAWING, { ...DRAWING, mark: 'W2', steel: DRAWING.steel.slice(1) }]
    const job = JSON.stringify({ format: 'castwright.job/1', mark: 'Hall', yard: 'Mill End', drawings })
    const written = await cli(['schedule', 'J.json', '--xlsx', at('job.xlsx')], { 'J.json': job })
    expect(written.code).toBe(0)
    const several = await barlist('job.xlsx')
    expect(several.code).toBe(2)
    expect(several.err).toContain('2 panels: "W1", "W2"')
    const { json } = await barlist('job.xlsx', '--panel', 'W2', '--json')
    expect((json().bars as { bar: string }[]).map(({ bar }) => bar)).toEqual(['U1'])
  })

  it('the byte-order mark is there where asked for, and only with a CSV', async () => {
    await schedule('--csv', at('bom.csv'), '--bom')
    expect([...readFileSync(at('bom.csv')).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf])
    expect(readFileSync(at('bars.csv'))[0]).not.toBe(0xef)
    expect((await schedule('--bom')).code).toBe(2)
  })
})
