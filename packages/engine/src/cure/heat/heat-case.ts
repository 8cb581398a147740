import * as z from 'zod'
import { foundText, InputError, type InputIssue } from '../../working/issue.ts'
import { parseInput } from '../../working/parse.ts'
import type { Assumed } from '../../working/worked.ts'
import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'
import type { Face } from './face.ts'
import type { HeatProblem, OuterLayer } from './problem.ts'
import { type Series, type SeriesPoint, seriesIssues, steady } from './series.ts'

const MOST_POINTS = 20_000
const MOST_TIMES = 100_000
/** Twice what the richest mix can do, K: beyond it a unit is wrong. */
const MOST_RISE = 200

const between = (low: number, high: number) => z.number().min(low).max(high)
const celsius = between(COLDEST_READING, HOTTEST_READING)

type RawPoints = readonly SeriesPoint[]
type RawSeries = number | RawPoints | { readonly steps: RawPoints } | { readonly linear: RawPoints }

/**
 * A number, or points in time: `[[h, value], …]`, or with its form said: `{ "steps": … }`, `{ "linear": … }`. Which of them it is
 * shows by what came, so that a fault is named where it is and not as "none of these".
 */
function inTime(value: z.ZodNumber): z.ZodType<RawSeries> {
  const points = z
    .array(z.tuple([between(-100_000, 100_000), value]))
    .min(1)
    .max(MOST_POINTS)
  const formed = [z.strictObject({ steps: points }), z.strictObject({ linear: points })] as const
  const shapeOf = (given: unknown): z.ZodType => {
    if (Array.isArray(given)) return points
    if (typeof given !== 'object' || given === null) return value
    return 'linear' in given ? formed[1] : formed[0]
  }
  return z.unknown().superRefine((given, context) => {
    for (const issue of shapeOf(given).safeParse(given).error?.issues ?? [])
      context.addIssue(issue as Parameters<typeof context.addIssue>[0])
  }) as unknown as z.ZodType<RawSeries>
}

const outerLayer = z.strictObject({
  thickness: z.number().positive().max(5000),
  conductivity: z.number().positive().max(1000),
  heatCapacity: z.number().positive().max(20_000),
  initial: celsius.optional(),
  /** Hour at which it is taken off, with all outside it. */
  until: z.number().positive().optional(),
})

const face = z.strictObject({
  /** W/m²K; 0 lets nothing through. */
  film: inTime(between(0, 1e9)).optional(),
  /** Of the outer side, °C: a bed that holds it. In place of a film. */
  temperature: inTime(celsius).optional(),
  /** m²K/W */
  resistance: inTime(between(0, 1e6)).optional(),
  /** Where this side has another air than the case, °C. */
  air: inTime(celsius).optional(),
  /** Taken in at the outer side, W/m²; evaporation is negative. */
  gain: inTime(between(-5000, 10_000)).optional(),
  /** Sun on the side, W/m², with the share of it that is taken in. */
  sun: inTime(between(0, 1500)).optional(),
  absorptivity: between(0, 1).optional(),
  /** Sky that the side sees, °C, with its emissivity. */
  sky: inTime(between(-150, 100)).optional(),
  emissivity: between(0, 1).optional(),
  /** Mould or cover that stores heat, outward from the concrete. */
  layers: z.array(outerLayer).max(20).optional(),
})

const heatCase = z.strictObject({
  thickness: between(10, 10_000),
  initial: celsius,
  concrete: z.strictObject({
    conductivity: z.number().positive().max(20),
    heatCapacity: between(100, 10_000),
    binder: between(0, 1500),
    heat: between(0, 1000),
    ultimate: z.number().positive().max(1),
    tau: z.number().positive().max(10_000),
    // Below 0.2 a third of all heat would come at once.
    beta: between(0.2, 10),
    activation: between(0, 100_000),
    reference: between(-10, 60),
  }),
  top: face,
  bottom: face,
  air: inTime(celsius),
  hours: z.number().positive().max(100_000),
  every: z.number().positive(),
})

type RawCase = z.output<typeof heatCase>
type RawFace = RawCase['top']

export interface HeatCase {
  readonly problem: HeatProblem
  readonly assumed: readonly Assumed[]
}

/**
 * Reads a case of the verb `heat`. A bare row of points is straight between them for air, sun, sky, gain and temperature,
 * and holds from point to point for film and resistance.
 *
 * @throws InputError naming each field, also where a series does not reach from 0 to the end of the run.
 */
