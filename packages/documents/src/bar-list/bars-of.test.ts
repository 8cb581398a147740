import { codeFamily } from '@castwright/engine/codes'
import { describe, expect, it } from 'vitest'
import { type BarList, type BarsInput, barsOf, goodBars, wholeList } from './bars-of.ts'
import { type BarListMap, MAP_FORMAT } from './column-map.ts'
import { readTable } from './read-table.ts'
import { issuePlace } from './row-issue.ts'

const NZ = codeFamily('nz').steel
const US = codeFamily('us').steel
const HEAD = 'Mark,Diameter,Grade,Role,Count,Cut length,A,B,C,Turns,Inside diameter'

async function read(text: string, input: Partial<Omit<BarsInput, 'table'>> = {}): Promise<BarList> {
  const table = await readTable({ bytes: new TextEncoder().encode(text), name: 'list.csv', map: input.map })
  return barsOf({ table, rules: NZ, ...input })
}

const lines = (...rows: readonly string[]): string => [HEAD, ...rows].join('\r\n')
const said = ({ errors }: BarList): string[] =>
  errors.map((issue) => `${issuePlace(issue)}: ${issue.found} | ${issue.expected}`)
const warned = ({ warnings }: BarList): string[] =>
  warnings.map((issue) => `${issuePlace(issue)}: ${issue.found} | ${issue.expected}`)

const L12 = 'B1,12,500E,main,24,872,600,300,,90,60'
const L12_BAR = {
  bar: 'B1',
  diameter: 12,
  grade: '500E',
  role: 'main',
  legs: [600, 300],
  turns: [90],
  inside: 60,
  count: 24,
}

describe('a bar list', () => {
  it('gives listed bars; one leg is a straight bar', async () => {
    const list = await read(lines(L12, 'S1,16,500E,main,4,2500,2500,,,,'))
    expect(list.errors).toEqual([])
    expect(list.warnings).toEqual([])
    expect(wholeList(list)).toEqual([
      L12_BAR,
      { bar: 'S1', diameter: 16, grade: '500E', role: 'main', legs: [2500], count: 4 },
    ])
    expect(list.rows.map(({ row }) => row)).toEqual([2, 3])
  })

  it('is read with semicolons and decimal commas, with tabs, with a mark of UTF-8, with any end of line', async () => {
    const plain = await read(lines(L12))
    const semicolons =
      '\uFEFFBar mark;Ø (mm);Steel grade;Qty;A;B;Bend diameter\nB1;12,0;500e;24;600,0;300,0;60,0\n'
    const tabs = 'Pos.\tBar size\tGrade\tNo. off\tLeg 1\tLeg 2\tMandrel\rB1\t12\t500E\t24\t600\t300\t60\r'
    expect(wholeList(await read(semicolons))).toEqual(wholeList(plain))
    expect(wholeList(await read(tabs))).toEqual(wholeList(plain))
  })

  it('is read in UTF-16, with a line that names the separator, and quotes over several lines count as one row', async () => {
    const text = `sep=;\r\n"Mark";"Diameter, mm";"Grade";"Count";"A"\r\n"B ""1""\nlong";12;500E;1;600\r\nB2;x;500E;1;600\r\n`
    const bytes = new Uint8Array([
      0xff,
      0xfe,
      ...new Uint8Array(Uint16Array.from(text, (c) => c.charCodeAt(0)).buffer),
    ])
    const list = barsOf({ table: await readTable({ bytes, name: 'list.txt' }), rules: NZ })
    expect(list.rows[0]?.bar?.bar).toBe('B "1"\nlong')
    expect(said(list)).toEqual(['row 3, column B (Diameter, mm): "x" | a length above 0 to 60 mm'])
  })

  it('may have a title, units below the names, empty rows and a row of sums', async () => {
    const list = await read(
      [
        'Wall N05,,,,,',
        ',,,,,',
        'Mark,Dia,Grade,Count,A,Mass',
        ',mm,,,mm,kg',
        'B1,12,500E,2,600,1.1',
        ',,,,,',
        ',,,,,1.1',
      ].join('\n'),
    )
    expect(list.rows.map(({ row }) => row)).toEqual([5])
    expect(warned(list)).toEqual(['row 7, column F: "1.1" | a bar: the row is passed over'])
    expect(list.columns.unread.map(({ name }) => name)).toEqual(['Mass'])
  })

  it('takes a straight bar by its cut length alone, and no other', async () => {
    const list = await read(
      'Mark,Shape,Diameter,Grade,Count,Cut length\nB1,straight,12,500E,2,5920\nB2,U,12,500E,2,900',
    )
    expect(list.rows[0]?.bar).toMatchObject({ legs: [5920] })
    expect(said(list)).toEqual(['row 3, Legs: shape U and no leg | the outside dimensions of the legs, mm'])
  })

  it('reads all legs from one column', async () => {
    const list = await read(
      'Mark,Dia,Grade,Count,Legs,Turns,Inside\nB1,12,500E,2,600 + 300 + 600,90; 90°,60\nB2,12,500E,2,"600, 300",,60',
    )
    expect(list.rows.map(({ bar }) => bar?.legs)).toEqual([
      [600, 300, 600],
      [600, 300],
    ])
    expect(list.rows.map(({ bar }) => bar?.turns)).toEqual([[90, 90], [90]])
  })

  it('says what was taken where the list says nothing', async () => {
    const list = await read('Mark,Diameter,Grade,Count,A,B\nB1,12,500E,24,600,300\nB2,12,500E,1,600,\n')
    expect(list.rows[0]?.bar).toEqual({
      bar: 'B1',
      diameter: 12,
      grade: '500E',
      role: 'main',
      legs: [600, 300],
      turns: [90],
      count: 24,
    })
    expect(list.assumed).toEqual([
      { field: 'unit', value: 'mm', unit: '', why: 'columns B, E, F name none' },
      { field: 'role', value: 'main', unit: '', why: 'not given in rows 2, 3' },
      { field: 'turns', value: 90, unit: '°', why: 'not given in row 2: right angles are meant' },
      {
        field: 'inside',
        value: 60,
        unit: 'mm',
        why: 'not given in row 2: the least of the family for 12 mm 500E, main',
      },
    ])
  })

  it('reads lengths in the unit that the column names, and bars by their US name', async () => {
    const list = barsOf({
      table: await readTable({
        bytes: new TextEncoder().encode('Mark,Size,Grade,Qty,A (in),B [m]\nB1,#5,60,3,24,1.005\n'),
        name: 'us.csv',
      }),
      rules: US,
    })
    expect(said(list)).toEqual([])
    expect(list.rows[0]?.bar).toMatchObject({ diameter: 15.875, grade: '60', legs: [609.6, 1005] })
  })
})

