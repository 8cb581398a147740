import { notAboveZero, notFinite } from '../working/guard.ts'
import type { Source } from '../working/source.ts'
import { type Assumed, type Step, unknown, type Worked } from '../working/worked.ts'

/** Activation energy where none is given, J/mol; always listed as assumed. */
export const ASSUMED_ACTIVATION = 40_000
/** J/mol·K */
const GAS_CONSTANT = 8.314
const KELVIN = 273.15

const ARRHENIUS: Source = {
  standard: 'Arrhenius law, in the form of ASTM C1074',
  clause: '',
  status: 'from memory',
}

/** Hours from mixing, °C; linear between readings. */
export type TemperatureReadings = readonly (readonly [hours: number, celsius: number])[]

export interface SettingInput {
  /** Initial set at the reference temperature, h from mixing. */
  readonly initial: number
  /** Final set at the reference temperature, h from mixing. */
  readonly final?: number | undefined
  /** °C */
  readonly reference: number
  /** One temperature all the time, °C, or a log in order of time. */
  readonly temperature: number | TemperatureReadings
  /** J/mol */
  readonly activation?: number | undefined
}

export interface Setting {
  /** h from mixing */
  readonly initialSet: number
  /** h from mixing; null where none was asked for. */
  readonly finalSet: number | null
}

/** Speed of setting at a temperature, as a multiple of that at the reference: °C, J/mol. */
export function settingRate(celsius: number, reference: number, activation: number): number {
  return Math.exp((-activation / GAS_CONSTANT) * (1 / (celsius + KELVIN) - 1 / (reference + KELVIN)))
}

/**
 * Set reached when the integral of the speed of setting over time is the set at the reference temperature.
 *
 * Unknown where an input is missing or not a size, where the log does not start at mixing (hour 0), runs back in time, or ends
 * before the set. Example: 5.0 h at 23 °C, 40 kJ/mol: 7.85 h at 15 °C, 3.44 h at 30 °C.
 */
export function setting(input: SettingInput): Worked<Setting> {
  const { initial, final, reference, temperature } = input
  const assumed: Assumed[] = []
  if (input.activation === undefined) {
    assumed.push({
      field: 'activation',
      value: ASSUMED_ACTIVATION,
      unit: 'J/mol',
      why: 'usual for setting; 33500 is a low one',
    })
  }
  const activation = input.activation ?? ASSUMED_ACTIVATION
  const gaps = [
    ...notAboveZero({ initial, activation, ...(final === undefined ? {} : { final }) }),
    ...notFinite({ reference }),
    ...(reference > -KELVIN ? [] : ['reference: above −273.15 °C']),
    ...(typeof temperature === 'number' ? plainGaps(temperature) : logGaps(temperature)),
  ]
  if (final !== undefined && final < initial) gaps.push('final: not before the initial set')
  if (gaps.length > 0) return unknown(...gaps)

  const working: Step[] = []
  const reach = (wanted: number, symbol: string): number | null => {
    if (typeof temperature === 'number') {
      const step = constantStep(symbol, wanted, temperature, reference, activation)
      if (!Number.isFinite(step.result)) return null
      working.push(step)
      return step.result
    }
    const hour = hourReached(temperature, wanted, (celsius) => settingRate(celsius, reference, activation))
    if (hour !== null) {
      working.push({
        symbol,
        formula: 'hour at which ∫ exp(−E/R (1/T − 1/Tr)) dt reaches the set at the reference temperature',
        given: { t_r: wanted, E: activation, R: GAS_CONSTANT, Tr: reference + KELVIN },
        result: hour,
        unit: 'h',
        source: ARRHENIUS,
        by: 'search',
        note: `${temperature.length} readings, linear between them`,
      })
    }
    return hour
  }
  const initialSet = reach(initial, 't_i')
  if (initialSet === null) return unknown('temperature: the log ends before the initial set')
  const finalSet = final === undefined ? null : reach(final, 't_f')
  if (final !== undefined && finalSet === null)
    return unknown('temperature: the log ends before the final set')
  return { known: true, value: { initialSet, finalSet }, working, assumed }
}

