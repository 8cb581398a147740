import type { ListColumn, ScheduleTable } from './schedule-table.ts'
import { columnLetter } from './table.ts'

type OutCell = string | number | null

/**
 * The schedule as an XLSX file (ISO/IEC 29500): numbers typed as numbers, text as text and never as a formula, the row of names frozen.
 * Bars that are not in the list stand on a sheet of their own. The same schedule gives the same bytes.
 */
export async function writeXlsx({ columns, rows, unknown }: ScheduleTable): Promise<Uint8Array> {
  const { strToU8, zipSync } = await import('fflate')
  const sheets = [
    { name: 'Bars', xml: sheetXml(columns, rows) },
    ...(unknown.length === 0
      ? []
      : [
          {
            name: 'Not known',
            xml: sheetXml(
              [{ name: 'Not known, so not in the list', kind: 'text', width: 100 }],
              unknown.map((gap) => [gap]),
            ),
          },
        ]),
  ]
  const parts: Record<string, string> = {
    '[Content_Types].xml': contentTypes(sheets.length),
    '_rels/.rels': relations([{ type: 'officeDocument', target: 'xl/workbook.xml' }]),
    'xl/workbook.xml': workbook(sheets.map(({ name }) => name)),
    'xl/_rels/workbook.xml.rels': relations([
      ...sheets.map((_, index) => ({ type: 'worksheet', target: `worksheets/sheet${index + 1}.xml` })),
      { type: 'styles', target: 'styles.xml' },
    ]),
    'xl/styles.xml': STYLES,
  }
  for (const [index, { xml }] of sheets.entries()) parts[`xl/worksheets/sheet${index + 1}.xml`] = xml
  const files = Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, strToU8(HEAD + text)]))
  return zipSync(files, { level: 6, mtime: new Date(1980, 0, 1) })
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006'
const SHEET_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml'

/** Places in `cellXfs` below. */
const STYLE = { name: 1, text: 2, number: 0, mass: 3 } as const

const STYLES = `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="49" fontId="1" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`

function sheetXml(columns: readonly ListColumn[], rows: readonly (readonly OutCell[])[]): string {
  const names = rowXml(
    1,
    columns.map(({ name }) => name),
    () => STYLE.name,
  )
  const lines = rows.map((row, index) =>
    rowXml(index + 2, row, (column) => STYLE[columns[column]?.kind ?? 'text']),
  )
  const widths = columns.map(
    ({ width }, index) => `<col min="${index + 1}" max="${index + 1}" width="${width}" customWidth="1"/>`,
  )
  return `<worksheet xmlns="${MAIN}"><dimension ref="A1:${columnLetter(columns.length - 1)}${rows.length + 1}"/><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>${widths.join('')}</cols><sheetData>${names}${lines.join('')}</sheetData></worksheet>`
}

function rowXml(number: number, cells: readonly OutCell[], styleOf: (column: number) => number): string {
  const filled = cells.map((cell, column) => {
    if (cell === null || cell === '') return ''
    const place = `r="${columnLetter(column)}${number}"`
    return typeof cell === 'number'
      ? `<c ${place} s="${styleOf(column)}"><v>${cell}</v></c>`
      : `<c ${place} s="${styleOf(column)}" t="inlineStr"><is><t xml:space="preserve">${xmlText(cell)}</t></is></c>`
  })
  return `<row r="${number}">${filled.join('')}</row>`
}

function contentTypes(sheets: number): string {
  const overrides = Array.from(
    { length: sheets },
    (_, index) =>
      `<Override PartName="/xl/worksheets/sheet${index + 1}.xml" ContentType="${SHEET_TYPE}.worksheet+xml"/>`,
  )
  return `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${SHEET_TYPE}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${SHEET_TYPE}.styles+xml"/>${overrides.join('')}</Types>`
}

function relations(to: readonly { readonly type: string; readonly target: string }[]): string {
  const each = to.map(
    ({ type, target }, index) =>
      `<Relationship Id="rId${index + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
  )
  return `<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`
}

function workbook(names: readonly string[]): string {
  const sheets = names.map(
    (name, index) => `<sheet name="${xmlText(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  )
  return `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets.join('')}</sheets></workbook>`
}

/** Text inside an element. Characters that XML cannot hold are written as the format says, `_x0007_`, and so is what looks like that. */
function xmlText(text: string): string {
  return (
    text
      .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML cannot hold
      .replace(/[\u0000-\u0008\u000b-\u001f\ufffe\uffff]/g, (sign) => {
        const code = sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')
        return `_x${code}_`
      })
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
  )
}
