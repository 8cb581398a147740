import { codeFamily } from '@castwright/engine/codes'
import {
  fineFineness,
  type HeatProblem,
  type HeatRun,
  heatSteps,
  type NightFindings,
  nightFindings,
  parseHeatCase,
  readWeather,
  runHeat,
  type WeatheredCase,
  weatheredCase,
} from '@castwright/engine/cure/heat'
import { joinVerdicts, parseJson } from '@castwright/engine/working'
import { mixSchema } from '@castwright/engine/yard'
import type { Given } from '../given.ts'
import { numberText, type Outcome, textTable, type Verb } from '../verb.ts'

const COLUMNS = ['times', 'core', 'top', 'bottom', 'mean', 'equivalentAge', 'degree', 'hottest'] as const
const mixFile = mixSchema.partial({ mark: true, strength: true })

export const heatVerb: Verb = {
  name: 'heat',
  file: { name: 'CASE.json', about: 'panel, concrete, both faces, air, hours' },
  options: [
    {
      flags: '--weather <CSV>',
      about: 'weather in place of the case’s air: hours or time, air, wind, sky, sun',
    },
    {
      flags: '--mixed <moment>',
      about: 'when it was mixed, ISO 8601 with zone; where the weather has times',
    },
    { flags: '--code <family>', about: 'also judge the night: nz, au, eu or us; not judged if not given' },
    { flags: '--mix <MIX.json>', about: 'mix whose strength a frost meets, with --code' },
  ],
  example: 'castwright heat docs/examples/heat-night.json',
  async run(given) {
    const { value, gaps, assumed: fromWeather } = await readCase(given)
    if (gaps.length > 0) return notKnown(gaps)
    const { problem, assumed } = parseHeatCase(value, given.fileName)
    const run = runHeat(problem, fineFineness(problem.concrete.thickness))
    return outcomeOf(problem, run, await judged(given, problem, run), [...fromWeather, ...assumed])
  },
}

async function readCase(given: Given): Promise<WeatheredCase> {
  const value = await given.fileJson()
  const file = await given.optionFile('weather')
  const mixed = given.optionalText('mixed')
  if (file === undefined) {
    if (mixed !== undefined) throw given.fault('mixed', mixed, 'none without --weather')
    return { value, gaps: [], assumed: [] }
  }
  const weather = readWeather(file.text, { ...(mixed === undefined ? {} : { mixed }), from: file.path })
  return weatheredCase(value, weather, given.fileName)
}

async function judged(given: Given, problem: HeatProblem, run: HeatRun): Promise<NightFindings | null> {
  const family = given.optionalCode()
  const file = await given.optionFile('mix')
  if (family === undefined) {
    if (file !== undefined) throw given.fault('mix', file.path, 'none without --code')
    return null
  }
  const mix = file === undefined ? null : parseJson(mixFile, file.text, file.path)
  return nightFindings({ run, problem, family: codeFamily(family), mix })
}

function notKnown(gaps: readonly string[]): Outcome {
  return {
    json: { ...Object.fromEntries(COLUMNS.map((column) => [column, null])), unknown: gaps },
    verdict: 'unknown',
    table: () => gaps.map((gap) => `Not known: ${gap}`).join('\n'),
  }
}

function outcomeOf(
  problem: HeatProblem,
  run: HeatRun,
  findings: NightFindings | null,
  assumed: Outcome['assumed'] = [],
): Outcome {
  const { coldest, peak, corePeak, least, difference, frost, energy } = run
  const extra = { coldest, peak, corePeak, least, difference, frost, energy }
  return {
    json: {
      ...Object.fromEntries(COLUMNS.map((column) => [column, run[column]])),
      ...extra,
      ...(findings === null ? {} : { coverOff: findings.coverOff, checks: findings.checks }),
    },
    working: [...heatSteps(problem, run), ...(findings?.checks.flatMap(({ working }) => working) ?? [])],
    assumed,
    ...(findings === null ? {} : { verdict: joinVerdicts(findings.checks.map(({ verdict }) => verdict)) }),
    table: () =>
      [columnsText(run), peaksText(run), ...(findings === null ? [] : [findingsText(findings)])].join('\n\n'),
  }
}

function columnsText(run: HeatRun): string {
  const { times, core, top, bottom, mean, hottest, equivalentAge, degree } = run
  const fixed = (column: readonly number[], at: number, digits: number): string =>
    (column[at] ?? Number.NaN).toFixed(digits)
  return textTable([
    ['h', 'Core', 'Top', 'Bottom', 'Mean', 'Hottest', 'Age, h', 'Degree'],
    ...times.map((time, at) => [
      numberText(time),
      ...[core, top, bottom, mean, hottest].map((column) => fixed(column, at, 1)),
      fixed(equivalentAge, at, 1),
      fixed(degree, at, 3),
    ]),
  ])
}

function peaksText({ peak, corePeak, least, difference, frost }: HeatRun): string {
  const row = (what: string, celsius: number, hour: number): string[] => [
    what,
    numberText(celsius, '°C'),
    `at ${numberText(hour, 'h')}`,
  ]
  return textTable([
    row('Hottest', peak.celsius, peak.hour),
    row('Core', corePeak.celsius, corePeak.hour),
    row('Coldest', least.celsius, least.hour),
    ...(difference === null
      ? []
      : [
          [
            'Core over face',
            numberText(difference.kelvin, 'K'),
            `at ${numberText(difference.hour, 'h')}, ${difference.side}`,
          ],
        ]),
    ...(frost === null ? [] : [['Below 0 °C', '', `from ${numberText(frost, 'h')}`]]),
  ])
}

function findingsText({ checks, coverOff }: NightFindings): string {
  return [
    textTable(
      checks.map(({ verdict, what, demand, limit, unit, sense }) => [
        verdict,
        what,
        numberText(demand, unit),
        limit === null ? 'no confirmed limit' : `${sense} ${numberText(limit, unit)}`,
      ]),
    ),
    coverOff === null
      ? 'The covered face does not come within the limit to the air in this run, or the family has none.'
      : `From ${numberText(coverOff, 'h')} the top face stays within the limit to the air.`,
  ].join('\n')
}