describe('what is wrong in a bar list', () => {
  it.each([
    [
      'B1,twelve,500E,main,24,,600,300,,90,60',
      'row 2, column B (Diameter): "twelve" | a length above 0 to 60 mm',
    ],
    ['B1,120,500E,main,24,,600,300,,90,60', 'row 2, column B (Diameter): 120 | a length above 0 to 60 mm'],
    [',12,500E,main,24,,600,300,,90,60', 'row 2, column A (Mark): nothing | a mark'],
    ['B1,12,B500B,main,24,,600,300,,90,60', 'row 2, column C (Grade): "B500B" | one of 300E, 500E'],
    ['B1,12,500E,spare,24,,600,300,,90,60', 'row 2, column D (Role): "spare" | main or stirrup'],
    ['B1,12,500E,main,0,,600,300,,90,60', 'row 2, column E (Count): 0 | a whole number from 1 to 100000'],
    ['B1,12,500E,main,2.5,,600,300,,90,60', 'row 2, column E (Count): 2.5 | a whole number from 1 to 100000'],
    ['B1,12,500E,main,-4,,600,300,,90,60', 'row 2, column E (Count): -4 | a whole number from 1 to 100000'],
    [
      'B1,12,500E,main,1000000,,600,300,,90,60',
      'row 2, column E (Count): 1000000 | a whole number from 1 to 100000',
    ],
    [
      'B1,12,500E,main,,,600,300,,90,60',
      'row 2, column E (Count): nothing | a whole number from 1 to 100000',
    ],
    ['B1,12,500E,main,24,,600,-300,,90,60', 'row 2, column H (B): -300 | a length above 0 to 100000 mm'],
    ['B1,12,500E,main,24,,600,,300,90,60', 'row 2, column H (B): nothing | a length, mm, since C is given'],
    ['B1,12,500E,main,24,,600,300,,200,60', 'row 2, column J (Turns): 200 | degrees, above 0 to 180'],
    [
      'B1,12,500E,main,24,,600,300,,90 90,60',
      'row 2, column J (Turns): 2 turns | one, or one for each of 1 bends',
    ],
    ['B1,12,500E,main,24,,600,,,90,60', 'row 2, column J (Turns): 1 turn | none for a straight bar'],
    ['B1,12,500E,main,24,,,,,90,', 'row 2, column G (A): nothing | the outside dimensions of the legs, mm'],
    [
      'B1,12,500E,main,24,,2.5,,,,',
      'row 2, column G (A): 2.5 mm | at least the diameter, 12 mm; is the unit right?',
    ],
    // 12 mm bar, inside 60: a right angle takes up 30 + 12 = 42 mm of each leg.
    ['B1,12,500E,main,24,,600,41,,90,60', 'row 2, column H (B): 41 mm | at least 42.0 mm for its bends'],
    ['B1,12,500E,main,24,,600,83,600,90,60', 'row 2, column H (B): 83 mm | at least 84.0 mm for its bends'],
  ])('%s', async (row, message) => {
    expect(said(await read(lines(row)))).toEqual([message])
  })

  it('every row is checked, and nothing is taken unless the good rows are asked for', async () => {
    const list = await read(lines(L12, 'B2,x,500E,main,y,,600,,,,', '', 'B3,12,500E,main,1,,700,,,,'))
    expect(list.errors.map(({ row, column }) => `${row}${column}`)).toEqual(['3B', '3E'])
    expect(wholeList(list)).toEqual([])
    expect(goodBars(list).map(({ bar }) => bar)).toEqual(['B1', 'B3'])
  })

  it('names every missing column, and reads no row', async () => {
    const list = await read('Mark,Length\nB1,600\n')
    expect(list.rows).toEqual([])
    expect(said(list)).toEqual([
      'row 1, Diameter: "Mark", "Length" | a column such as "diameter" or "bar diameter" or "nominal diameter"',
      'row 1, Grade: "Mark", "Length" | a column such as "grade" or "steel grade" or "bar grade"',
      'row 1, Count: "Mark", "Length" | a column such as "count" or "total count" or "quantity"',
    ])
    expect((await read('600;300\n')).errors[0]?.found).toBe('no row of column names')
  })

  it('a column named twice, and a unit that is not read', async () => {
    const twice = await read('Mark,Dia,Grade,Count,Count,A\nB1,12,500E,1,2,600')
    expect(said(twice)[0]).toMatch(/^row 1, column E \(Count\): the name of column D again/)
    const feet = await read('Mark,Dia,Grade,Count,A (ft)\nB1,12,500E,1,2')
    expect(said(feet)).toEqual(['row 1, column E (A (ft)): unit "ft" | mm, cm, m or in'])
  })

  it('a mark of two makes is an error, of one make a warning', async () => {
    const list = await read(lines(L12, L12, 'B1,12,500E,main,2,,600,350,,90,60'))
    expect(said(list)).toEqual([
      'row 4, column A (Mark): B1 again, of another make | the make of row 2, or a mark of its own',
    ])
    expect(warned(list)).toEqual([
      'row 3, column A (Mark): B1 again | a mark once: its bars are added to those of row 2',
    ])
  })

  it('a number that can be read in two ways, until the decimal sign is said', async () => {
    const text = 'Mark;Dia;Grade;Count;A\nB1;12;500E;2;1.200\n'
    expect(said(await read(text))).toEqual([
      'row 2, column E (A): "1.200" | a length above 0 to 100000 mm; it can be read in two ways, say the decimal sign',
    ])
    const map: BarListMap = { format: MAP_FORMAT, decimal: 'comma' }
    expect((await read(text, { map })).rows[0]?.bar?.legs).toEqual([1200])
  })

  it('bars of several panels are not thrown together', async () => {
    const text = 'Panel,Mark,Dia,Grade,Count,A\nN01,B1,12,500E,2,600\nN02,B1,12,500E,2,700\n'
    const list = await read(text)
    expect(said(list)[0]).toMatch(/^column A \(Panel\): 2 panels: "N01", "N02"/)
    expect(goodBars(list)).toEqual([])
    expect(wholeList(await read(text, { panel: 'N02' })).map(({ legs }) => legs)).toEqual([[700]])
    expect(said(await read(text, { panel: 'N03' }))[0]).toMatch(
      /no bar of panel "N03" \| one of "N01", "N02"/,
    )
  })

  it('a bend that the family says nothing of needs its inside diameter', async () => {
    const list = await read(lines('B1,14,60,main,24,,600,300,,90,'), { rules: US })
    expect(said(list)[0]).toMatch(
      /^row 2, column K \(Inside diameter\): nothing \| the inside diameter of the bends, mm/,
    )
  })

  it.each([
    ['', 'an empty file'],
    ['\u0000\u0001', 'bytes that are no text'],
    ['Mark,Dia\n"B1,12', 'a quote that does not end its cell'],
  ])('no list at all: %j', async (text, found) => {
    await expect(read(text)).rejects.toThrow(found)
  })

  it('text in another encoding is refused, not guessed', async () => {
    const bytes = new Uint8Array([...new TextEncoder().encode('Mark,Dia\nB'), 0xd8])
    await expect(readTable({ bytes, name: 'old.csv' })).rejects.toThrow('UTF-8')
  })
})

