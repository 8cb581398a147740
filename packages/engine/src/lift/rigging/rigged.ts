import { modeFactor, SLINGS_COUNTED } from '../../codes/eu/en818-4-1996/mode-factor.ts'
import { distance, type Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { IN_LINE } from '../supports.ts'
import { beamOf } from './beam.ts'
import { freeHang } from './free-hang.ts'
import { insertLoad } from './insert-load.ts'
import { type LegPlaces, legPlaces, mainDirection, meanOf, offLine } from './leg-places.ts'
import { type LegShares, legShares } from './leg-shares.ts'
import type { Rigged, RiggedInput, RiggedPick } from './rigging-types.ts'

/** Picks of a row may stand off their line by this, mm. */
export const ROW_OFF = 50

/**
 * What hangs on each leg and on each insert: shares, legs of uneven length, legs that count, leg angles, pulls, hook height, beam and how the
 * panel hangs.
 *
 * Unknown where the rigging does not fit the picks, where a pick would have to push down, where the centre of gravity is outside of the
 * picks, and for values that are not finite. What is missing beside the loads is in `gaps`.
 *
 * Left out: swing, wind, the give of clutches, legs of different kinds.
 *
 * Source: statics; legs that count by CEN/TR 15728:2016, sling tables by EN 818-4 (both from memory).
 * Example: 67.5 kN on four independent legs of 4 m at (±1757, ±879): two count, 33.75 kN at 29.42°, 38.75 kN along the leg.
 */
export function rigged(input: RiggedInput): Worked<Rigged> {
  const { picks, rigging, load, hang, centre, thickness } = input
  const refused = refuse(input)
  if (refused.length > 0) return unknown(...refused)
  const places = legPlaces({ rigging, picks, centre, hang })
  if (!places.known) return places
  const shares = legShares(input, places.value)
  if (!shares.known) return shares
  const working: Step[] = [...places.working, ...shares.working]
  const assumed: Assumed[] = [...(shares.assumed ?? [])]
  const free = freeHang(input, places.value)
  working.push(...free.working)
  const hung = picks.map((pick, i): RiggedPick => {
    const leg = places.value.legs[i]!
    const share = shares.value.legs[i]!
    const on = insertLoad({ input, pick, leg, vertical: share.vertical, plumb: free.plumb })
    working.push(...on.working)
    return {
      mark: pick.mark,
      at: pick.at,
      ...share,
      angle: leg.angle,
      reach: leg.reach,
      length: leg.length,
      bearing: leg.bearing,
      ...on.value,
    }
  })
  const slings = slingsOf(input, places.value, shares.value, hung)
  const beam = beamOf({ input, places: places.value, picks: hung })
  working.push(...slings.working, ...beam.working)
  return known(
    {
      picks: hung,
      determinate: shares.value.determinate,
      counted: shares.value.counted,
      slingsCounted: slings.counted,
      legTension: slings.tension,
      legRating: slings.rating,
      slackError: shares.value.slackError,
      angle: Math.max(...hung.map(({ angle }) => angle)),
      hook: places.value.hook,
      hookHeight: places.value.hookHeight,
      beam: beam.value,
      tilt: free.tilt,
      plumb: free.plumb,
      gaps: [...places.value.gaps, ...slings.gaps, ...free.gaps],
    },
    working,
    assumed,
  )

  // Values that no drawing may have, and picks that do not suit the way it hangs.
  function refuse({ shares: given, compliance, angle }: RiggedInput): string[] {
    const gaps: string[] = []
    if (!(load > 0) || !Number.isFinite(load)) gaps.push('load on the legs: a number above 0')
    if (!(thickness > 0) || !Number.isFinite(thickness)) gaps.push('thickness: a number above 0')
    if (!(angle >= 0 && angle <= 90)) gaps.push('angle of the panel from level: 0 to 90°')
    const points: readonly Point[] = [centre, ...picks.map(({ at }) => at)]
    if (!points.every((at) => at.every(Number.isFinite)))
      gaps.push('positions of the inserts: finite numbers')
    if (picks.length === 0) gaps.push('inserts: none drawn')
    if (picks.length === 1) gaps.push('supports: one insert does not hold a panel level')
    if (gaps.length > 0) return gaps
    for (const [i, { mark, at }] of picks.entries()) {
      const same = picks.findIndex((other) => distance(other.at, at) < IN_LINE)
      if (same < i) gaps.push(`inserts ${picks[same]!.mark} and ${mark}: at one place`)
    }
    const off = offLine(picks.map(({ at }) => at))
    if (hang === 'row' && off > ROW_OFF) gaps.push('picks: a panel that stands or turns hangs from one row')
    if (hang === 'flat' && picks.length > 2 && off <= IN_LINE)
      gaps.push('supports: all in one line do not hold the panel level')
    if (
      hang === 'flat' &&
      picks.length === 2 &&
      awayFromLine(
        picks.map(({ at }) => at),
        centre,
      ) > IN_LINE
    ) {
      gaps.push('loads on two face inserts: the centre of gravity is not on their line')
    }
    if (given !== undefined && (given.length !== picks.length || !given.every(Number.isFinite))) {
      gaps.push('shares: one finite number a pick')
    }
    const rows = compliance ?? []
    if (
      compliance !== undefined &&
      (rows.length !== picks.length ||
        !rows.every((row) => row.length === picks.length && row.every(Number.isFinite)))
    ) {
      gaps.push('compliance of the panel: finite numbers, picks by picks')
    }
    return gaps
  }
}

function awayFromLine(points: readonly Point[], at: Point): number {
  const [ux, uy] = mainDirection(points)
  const mean = meanOf(points)
  return Math.abs((at[0] - mean[0]) * uy - (at[1] - mean[1]) * ux)
}

interface Slings {
  readonly counted: number
  readonly tension: number
  readonly rating: number | null
  readonly working: readonly Step[]
  readonly gaps: readonly string[]
}

/** The slings themselves, by their own tables: three of four legs and more count. */
function slingsOf(
  { load, picks }: RiggedInput,
  { legs }: LegPlaces,
  { legs: shares }: LegShares,
  hung: readonly RiggedPick[],
): Slings {
  const n = picks.length
  const counted = Math.min(n, SLINGS_COUNTED)
  const steepest = Math.max(...legs.map(({ angle }) => angle))
  const share = Math.max(
    n > SLINGS_COUNTED ? load / counted : 0,
    ...shares.map((leg) => Math.max(leg.share ?? 0, leg.uneven?.most ?? 0)),
    ...(n <= SLINGS_COUNTED ? hung.map(({ vertical }) => vertical) : []),
  )
  const tension = share / Math.cos((steepest * Math.PI) / 180)
  const factor = modeFactor({ legs: n, angle: steepest })
  const working: Step[] = [
    {
      symbol: 'T',
      formula: 'R / cos(β°)',
      given: { R: share, β: steepest },
      result: tension,
      unit: 'kN',
      source: STATICS,
      note:
        n > SLINGS_COUNTED
          ? `tension of a leg, ${counted} of ${n} legs count for slings`
          : 'tension of the most loaded leg, at the flattest angle',
    },
  ]
  if (!factor.known) return { counted, tension, rating: null, working, gaps: factor.gaps }
  const rating = load / factor.value
  working.push(...factor.working, {
    symbol: 'N leg',
    formula: 'W / M',
    given: { W: load, M: factor.value },
    result: rating,
    unit: 'kN',
    source: factor.working[0]!.source,
    note: 'least rating of one leg by the mode factor; a rating entered for the whole set outranks it',
  })
  return { counted, tension, rating, working, gaps: [] }
}
