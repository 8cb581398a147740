import { codeFamily } from '@castwright/engine/codes'
import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { type BarList, barsOf, goodBars, wholeList } from './bars-of.ts'
import { readTable } from './read-table.ts'
import { issuePlace } from './row-issue.ts'

const RULES = codeFamily('nz').steel
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'

/** A workbook as spreadsheet programs write one; style 1 is a date. */
function workbook(
  sheets: readonly { readonly name: string; readonly rows: string; readonly after?: string }[],
): Uint8Array {
  const relations = sheets.map(
    (_, i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/worksheet" Target="worksheets/s${i + 1}.xml"/>`,
  )
  const parts: Record<string, string> = {
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets
      .map(({ name }, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relations.join('')}<Relationship Id="rId90" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf numFmtId="0"/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" xfId="0"/><xf numFmtId="14" xfId="0" applyNumberFormat="1"/></cellXfs></styleSheet>`,
  }
  for (const [i, { rows, after = '' }] of sheets.entries()) {
    parts[`xl/worksheets/s${i + 1}.xml`] =
      `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${after}</worksheet>`
  }
  return zipSync(Object.fromEntries(Object.entries(parts).map(([path, xml]) => [path, strToU8(xml)])))
}

const text = (place: string, value: string): string =>
  `<c r="${place}" t="inlineStr"><is><t>${value}</t></is></c>`
const number = (place: string, value: number, more = ''): string =>
  `<c r="${place}"${more}><v>${value}</v></c>`
const row = (at: number, ...cells: readonly string[]): string => `<row r="${at}">${cells.join('')}</row>`

function head(at: number): string {
  return row(
    at,
    ...['Mark', 'Dia', 'Grade', 'Count', 'A', 'B', 'Inside'].map((name, i) =>
      text(`${'ABCDEFG'[i]}${at}`, name),
    ),
  )
}

function bar(at: number, mark: string, change: Readonly<Record<string, string>> = {}): string {
  const cells: Record<string, string> = {
    A: text(`A${at}`, mark),
    B: number(`B${at}`, 12),
    C: text(`C${at}`, '500E'),
    D: number(`D${at}`, 24),
    E: number(`E${at}`, 600),
    F: number(`F${at}`, 300),
    G: number(`G${at}`, 60),
    ...change,
  }
  return row(at, ...Object.values(cells))
}

async function read(bytes: Uint8Array, sheet?: string): Promise<BarList> {
  return barsOf({ table: await readTable({ bytes, name: 'list.xlsx', sheet }), rules: RULES })
}

const said = (issues: BarList['errors']): string[] =>
  issues.map((issue) => `${issuePlace(issue)}: ${issue.found} | ${issue.expected}`)

describe('a bar list of a spreadsheet', () => {
  it('keeps the row numbers of the sheet, with empty rows above and between', async () => {
    const list = await read(
      workbook([{ name: 'Bars', rows: head(4) + bar(7, 'B1') + bar(9, 'B2', { B: text('B9', 'x') }) }]),
    )
    expect(list.rows.map((each) => each.row)).toEqual([7, 9])
    expect(said(list.errors)).toEqual(['row 9, column B (Dia): "x" | a length above 0 to 60 mm'])
  })

  it('reads the first sheet, or the one that is named', async () => {
    const bytes = workbook([
      { name: 'N05', rows: head(1) + bar(2, 'B1') },
      { name: 'N06 &amp; N07', rows: head(1) + bar(2, 'B2') },
    ])
    expect(wholeList(await read(bytes)).map((each) => each.bar)).toEqual(['B1'])
    expect(wholeList(await read(bytes, 'N06 & N07')).map((each) => each.bar)).toEqual(['B2'])
    await expect(read(bytes, 'N08')).rejects.toThrow(
      'found no sheet "N08", expected one of "N05", "N06 & N07"',
    )
  })

  it('takes what a formula gave last, and says so once a column', async () => {
    const formula = (place: string): string => `<c r="${place}"><f>E2-300</f><v>300</v></c>`
    const list = await read(
      workbook([
        {
          name: 'Bars',
          rows: head(1) + bar(2, 'B1', { F: formula('F2') }) + bar(3, 'B2', { F: formula('F3') }),
        },
      ]),
    )
    expect(wholeList(list)).toHaveLength(2)
    expect(said(list.warnings)).toEqual([
      'row 2, column F (B): formulas in 2 rows, this the first | values: the value stored last was read',
    ])
  })

  it('a formula that gave nothing, or a fault, is an error', async () => {
    const list = await read(
      workbook([
        {
          name: 'Bars',
          rows:
            head(1) +
            bar(2, 'B1', { F: '<c r="F2"><f>E2-300</f></c>' }) +
            bar(3, 'B2', { F: '<c r="F3" t="e"><f>Z9</f><v>#REF!</v></c>' }) +
            bar(4, 'B3') +
            row(5, '<c r="A5" t="str"><f>IF(Z1,1,"")</f><v></v></c>') +
            bar(6, 'B4', { F: '<c r="F6"><f>E6-300</f><v></v></c>' }) +
            bar(7, 'B5', { F: '<c r="F7"><f>E7-300</f><v/></c>' }),
        },
      ]),
    )
    expect(list.errors.map(({ row: at, column, found }) => `${at}${column} ${found}`)).toEqual([
      '2F a formula without a stored value',
      '3F #REF!',
      '6F a formula without a stored value',
      '7F a formula without a stored value',
    ])
    expect(goodBars(list).map((each) => each.bar)).toEqual(['B3'])
  })

  it('a date is never taken for a mark or a number', async () => {
    const list = await read(
      workbook([
        {
          name: 'Bars',
          rows:
            head(1) +
            bar(2, '', { A: number('A2', 46115, ' s="1"') }) +
            bar(3, 'B2', { D: number('D3', 46115, ' s="1"') }),
        },
      ]),
    )
    expect(said(list.errors)).toEqual([
      'row 2, column A (Mark): the date 2026-04-03 | text: format the column as text and type it again',
      'row 3, column D (Count): the date 2026-04-03 | a whole number from 1 to 100000: format the column as a number',
    ])
  })

  it('merged cells are an error in each of their rows, in a title they are not', async () => {
    const list = await read(
      workbook([
        {
          name: 'Bars',
          rows: row(1, text('A1', 'Wall')) + head(2) + bar(3, 'B1') + bar(4, 'B2', { C: '' }) + bar(5, 'B3'),
          after: '<mergeCells count="2"><mergeCell ref="A1:G1"/><mergeCell ref="C3:C4"/></mergeCells>',
        },
      ]),
    )
    expect(list.errors.map(({ row: at, column, found }) => `${at}${column} ${found}`)).toEqual([
      '3C merged cells C3:C4',
      '4C merged cells C3:C4',
      '4C nothing',
    ])
    expect(goodBars(list).map((each) => each.bar)).toEqual(['B3'])
  })

  it('a file that is none of these is refused', async () => {
    await expect(read(new Uint8Array([0x50, 0x4b, 3, 4, 9, 9]))).rejects.toThrow('does not unpack')
    await expect(read(zipSync({ 'a.xml': strToU8('<a/>') }))).rejects.toThrow('no sheet')
    await expect(read(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0]))).rejects.toThrow('older binary form')
  })

  it('10,000 rows are read and checked within three seconds', async () => {
    const rows = Array.from({ length: 10_000 }, (_, index) => bar(index + 2, `B${index}`))
    const bytes = workbook([{ name: 'Bars', rows: head(1) + rows.join('') }])
    const before = performance.now()
    expect(wholeList(await read(bytes))).toHaveLength(10_000)
    expect(performance.now() - before).toBeLessThan(3000)
  })
})
