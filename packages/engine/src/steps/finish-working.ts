import {
  BLEED_MODEL,
  BLEED_SHARE,
  type BleedKind,
  bleedTotal,
  ROUGHNESS,
  SHED_WIND,
  SIGNS,
  STATION_HEIGHT,
  SURFACE_FILM,
  SURFACE_HEAT,
  type SurfaceReading,
  timeToAir,
} from '../pour/finish/index.ts'
import { commonPractice, type Source } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Mix } from '../yard/yard.ts'
import type { BandedWindow, SurfaceInput } from './finish-now.ts'
import type { SeenSign } from './finish-readings.ts'

/** Passes where nobody asked for a number. */
export const ASSUMED_PASSES = 2
/** A batch sets this much earlier or later than the mix's test, share of the time: assumed, always told. */
export const BATCH_SCATTER = 0.1

const ARRHENIUS: Source = {
  standard: 'Arrhenius law, in the form of ASTM C1074',
  clause: '',
  status: 'from memory',
}
const WINDOW: Source = commonPractice('power-float window as a share of the time to initial set')
const COOLING: Source = commonPractice('panel as one body that cools to the air, model')

/** The working of a surface's windows: temperature, setting, sign, bleed, drying. */
export function finishSteps(input: {
  readonly mix: SurfaceInput['mix']
  readonly activation: number
  readonly windows: readonly BandedWindow[]
  readonly sign: SeenSign | null
  readonly kind: BleedKind
  readonly thickness: number
  readonly drying: readonly Step[]
  readonly readings: readonly SurfaceReading[]
}): Step[] {
  const { mix, activation, windows, sign, kind, thickness, drying, readings } = input
  const opens = windows.find(({ id }) => id === 'pass:1')
  const closes = windows.at(-1)
  const last = readings.at(-1)
  return [
    {
      symbol: 'τ_air',
      formula: 'c d / (3.6 h)',
      given: { c: SURFACE_HEAT, d: thickness / 1000, h: SURFACE_FILM },
      result: timeToAir(thickness),
      unit: 'h',
      source: COOLING,
      note: `from the last of ${readings.length} ${readings.length === 1 ? 'temperature' : 'temperatures'}, ${last?.celsius ?? 0} °C at ${rounded(last?.hour ?? 0)} h, towards the air`,
    },
    ...(opens === undefined || closes === undefined
      ? []
      : (
          [
            [
              '0.55 to 0.65',
              opens.from,
              't_opens',
              'when the sheen is gone, not before 0.55 and not after 0.65',
            ],
            [1, closes.to, 't_i', 'initial set'],
          ] as const
        ).map(
          ([share, result, symbol, note]): Step => ({
            symbol,
            formula: 'hour at which ∫ exp(−E/R (1/T − 1/Tr)) dt reaches a t_r',
            given: { a: share, t_r: mix.initialSet, E: activation, Tr: mix.reference },
            result,
            unit: 'h',
            source: share === 1 ? ARRHENIUS : WINDOW,
            by: 'search',
            note: sign === null ? note : `${note}; moved by the sign below`,
          }),
        )),
    ...(sign === null
      ? []
      : [
          {
            symbol: 's',
            formula: `share of the way to initial set at a ${sign.what} of ${sign.value} ${sign.what === 'boot print' ? 'mm' : 'MPa'}`,
            given: {},
            result: sign.share,
            unit: '',
            source: SIGNS,
            by: 'table' as const,
            note: 'outranks the computed share; what is left runs as much faster or slower as it did so far',
          },
        ]),
    {
      symbol: 'B',
      formula: 'b d',
      given: { b: BLEED_SHARE[kind], d: thickness },
      result: bleedTotal(thickness, kind),
      unit: 'kg/m²',
      source: BLEED_MODEL,
      note: 'all the water that comes up, 63 % of it in 40 min at 20 °C; model, no source',
    },
    ...drying,
  ]
}

/** What the windows rest on that nobody measured. */
export function finishAssumed(
  input: SurfaceInput & {
    readonly measured: readonly SurfaceReading[]
    readonly kind: BleedKind
    readonly placed: number
    readonly activation: number
  },
): Assumed[] {
  const { mix, readings, measured, kind, placed, activation, roofed } = input
  const lines: (Assumed | null)[] = [
    temperatureLine(measured, mix),
    {
      field: 'scatter of a batch',
      value: BATCH_SCATTER * 100,
      unit: '%',
      why: 'sets earlier or later than the mix’s test',
    },
    mix.activation === undefined
      ? {
          field: 'activation',
          value: activation,
          unit: 'J/mol',
          why: 'the mix gives none; 33500 is looked at too',
        }
      : null,
    mix.bleeds === undefined
      ? {
          field: 'bleeding of the mix',
          value: kind,
          unit: '',
          why: 'the mix does not say; the careful line of drying',
        }
      : null,
    { field: 'bleed water', value: BLEED_SHARE[kind] * 100, unit: '% of the depth', why: 'model, no source' },
    readings.placed === null
      ? { field: 'placed', value: placed, unit: 'h after mixing', why: 'no zone and no discharge on record' }
      : null,
    readings.passes === null
      ? { field: 'passes', value: ASSUMED_PASSES, unit: '', why: 'nobody asked for another number' }
      : null,
    roofed
      ? { field: 'wind in the shed', value: SHED_WIND, unit: 'km/h', why: 'unless read at the panel' }
      : {
          field: 'wind',
          value: `from ${STATION_HEIGHT} m, roughness ${ROUGHNESS} m`,
          unit: '',
          why: 'a station’s reading brought down to half a metre; read at the panel it counts as it is',
        },
  ]
  return lines.filter((line) => line !== null)
}

function temperatureLine(measured: readonly SurfaceReading[], mix: Mix): Assumed {
  const field = 'temperature of the concrete'
  const last = measured.at(-1)
  if (last?.from === 'plan')
    return { field, value: mix.reference ?? '', unit: '°C', why: 'nothing measured and no air known' }
  if (last?.from === 'air')
    return {
      field,
      value: rounded(last.celsius),
      unit: '°C',
      why: 'that of the air at mixing: nothing measured',
    }
  return {
    field,
    value: `after ${rounded(last?.hour ?? 0)} h`,
    unit: '',
    why: 'nothing measured later: it goes towards the air as one body',
  }
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10
}
