import { type LiftReport, liftReport } from '@castwright/engine/lift'
import { panelOf, readDrawing } from '@castwright/engine/panel'
import { readJson } from '@castwright/engine/working'
import { parseYard } from '@castwright/engine/yard'
import type { Given } from '../given.ts'
import { numberText, textTable, type Verb } from '../verb.ts'

const STAGES = ['flat'] as const

export const liftVerb: Verb = {
  name: 'lift',
  file: { name: 'DRAWING', about: 'drawing of the panel, JSON' },
  options: [
    { flags: '--stage <name>', about: 'flat, which is also what is taken if not given' },
    { flags: '--factor <number>', about: 'factor on own weight; 1 if not given' },
    { flags: '--modulus <MPa>', about: 'modulus of elasticity, MPa; 30000 if not given' },
    { flags: '--poisson <number>', about: 'Poisson’s ratio, at least 0 and below 0.5; 0.2 if not given' },
    { flags: '--probe <x,y>', about: 'a point to look at, mm; may be given several times', repeated: true },
    { flags: '--yard <YARD.json>', about: 'the yard: its rigging says whether legs are equalised' },
  ],
  example: 'castwright lift docs/examples/ell.json --factor 1.3',
  async run(given) {
    const options = readOptions(given)
    const drawing = readDrawing(await given.fileText(), given.fileName)
    const yardFile = await given.optionFile('yard')
    const yard =
      yardFile === undefined ? null : parseYard(readJson(yardFile.text, yardFile.path), yardFile.path)
    const panel = panelOf(drawing, given.fileName)
    const { working, assumed, verdict, checks, ...found } = liftReport({
      panel,
      yard,
      ...options,
      from: given.fileName,
    })
    return {
      json: { ...found, verdict, checks: checks.map(({ working: _, assumed: __, ...check }) => check) },
      working,
      assumed,
      verdict,
      table: () => liftTable(found, checks),
    }
  },
}

function readOptions(given: Given) {
  given.optionalChoice('stage', STAGES)
  const factor = given.optionalNumber('factor', { above: 0 })
  const modulus = given.optionalNumber('modulus', { above: 0, unit: 'MPa' })
  const poisson = given.optionalNumber('poisson', { least: 0 })
  if (poisson !== undefined && poisson >= 0.5)
    throw given.fault('poisson', poisson, 'a number at least 0 and below 0.5')
  return {
    ...(factor === undefined ? {} : { factor }),
    ...(modulus === undefined ? {} : { modulus }),
    ...(poisson === undefined ? {} : { poisson }),
    probes: given.texts('probe').map((text) => readProbe(given, text)),
  }
}

function readProbe(given: Given, text: string): readonly [number, number] {
  const [x, y, ...more] = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  if (x === undefined || y === undefined || more.length > 0 || !Number.isFinite(x) || !Number.isFinite(y)) {
    throw given.fault('probe', text, 'two numbers with a comma between, mm')
  }
  return [x, y]
}

function liftTable(
  { mass, weight, centre, inserts, unknown }: Omit<LiftReport, 'working' | 'assumed' | 'verdict' | 'checks'>,
  checks: LiftReport['checks'],
): string {
  return [
    textTable([
      ['Mass', numberText(mass, 'kg')],
      ['Weight, without factor', numberText(weight, 'kN')],
      ['Centre of gravity', `${numberText(centre[0])}, ${numberText(centre[1], 'mm')}`],
      ...inserts.map(({ mark, at, load }) => [
        `Insert ${mark} at ${numberText(at[0])}, ${numberText(at[1])}`,
        numberText(load, 'kN'),
      ]),
    ]),
    ...checks.map(({ what, verdict }) => `${what}: ${verdict}`),
    ...unknown.map((gap) => `Not known: ${gap}`),
  ].join('\n')
}
