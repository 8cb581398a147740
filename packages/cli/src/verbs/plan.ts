import { codeFamily } from '@castwright/engine/codes'
import { readDrawing } from '@castwright/engine/panel'
import { type Plan, plan } from '@castwright/engine/plan'
import { type Asked, joinVerdicts, limitOf, readJson } from '@castwright/engine/working'
import { parseYard } from '@castwright/engine/yard'
import { numberText, textTable, type Verb } from '../verb.ts'

export const planVerb: Verb = {
  name: 'plan',
  file: { name: 'DRAWING', about: 'drawing of the panel, JSON' },
  options: [{ flags: '--yard <YARD.json>', about: 'the yard; without it what needs it is not known' }],
  example: 'castwright plan docs/examples/ell.json --code eu',
  async run(given) {
    const drawing = readDrawing(await given.fileText(), given.fileName)
    const yardFile = await given.optionFile('yard')
    const yard =
      yardFile === undefined ? null : parseYard(readJson(yardFile.text, yardFile.path), yardFile.path)
    const family = codeFamily(given.code(drawing.code, yard?.code))
    const found = plan({ drawing, yard, family, from: given.fileName })
    const { working, assumed, checks, toRecord, steel, mould, pour, cure, lift, quality, ...rest } = found
    const verdict = joinVerdicts(checks.map((check) => check.verdict))
    return {
      json: {
        ...rest,
        verdict,
        checks: checks.map(({ working: _, ...check }) => check),
        toRecord: toRecord.map((asked) => ({ ...asked, limit: limitOf(asked) })),
        ...figures({ steel, mould, pour, cure, lift, quality }),
      },
      working: [...working, ...checks.flatMap((check) => check.working)],
      assumed,
      verdict,
      table: () => planTable(found),
    }
  },
}

function limitText({ low = null, high = null, unit }: Asked): string {
  if (low !== null && high !== null) return `${numberText(low)} to ${numberText(high, unit)}`
  if (low !== null) return `at least ${numberText(low, unit)}`
  return high === null ? unit : `at most ${numberText(high, unit)}`
}

const LISTED_ONCE = ['working', 'assumed', 'checks', 'toRecord']

/** The rooms' own figures; what they list of checks and working stands once, for the whole plan. */
function figures(rooms: Pick<Plan, 'steel' | 'mould' | 'pour' | 'cure' | 'lift' | 'quality'>): object {
  return Object.fromEntries(
    Object.entries(rooms).map(([room, found]) => [
      room,
      Object.fromEntries(Object.entries(found).filter(([field]) => !LISTED_ONCE.includes(field))),
    ]),
  )
}

function planTable({ mark, mass, volume, centre, length, width, thickness, checks, toRecord }: Plan): string {
  return [
    textTable([
      ['Panel', mark],
      ['Size', `${numberText(length)} × ${numberText(width)} × ${numberText(thickness, 'mm')}`],
      ['Mass', numberText(mass, 'kg')],
      ['Volume', numberText(volume, 'm³')],
      ['Centre of gravity', `${numberText(centre[0])}, ${numberText(centre[1], 'mm')}`],
    ]),
    '',
    textTable([
      ['Step', 'Check', 'Found', 'Limit', 'Verdict', 'Source'],
      ...checks.map(({ step, what, demand, limit, unit, sense, verdict, source }) => [
        step,
        what,
        numberText(demand, unit),
        limit === null ? 'not known' : `${sense} ${numberText(limit, unit)}`,
        verdict,
        [source.standard, source.clause, `(${source.status})`].filter((word) => word !== '').join(' '),
      ]),
    ]),
    '',
    textTable([
      ['Step', 'To see or measure', 'Limit'],
      ...toRecord.map((asked) => [asked.step, asked.what, limitText(asked)]),
    ]),
    ...checks.flatMap(({ what, unknown }) => (unknown ?? []).map((gap) => `Not known: ${what}: ${gap}`)),
  ].join('\n')
}
