import type { Point } from '../../panel/point.ts'
import type { Region } from '../../panel/region.ts'
import type { Step } from '../../working/worked.ts'
import { type Displaced, displacedIn } from '../displaced.ts'
import { LEFT_SOURCE } from '../left-too-long.ts'
import type { PlacingZone } from '../pour-plan.ts'
import { bandWidth } from './band-width.ts'
import { type Band, bandsLength, dealt, workingOrder } from './working-order.ts'

export interface ZonesInput {
  readonly region: Region
  readonly points: readonly Point[]
  readonly chute: Point
  /** mm */
  readonly thickness: number
  /** Concrete, m³: void formers and ducts taken off. */
  readonly volume: number
  readonly displaced: readonly Displaced[]
  /** Covering radius, mm. */
  readonly radius: number
  /** In and moving, every layer. */
  readonly secondsEach: number
  readonly vibrators: number
  /** Concrete that the gang places, m³/h; null where not known. */
  readonly placing: number | null
  /** Minutes that a band may wait for the one beside it. */
  readonly wait: number
}

export interface Zones {
  readonly bands: readonly Band[]
  readonly zones: readonly PlacingZone[]
  /** Minutes of the slowest zone, placed and vibrated. */
  readonly zoneMinutes: number
  readonly steps: readonly Step[]
}

/** More bands are tried only up to this many over what the width asks for: uneven panels need a few. */
const MORE_BANDS = 6

/** Bands of the wanted width; a few more where a wide part of an uneven panel would still take longer than a band may wait. */
export function placingZones(input: ZonesInput): Zones {
  const { points, volume, radius, secondsEach, vibrators, placing, wait } = input
  const length = bandsLength(input.region)
  const minutes = (points.length * secondsEach) / 60 / vibrators
  const { width, steps } = bandWidth({ volume, length, minutes, placing, wait })
  // A band narrower than the distance between insertions is none: what is slower than that is told by its minutes.
  const most = Math.max(1, Math.floor(length / (Math.sqrt(3) * radius)))
  const least = Math.min(most, Math.max(1, Math.ceil(length / width - 1e-9)))
  let best = banded(input, least)
  for (
    let count = least + 1;
    best.zoneMinutes > wait && count <= Math.min(most, least + MORE_BANDS);
    count += 1
  ) {
    const next = banded(input, count)
    if (next.zoneMinutes < best.zoneMinutes) best = next
  }
  return { ...best, steps: [...steps, zonesStep(best.zones.length, length, width)] }
}

function banded(input: ZonesInput, count: number): Omit<Zones, 'steps'> {
  const { region, points, chute, radius, thickness, secondsEach, vibrators, placing, displaced } = input
  const bands = workingOrder({ region, points, chute, rowPitch: 1.55 * radius, count })
  const zones = zonesOf(bands, thickness, secondsEach, vibrators, displaced)
  const zoneMinutes = zones.reduce(
    (most, zone) => Math.max(most, zone.minutes, placing === null ? 0 : (60 * zone.volume) / placing),
    0,
  )
  return { bands, zones, zoneMinutes }
}

function zonesOf(
  bands: readonly Band[],
  thickness: number,
  secondsEach: number,
  vibrators: number,
  displaced: readonly Displaced[],
): PlacingZone[] {
  let first = 0
  return bands.map((band, index): PlacingZone => {
    const from = first
    first += band.points.length
    const insertions = band.points.map((_, i) => from + i)
    const shares = dealt(insertions, vibrators)
    return {
      id: band.id,
      order: index + 1,
      outlines: band.outlines,
      volume: band.area * (thickness / 1000) - displacedIn(band.outlines, displaced),
      insertions,
      minutes: (Math.max(...shares.map(({ length }) => length)) * secondsEach) / 60,
      shares,
    }
  })
}

function zonesStep(zones: number, length: number, width: number): Step {
  return {
    symbol: 'n_z',
    formula: 'L / w, rounded up',
    given: { L: length, w: width },
    result: zones,
    unit: '',
    source: LEFT_SOURCE,
    by: 'search',
    note: 'a few more where a part of the panel is wide; none narrower than the insertions stand apart',
  }
}