describe('what a person should look at', () => {
  it('a stated cut length that differs by more than the tolerance: both numbers', async () => {
    // 600 + 300 − (2 · 42 − π/2 · 36) = 872.5
    const stated = (length: number): string => lines(L12.replace('872', String(length)))
    expect(warned(await read(stated(900)))).toEqual([
      'row 2, column F (Cut length): 900 mm stated | 872.5 mm as computed, within 25 mm',
    ])
    expect(warned(await read(stated(897)))).toEqual([])
    expect(warned(await read(stated(897), { tolerance: 10 }))).toEqual([
      'row 2, column F (Cut length): 897 mm stated | 872.5 mm as computed, within 10 mm',
    ])
  })

  it('a bend tighter than the family’s least, a size that it does not have, very many bars', async () => {
    expect(warned(await read(lines('B1,12,500E,main,24,,600,300,,90,40')))[0]).toBe(
      'row 2, column K (Inside diameter): 40 mm | at least 60 mm for 12 mm 500E, main',
    )
    expect(warned(await read(lines('B1,14,60,main,24,,600,,,,'), { rules: US }))[0]).toMatch(
      /^row 2, column B \(Diameter\): 14 mm/,
    )
    expect(warned(await read(lines('B1,12,500E,main,2500,,600,,,,')))[0]).toMatch(/2500 bars of one mark/)
  })

  it('a bar longer than bars are sold', async () => {
    expect(warned(await read(lines('B1,12,500E,main,24,,25000,,,,')))).toEqual([
      'row 2, column G (A): a bar of 25000 mm | at most 18000 mm, as bars are commonly sold',
    ])
  })

  it('a shape that legs cannot say', async () => {
    const list = await read(
      'Mark,Shape,Dia,Grade,Count,A,B,C,Inside\nB1,Z,12,500E,1,300,600,300,60\nB2,U,12,500E,1,300,600,300,60',
    )
    expect(warned(list)).toEqual([
      'row 2, column B (Shape): Z | a drawn path: legs do not say which way a bend turns, so the bar counts as U',
    ])
  })
})