export function parseHeatCase(value: unknown, from = ''): HeatCase {
  const raw = parseInput(heatCase, value, from)
  const issues: InputIssue[] = []
  const read = (path: string, given: RawSeries, bare: Series['form']): Series => {
    const series = readSeries(given, bare)
    issues.push(...seriesIssues(series, path, raw.hours))
    return series
  }
  const air = read('air', raw.air, 'linear')
  if (raw.hours / raw.every > MOST_TIMES)
    issues.push({
      path: 'every',
      found: String(raw.every),
      expected: `at most ${MOST_TIMES} times in ${raw.hours} h`,
    })
  const { binder, heat, ultimate } = raw.concrete
  const rise = (binder * heat * ultimate) / raw.concrete.heatCapacity
  if (rise > MOST_RISE)
    issues.push({
      path: 'concrete.heat',
      found: `binder, heat, ultimate and heatCapacity that warm closed concrete by ${Math.round(rise)} K`,
      expected: `at most ${MOST_RISE} K: kg/m³, J/g, a share, kJ/m³K`,
    })
  const above = readFace('top', raw.top, air, read, issues)
  const below = readFace('bottom', raw.bottom, air, read, issues)
  if (issues.length > 0) throw new InputError(issues, from)
  const { conductivity, heatCapacity, ...hydration } = raw.concrete
  return {
    problem: {
      concrete: { thickness: raw.thickness, conductivity, heatCapacity },
      hydration,
      initial: raw.initial,
      under: layersOf(raw.bottom, raw.initial),
      over: layersOf(raw.top, raw.initial),
      below,
      above,
      hours: raw.hours,
      every: raw.every,
    },
    assumed: [...faceAssumed('top', raw.top, raw.initial), ...faceAssumed('bottom', raw.bottom, raw.initial)],
  }
}

function readSeries(given: RawSeries, bare: Series['form']): Series {
  if (typeof given === 'number') return steady(given)
  if (isPoints(given)) return { form: bare, points: given }
  return 'steps' in given ? { form: 'steps', points: given.steps } : { form: 'linear', points: given.linear }
}

function isPoints(given: RawSeries): given is RawPoints {
  return Array.isArray(given)
}

function readFace(
  name: string,
  raw: RawFace,
  air: Series,
  read: (path: string, given: RawSeries, bare: Series['form']) => Series,
  issues: InputIssue[],
): Face {
  issues.push(...faceIssues(name, raw))
  const some = (field: keyof RawFace & string, bare: Series['form'] = 'linear'): Series | null => {
    const given = raw[field] as RawSeries | undefined
    return given === undefined ? null : read(`${name}.${field}`, given, bare)
  }
  const [gain, sun, sky] = [some('gain'), some('sun'), some('sky')]
  return {
    film: some('film', 'steps'),
    held: some('temperature'),
    resistance: some('resistance', 'steps') ?? steady(0),
    air: some('air') ?? air,
    gain: [
      ...(gain === null ? [] : [{ series: gain, share: 1 }]),
      ...(sun === null ? [] : [{ series: sun, share: raw.absorptivity ?? 0 }]),
    ],
    sky: sky === null ? null : { temperature: sky, emissivity: raw.emissivity ?? 0 },
  }
}

/** What a side lacks or has too much of. */
function faceIssues(name: string, raw: RawFace): InputIssue[] {
  const issues: InputIssue[] = []
  const issue = (field: string, found: unknown, expected: string): void => {
    issues.push({ path: `${name}.${field}`, found: foundText(found), expected })
  }
  const pairs = [
    ['sun', 'absorptivity'],
    ['sky', 'emissivity'],
  ] as const
  for (const [of, with_] of pairs) {
    if ((raw[of] === undefined) === (raw[with_] === undefined)) continue
    const missing = raw[of] === undefined ? of : with_
    issue(missing, undefined, `${of} and ${with_} together`)
  }
  if (raw.film === undefined && raw.temperature === undefined)
    issue('film', undefined, 'a film, W/m²K, or a temperature that is held, °C')
  if (raw.temperature === undefined) return issues
  for (const field of ['film', 'air', 'gain', 'sun', 'sky'] as const)
    if (raw[field] !== undefined) issue(field, raw[field], 'none where the temperature of that side is held')
  return issues
}

function layersOf({ layers = [] }: RawFace, initial: number): OuterLayer[] {
  return layers.map((layer) => ({ ...layer, initial: layer.initial ?? initial, until: layer.until ?? null }))
}

function faceAssumed(name: string, { resistance, layers = [] }: RawFace, initial: number): Assumed[] {
  const assumed: Assumed[] = []
  if (resistance === undefined)
    assumed.push({
      field: `${name}.resistance`,
      value: 0,
      unit: 'm²K/W',
      why: 'not given: nothing on that face',
    })
  for (const [index, layer] of layers.entries())
    if (layer.initial === undefined)
      assumed.push({
        field: `${name}.layers[${index}].initial`,
        value: initial,
        unit: '°C',
        why: 'not given: as warm as the concrete',
      })
  return assumed
}
