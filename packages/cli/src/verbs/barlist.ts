import { readFile, writeFile } from 'node:fs/promises'
import {
  addBars,
  type BarList,
  type BarListMap,
  barsOf,
  goodBars,
  issuePlace,
  listError,
  mapOf,
  type RowIssue,
  readBarListMap,
  readTable,
  wholeList,
} from '@castwright/documents/bar-list'
import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { type DrawnBar, FAMILY_IDS, parseDrawing } from '@castwright/engine/panel'
import { InputError, readJson } from '@castwright/engine/working'
import type { Given } from '../given.ts'
import { type Outcome, textTable, type Verb } from '../verb.ts'

export const barlistVerb: Verb = {
  name: 'barlist',
  file: { name: 'FILE', about: 'bar list: CSV (comma, semicolon or tab) or XLSX' },
  options: [
    { flags: '--family <family>', about: 'family of its grades: nz, au, eu or us' },
    { flags: '--sheet <name>', about: 'sheet of an XLSX file; the first if not given' },
    { flags: '--panel <mark>', about: 'whose rows are meant, where the list names several panels' },
    { flags: '--map <file>', about: 'which column holds what, castwright.barlist-map/1' },
    { flags: '--save-map <file>', about: 'also writes the map by which the list was read, a new file' },
    { flags: '--decimal <sign>', about: 'point or comma; seen from the list if not given' },
    {
      flags: '--tolerance <mm>',
      about: 'most that a stated cut length may differ, mm; the cut tolerance of the family if not given',
    },
    { flags: '--take-good', about: 'takes the good rows though others are wrong; without it all or none' },
    { flags: '--into <drawing>', about: 'prints this drawing with the bars added, instead of the list' },
    { flags: '--replace', about: 'with --into: listed bars of the drawing with the same mark give way' },
    {
      flags: '--keep',
      about: 'with --into: a mark that the drawing has stays as drawn, the row is left out',
    },
  ],
  example: 'castwright barlist docs/examples/barlist.csv --family nz',
  async run(given) {
    const into = await given.optionFile('into')
    const existing = existingOf(given)
    const drawing = into === undefined ? undefined : parseDrawing(readJson(into.text, into.path), into.path)
    const family = familyOf(given, drawing?.code)
    const map = await mapGiven(given)
    const tolerance = given.optionalNumber('tolerance', { least: 0, most: 10_000, unit: 'mm' })
    const table = await readTable({
      bytes: await bytesOf(given),
      name: given.fileName,
      sheet: given.optionalText('sheet'),
      map,
    })
    const panel = given.optionalText('panel')
    const list = barsOf({ table, rules: codeFamily(family).steel, map, panel, tolerance })
    const bars = given.flag('take-good') ? goodBars(list) : wholeList(list)
    if (bars.length === 0) throw listError(list.errors, given.fileName)
    const added =
      drawing === undefined || into === undefined
        ? undefined
        : within(into.path, () => addBars({ drawing, bars, family, existing }))
    await saveMap(given, mapOf(list.columns, map))
    if (added === undefined) return listOutcome(list, bars)
    const text = JSON.stringify(added.drawing, null, 2)
    // The drawing goes on to the next program; what is to be looked at must not get lost with it.
    const taken = list.assumed.map(
      ({ field, value, unit, why }) => `Assumed: ${`${field} ${value} ${unit}`.trim()}, ${why}`,
    )
    const kept = added.kept.map((mark) => `Left out: ${mark}, which the drawing has`)
    for (const line of [...remarks(list, given.fileName), ...kept, ...taken])
      process.stderr.write(`${line}\n`)
    return {
      json: added.drawing,
      ...(list.errors.length > 0 ? { verdict: 'fail' as const } : {}),
      table: () => text,
    }
  },
}

/** Family of `--family`, else of `--code`, else of the drawing that the bars go into; a drawing of another family is refused. */
function familyOf(given: Given, drawn: FamilyId | undefined): FamilyId {
  const said = given.optionalChoice('family', FAMILY_IDS) ?? given.optionalCode()
  const family = said ?? drawn
  if (family === undefined) throw given.fault('family', undefined, `one of ${FAMILY_IDS.join(', ')}`)
  if (drawn !== undefined && family !== drawn) {
    throw given.fault('family', family, `${drawn}, the family of the drawing`)
  }
  return family
}

