import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'
import type { YardBed } from '../../yard/yard.ts'
import type { NightInput } from '../heat/night.ts'
import type { SeriesPoint } from '../heat/series.ts'

/** Film under a mould that stands on legs or rails, W/m²K, with radiation: 6 to 10 where wind does not reach. From memory. */
export const SHELTERED_FILM = 7

type Bottom = NightInput['bottom']

const STEEL = { thickness: 5, conductivity: 50, heatCapacity: 3600 }
const PLY = { thickness: 18, conductivity: 0.13, heatCapacity: 900 }

export interface UnderBedInput {
  /** Bed of the pour as it was recorded; null where none was. */
  readonly mark: string | null
  /** The same as the yard lists it. */
  readonly bed: YardBed | undefined
  /** Hours from mixing to the end of the run. */
  readonly hours: number
}

/**
 * What a panel meets below: face plate, insulation and air as the yard gives them for the bed, or the heating of the bed.
 *
 * Unknown where a bed is said to be heated and not by how much. Where nothing is given a 5 mm steel plate (18 mm plywood where the
 * face says so) over sheltered air is assumed and listed: plate values and film from memory.
 */
export function underBed({ mark, bed, hours }: UnderBedInput): Worked<Bottom> {
  const name = mark === null ? 'bed' : `bed ${mark}`
  const under = bed?.under
  if (bed?.heated === true && under?.temperature === undefined && under?.power === undefined)
    return unknown(`${name}: is heated, but neither temperature nor power of its heating is given (under)`)
  const assumed: Assumed[] = []
  if (bed === undefined)
    assumed.push({
      field: name,
      value: 'unheated',
      unit: '',
      why: mark === null ? 'no bed is recorded with the pour' : 'the yard lists no such bed',
    })
  const layers = under?.layers ?? [plateOf(bed)]
  if (under?.layers === undefined) assumed.push(plateAssumed(name, bed))
  if (under?.temperature !== undefined)
    return known({ temperature: heldPoints(under.temperature, hours), layers }, [], assumed)
  if (under?.film === undefined)
    assumed.push({
      field: `${name}: film below`,
      value: SHELTERED_FILM,
      unit: 'W/m²K',
      why: 'not given: air under the mould without wind, from memory',
    })
  const outside = 1 / (under?.film ?? SHELTERED_FILM) + (under?.insulation ?? 0)
  return known(
    {
      film: 1 / outside,
      layers,
      ...(under?.power === undefined ? {} : { gain: powerPoints(under.power, hours) }),
    },
    [],
    assumed,
  )
}

function isPly(bed: YardBed | undefined): boolean {
  return /ply|timber|wood/i.test(bed?.face ?? '')
}

function plateOf(bed: YardBed | undefined): typeof STEEL {
  return isPly(bed) ? PLY : STEEL
}

function plateAssumed(name: string, bed: YardBed | undefined): Assumed {
  const [value, of] = isPly(bed) ? [PLY.thickness, 'plywood, 0.13 W/mK'] : [STEEL.thickness, 'steel, 50 W/mK']
  const why = `make-up of the mould not given: a face plate of ${of}, from memory`
  return { field: `${name}: face plate`, value, unit: 'mm', why }
}

/** Held at one temperature, or along points in time; from its last point on as there. */
function heldPoints(temperature: number | readonly SeriesPoint[], hours: number): readonly SeriesPoint[] {
  if (typeof temperature === 'number') return edged([[0, temperature]], hours)
  return edged(temperature, hours)
}

function edged(points: readonly SeriesPoint[], hours: number): readonly SeriesPoint[] {
  const [first, last] = [points[0], points.at(-1)]
  if (first === undefined || last === undefined) return []
  return [
    ...(first[0] > 0 ? [[0, first[1]] as const] : []),
    ...points,
    ...(last[0] < hours ? [[hours, last[1]] as const] : []),
  ]
}

/** Nothing, then so many watts between two hours, then nothing: jumps at both. */
export function powerPoints(
  { watts, from, until }: { readonly watts: number; readonly from: number; readonly until: number },
  hours: number,
): readonly SeriesPoint[] {
  const before: SeriesPoint[] =
    from > 0
      ? [
          [0, 0],
          [from, 0],
        ]
      : []
  const end = Math.max(hours, until) + 1
  return [...before, [from, watts], [until, watts], [until, 0], [end, 0]]
}
