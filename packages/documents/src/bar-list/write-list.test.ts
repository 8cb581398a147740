import type { ScheduledBar } from '@castwright/engine/steel'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { scheduleTable } from './schedule-table.ts'
import { writeCsv } from './write-csv.ts'
import { writeXlsx } from './write-xlsx.ts'

const L: ScheduledBar = {
  mark: 'B1',
  shape: 'L',
  diameter: 12,
  grade: '500E',
  role: 'main',
  count: 24,
  cutLength: 872.548667764616,
  legs: [600, 300],
  turns: [90],
  inside: 60,
  mass: 18.6,
}
const STRAIGHT: ScheduledBar = {
  ...L,
  mark: '=HYPERLINK("x")',
  shape: 'straight',
  legs: [5920],
  turns: [],
  inside: null,
  cutLength: 5920,
  count: 2,
  mass: 10.5,
}
const TABLE = scheduleTable([
  {
    job: 'Hall, "West"',
    panel: 'N05',
    family: 'nz' as const,
    bars: [L, STRAIGHT],
    unknown: ['B9: legs[0]: too short'],
  },
])

const text = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)

describe('a schedule as CSV', () => {
  it('names columns and units, quotes by RFC 4180, ends every line with CRLF', async () => {
    expect(text(await writeCsv(TABLE))).toBe(
      [
        'Job,Panel,Mark,Shape,"Diameter, mm",Grade,Role,Count,"Cut length, mm","A, mm","B, mm","Turns, °","Inside diameter, mm","Mass each, kg","Mass, kg"',
        '"Hall, ""West""",N05,B1,L,12,500E,main,24,872.549,600,300,90,60,0.775,18.6',
        `"Hall, ""West""",N05,"'=HYPERLINK(""x"")",straight,12,500E,main,2,5920,5920,,,,5.25,10.5`,
        '',
      ].join('\r\n'),
    )
  })

  it('begins with a byte-order mark where asked', async () => {
    expect(text(await writeCsv(TABLE, { bom: true })).charCodeAt(0)).toBe(0xfeff)
    expect(text(await writeCsv(TABLE)).charCodeAt(0)).toBe('J'.charCodeAt(0))
  })

  it.each(['=1', '+1', '-1', '@a', '\t=1', '＝1', "'=1"])('text %j cannot run as a formula', async (mark) => {
    const table = scheduleTable([{ job: '', panel: '', family: null, bars: [{ ...L, mark }], unknown: [] }])
    expect(text(await writeCsv(table))).toContain(`'${mark}`)
  })

  it('has a column of shape codes for bars of the family eu', async () => {
    const bars: ScheduledBar[] = [
      { ...L, inside: 48 },
      { ...L, mark: 'B2', shape: 'bent', legs: [300, 200, 300], turns: [60, 60] },
      STRAIGHT,
    ]
    const panel = { job: '', panel: 'N05', family: 'eu' as const, bars, unknown: [] }
    const lines = text(await writeCsv(scheduleTable([panel]))).split('\r\n')
    expect(lines[0]).toContain('Shape,Shape code (BS 8666),"Diameter, mm"')
    // BS 8666:2005, Table 3: shape 11 is an L on the least former, 00 straight. Which way the bends of the other turn is not said.
    expect(lines[1]).toContain('L,11,12')
    expect(lines[2]).toContain('bent,,12')
    expect(lines[3]).toContain('straight,00,12')
    expect(text(await writeCsv(TABLE))).not.toContain('Shape code')
  })
})

describe('a schedule as XLSX', () => {
  it('types numbers as numbers and text as text, freezes the names, sets widths', async () => {
    const parts = unzipSync(await writeXlsx(TABLE))
    const sheet = strFromU8(parts['xl/worksheets/sheet1.xml'] as Uint8Array)
    expect(sheet).toContain('<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>')
    expect(sheet).toContain('<c r="H2" s="0"><v>24</v></c>')
    expect(sheet).toContain('<c r="I2" s="0"><v>872.549</v></c>')
    expect(sheet).toMatch(
      /<c r="C3" s="2" t="inlineStr"><is><t xml:space="preserve">=HYPERLINK\(&quot;x&quot;\)<\/t>/,
    )
    expect(sheet).not.toContain('<f')
    expect(sheet).toContain('<col min="1" max="1" width="20" customWidth="1"/>')
  })

  it('says on a sheet of its own what is not in the list', async () => {
    const parts = unzipSync(await writeXlsx(TABLE))
    expect(strFromU8(parts['xl/worksheets/sheet2.xml'] as Uint8Array)).toContain(
      'N05: B9: legs[0]: too short',
    )
    expect(Object.keys(unzipSync(await writeXlsx({ ...TABLE, unknown: [] })))).not.toContain(
      'xl/worksheets/sheet2.xml',
    )
  })

  it('gives the same bytes twice', async () => {
    expect(await writeXlsx(TABLE)).toEqual(await writeXlsx(TABLE))
  })
})