/** What becomes of a mark that the drawing has already. */
function existingOf(given: Given): 'refuse' | 'replace' | 'keep' {
  for (const name of ['replace', 'keep']) {
    if (given.flag(name) && !given.has('into')) throw given.fault(name, 'no --into', `--into with --${name}`)
  }
  if (given.flag('replace') && given.flag('keep')) {
    throw given.fault('keep', '--replace too', 'one of --replace and --keep')
  }
  return given.flag('replace') ? 'replace' : given.flag('keep') ? 'keep' : 'refuse'
}

async function mapGiven(given: Given): Promise<BarListMap | undefined> {
  const file = await given.optionFile('map')
  const map = file === undefined ? undefined : readBarListMap(file.text, file.path)
  const decimal = given.optionalChoice('decimal', ['point', 'comma'] as const)
  if (decimal === undefined) return map
  return { ...(map ?? { format: 'castwright.barlist-map/1' }), decimal }
}

/** Bytes of the list: a spreadsheet is no text. */
async function bytesOf(given: Given): Promise<Uint8Array> {
  if (given.file === undefined || given.file === '-') return new TextEncoder().encode(await given.fileText())
  try {
    return await readFile(given.file)
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? String(error)
    throw new InputError(
      [{ path: '', found: `no readable file (${why})`, expected: 'a file that can be read' }],
      given.file,
    )
  }
}

async function saveMap(given: Given, map: BarListMap): Promise<void> {
  const path = given.optionalText('save-map')
  if (path === undefined) return
  try {
    await writeFile(path, `${JSON.stringify(map, null, 2)}\n`, { flag: 'wx' })
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    const found = code === 'EEXIST' ? `${path}, which is there already` : `${path} (${code})`
    throw given.fault('save-map', found, 'a new file in a folder that is there')
  }
}

function within<T>(path: string, act: () => T): T {
  try {
    return act()
  } catch (error) {
    throw error instanceof InputError ? error.within(path) : error
  }
}

function listOutcome(list: BarList, bars: readonly DrawnBar[]): Outcome {
  const { rows, warnings, errors, assumed, columns } = list
  return {
    json: {
      bars,
      rows: rows.flatMap(({ row, bar }) => (bar === null ? [] : [row])),
      warnings,
      errors,
      columns: {
        header: columns.header,
        unread: columns.unread.map(({ letter, name }) => ({ column: letter, name })),
      },
    },
    assumed,
    ...(errors.length > 0 ? { verdict: 'fail' as const } : {}),
    table: () => listTable(list),
  }
}

function listTable(list: BarList): string {
  const { rows, columns } = list
  const unread = columns.unread.map(({ letter, name }) => `${letter} ${name}`.trim()).join(', ')
  return [
    textTable([
      ['Row', 'Mark', 'Bar', 'Role', 'Count', 'Legs, mm', 'Turns, °', 'Inside, mm'],
      ...rows.flatMap(({ row, bar }) =>
        bar === null
          ? []
          : [
              [
                String(row),
                bar.bar,
                `${bar.diameter} ${bar.grade}`,
                bar.role ?? '',
                String(bar.count ?? ''),
                (bar.legs ?? []).join(' '),
                (bar.turns ?? []).join(' '),
                bar.inside === undefined ? '' : String(bar.inside),
              ],
            ],
      ),
    ]),
    ...remarks(list, ''),
    ...(unread === '' ? [] : [`Columns that nothing reads: ${unread}`]),
  ].join('\n')
}

/** Errors of rows that were left out, and what to look at, a line each. */
function remarks({ errors, warnings }: BarList, file: string): string[] {
  const line = (word: string) => (issue: RowIssue) =>
    `${word}: ${[file, issuePlace(issue)].filter((part) => part !== '').join(': ')}: found ${issue.found}, expected ${issue.expected}`
  return [...errors.map(line('Left out')), ...warnings.map(line('Look at'))]
}