function constantStep(
  symbol: string,
  wanted: number,
  celsius: number,
  reference: number,
  activation: number,
): Step & { readonly result: number } {
  return {
    symbol,
    formula: 't_r / exp(−E / R (1 / (T + 273.15) − 1 / (Tr + 273.15)))',
    given: { t_r: wanted, E: activation, R: GAS_CONSTANT, T: celsius, Tr: reference },
    result: wanted / settingRate(celsius, reference, activation),
    unit: 'h',
    source: ARRHENIUS,
  }
}

/** Hour at which the integral of `rate` over a log reaches `wanted`, or null where the log ends first. */
export function hourReached(
  log: TemperatureReadings,
  wanted: number,
  rate: (celsius: number) => number,
): number | null {
  let sum = 0
  for (const { at, start, end } of piecesOf(log, rate)) {
    const gain = simpson(at, start, end)
    if (sum + gain >= wanted) return within(at, start, end, wanted - sum)
    sum += gain
  }
  return null
}

/** Integral of `rate` over a log from its first reading to an hour, or to its end where that comes first. */
export function gainedBy(log: TemperatureReadings, hour: number, rate: (celsius: number) => number): number {
  let sum = 0
  for (const { at, start, end } of piecesOf(log, rate)) {
    if (start >= hour) break
    sum += simpson(at, start, Math.min(end, hour))
  }
  return sum
}

interface Piece {
  /** Speed at an hour of the piece. */
  readonly at: (hour: number) => number
  readonly start: number
  readonly end: number
}

/** Pieces of at most 2 K and half an hour: the curve of the rate over one is then far below the reading error. */
function* piecesOf(log: TemperatureReadings, rate: (celsius: number) => number): Generator<Piece> {
  for (let i = 0; i + 1 < log.length; i += 1) {
    const [from, cold] = log[i] as readonly [number, number]
    const [to, warm] = log[i + 1] as readonly [number, number]
    const at = (hour: number): number => rate(cold + ((warm - cold) * (hour - from)) / (to - from))
    const pieces = Math.max(1, Math.ceil(Math.abs(warm - cold) / 2), Math.ceil((to - from) / 0.5))
    for (let piece = 0; piece < pieces; piece += 1)
      yield {
        at,
        start: from + ((to - from) * piece) / pieces,
        end: from + ((to - from) * (piece + 1)) / pieces,
      }
  }
}

function simpson(at: (hour: number) => number, from: number, to: number): number {
  return ((to - from) / 6) * (at(from) + 4 * at((from + to) / 2) + at(to))
}

/** Hour in a piece by which `part` has been gained: bisection, the gain only grows. */
function within(at: (hour: number) => number, from: number, to: number, part: number): number {
  let [low, high] = [from, to]
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2
    if (simpson(at, from, middle) < part) low = middle
    else high = middle
  }
  return (low + high) / 2
}

function plainGaps(celsius: number): string[] {
  return celsius >= -10 && celsius <= 100 ? [] : ['temperature: −10 to 100 °C']
}

function logGaps(log: TemperatureReadings): string[] {
  if (log.length < 2) return ['temperature: a log of at least two readings']
  if (log[0]?.[0] !== 0) return ['temperature: the log must start at mixing, hour 0']
  for (let i = 0; i < log.length; i += 1) {
    const [hour, celsius] = log[i] as readonly [number, number]
    const before = log[i - 1]
    if (!(celsius >= -10 && celsius <= 100)) return [`temperature: reading ${i + 1} is not −10 to 100 °C`]
    if (!Number.isFinite(hour) || (before !== undefined && !(hour > before[0])))
      return [`temperature: reading ${i + 1} is not later than the one before`]
  }
  return []
}
