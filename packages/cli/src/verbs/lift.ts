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

const PEAK_OF = {
  support: 'mean over the disc of a support',
  corner: 'mean over the disc of a re-entrant corner',
  plate: 'the plate’s own value',
} as const

function liftTable(
  found: Omit<LiftReport, 'working' | 'assumed' | 'verdict' | 'checks'>,
  checks: LiftReport['checks'],
): string {
  const { mass, weight, centre, proposed, inserts, peak, probes, unknown, notes } = found
  const kind = proposed ? 'Proposed insert' : 'Insert'
  const parts = [
    textTable([
      ['Mass', numberText(mass, 'kg')],
      ['Weight, without factor', numberText(weight, 'kN')],
      ['Centre of gravity', placeText(centre)],
      ...inserts.map(({ mark, at, load }) => [`${kind} ${mark} at ${placeText(at)}`, numberText(load, 'kN')]),
      ...peakRows(peak),
    ]),
    ...(probes.length > 0 ? [textTable(probeRows(probes))] : []),
    [
      ...(proposed ? ['The drawing has no inserts: these are proposed.'] : []),
      ...checks.map(({ what, verdict }) => `${what}: ${verdict}`),
      ...notes,
      ...unknown.map((gap) => `Not known: ${gap}`),
    ].join('\n'),
  ]
  return parts.filter((part) => part !== '').join('\n\n')
}

function placeText([x, y]: readonly [number, number]): string {
  return `${numberText(x)}, ${numberText(y, 'mm')}`
}

function peakRows({ at, of, stress, error }: LiftReport['peak']): string[][] {
  if (at === null || of === null) return []
  return [
    [`Peak tension at ${placeText(at)}`, `${numberText(stress, 'MPa')}, ${PEAK_OF[of]}`],
    ['Its error, estimated by a second mesh', numberText(error, 'MPa')],
  ]
}

function probeRows(probes: LiftReport['probes']): string[][] {
  return [
    ['Probe at', 'deflection mm', 'mx kN·m/m', 'my kN·m/m', 'mxy kN·m/m', 'stress MPa', ''],
    ...probes.map(({ at, deflection, mx, my, mxy, stress, averaged }) => [
      placeText(at),
      ...[deflection, mx, my, mxy, stress].map((value) => numberText(value)),
      averaged ? 'moments: mean over the disc it stands in' : '',
    ]),
  ]
}