describe('a map', () => {
  const text = 'Ref,Durchm.,Quality,Stk,First,Second,Roll\nB1,12,,24,600,300,60\n'
  const map: BarListMap = {
    format: MAP_FORMAT,
    columns: {
      mark: 'ref',
      diameter: { letter: 'B' },
      count: 'Stk',
      legs: ['First', { letter: 'f' }],
      inside: 'roll',
    },
    given: { grade: '500E', role: 'main' },
  }

  it('says which column is which, and what counts for all', async () => {
    const list = await read(text, { map })
    expect(said(list)).toEqual([])
    expect(wholeList(list)).toEqual([L12_BAR])
  })

  it('that names no column of the list is an issue', async () => {
    const list = await read(text, { map: { ...map, columns: { ...map.columns, count: 'Pieces' } } })
    expect(said(list)[0]).toBe('row 1, Count: no such column | one column "Pieces", as the map says')
  })

  it('reads a list without names by letters', async () => {
    const bare: BarListMap = {
      format: MAP_FORMAT,
      header: 0,
      columns: {
        mark: { letter: 'A' },
        diameter: { letter: 'B' },
        grade: { letter: 'C' },
        count: { letter: 'D' },
        legs: [{ letter: 'E' }],
      },
    }
    const list = await read('B1,12,500E,2,600\nB2,x,500E,2,600\n', { map: bare })
    expect(list.rows.map(({ row }) => row)).toEqual([1, 2])
    expect(said(list)).toEqual(['row 2, column B (Diameter): "x" | a length above 0 to 60 mm'])
  })
})

it('10,000 rows are read and checked within two seconds', async () => {
  const rows = Array.from(
    { length: 10_000 },
    (_, index) => `B${index},12,500E,main,${1 + (index % 9)},,${600 + index / 10},300,250,90 90,60`,
  )
  const before = performance.now()
  const list = await read(lines(...rows))
  expect(list.rows).toHaveLength(10_000)
  expect(said(list)).toEqual([])
  expect(performance.now() - before).toBeLessThan(2000)
})
