import { distance, type Point, type Ring } from '../panel/point.ts'
import { signedArea } from '../panel/polygon.ts'
import { type MouldLength, mouldSurvey } from './corner-lengths.ts'
import { type CornerPush, cornerPush } from './corner-push.ts'
import { fitCorners } from './fit-corners.ts'
import { evenLeft, MISREAD_FACTOR, misreadLengths, TAPE_SCATTER } from './misread.ts'

/** A taped length beside the mould that all lengths give together. */
export interface LengthLeft extends MouldLength {
  readonly taped: number
  readonly fitted: number
  /** Taped less fitted over the part of a misreading that shows, mm; 0 where no other length checks it. */
  readonly even: number
}

export interface ShapeCorner extends CornerPush {
  readonly drawn: Point
  /** Where it was set up, the mould laid on the drawing. */
  readonly at: Point
  /** Inside the mould, degrees. */
  readonly angleDegrees: number
  readonly drawnDegrees: number
  /** The longer of the two lengths that meet in it, as drawn, mm. */
  readonly longer: number
}

/** The mould as it was set up. */
export interface MouldShape {
  /** Every corner of the outline that is taped. */
  readonly whole: boolean
  readonly corners: readonly ShapeCorner[]
  readonly lengths: readonly LengthLeft[]
  /** Largest of what is left, each over the part that shows, mm. */
  readonly misfit: number
  readonly misfitLimit: number
  /** Lengths that do not fit the others, the likeliest first, and by how much each reads over, mm. */
  readonly misread: readonly { readonly length: LengthLeft; readonly over: number }[]
  /** Largest difference of an angle from the drawn one, degrees. */
  readonly skewDegrees: number
}

export type ShapeFound =
  | { readonly shape: MouldShape; readonly missing: readonly [] }
  | { readonly shape: null; readonly missing: readonly string[] }

/**
 * The mould that taped lengths give, and where it leaves the drawing. `taped`: mm by the id of each length of `mouldSurvey`. Not known while one
 * of them is missing, is not above 0, or where they lead to no shape.
 */
export function mouldShape({
  outline,
  taped,
}: {
  readonly outline: Ring
  readonly taped: Readonly<Record<string, number | undefined>>
}): ShapeFound {
  const { corners, lengths } = mouldSurvey(outline)
  const missing = lengths.filter(({ id }) => !((taped[id] ?? 0) > 0 && Number.isFinite(taped[id])))
  if (missing.length > 0) return { shape: null, missing: missing.map(({ what }) => what) }
  const drawn = corners.map((index) => outline[index] as Point)
  const placeOf = new Map(corners.map((index, place) => [index, place]))
  const rows = lengths.map(({ id, from, to }) => ({
    from: placeOf.get(from) as number,
    to: placeOf.get(to) as number,
    length: taped[id] as number,
  }))
  const fitted = fitCorners(drawn, rows)
  if (fitted === null) return { shape: null, missing: ['lengths that give one shape: tape them again'] }
  const even = evenLeft(fitted)
  const misfitLimit = MISREAD_FACTOR * TAPE_SCATTER
  const left = lengths.map(
    (length, k): LengthLeft => ({
      ...length,
      taped: rows[k]?.length as number,
      fitted: (rows[k]?.length as number) - (fitted.left[k] as number),
      even: even[k] as number,
    }),
  )
  const whole = corners.length === outline.length
  const numbers = corners.map((index) => index + 1)
  const around = { drawn, at: fitted.at, numbers, whole }
  const shaped = drawn.map((corner, index): ShapeCorner => {
    const neighbours = [index - 1, index + 1].map((k) => drawn[(k + drawn.length) % drawn.length] as Point)
    return {
      ...cornerPush({ ...around, index }),
      drawn: corner,
      at: fitted.at[index] as Point,
      angleDegrees: insideAngle(fitted.at, index),
      drawnDegrees: insideAngle(drawn, index),
      longer: Math.max(...neighbours.map((other) => distance(corner, other))),
    }
  })
  return {
    shape: {
      whole,
      corners: shaped,
      lengths: left,
      misfit: Math.max(0, ...even),
      misfitLimit,
      misread: misreadLengths(drawn, rows, misfitLimit).map(({ index, over }) => ({
        length: left[index] as LengthLeft,
        over,
      })),
      skewDegrees: Math.max(...shaped.map((one) => Math.abs(one.angleDegrees - one.drawnDegrees))),
    },
    missing: [],
  }
}

/** Angle at a corner on the side of the concrete, degrees, whichever way the ring runs. */
function insideAngle(ring: Ring, index: number): number {
  const [p, q, r] = [-1, 0, 1].map((step) => ring[(index + step + ring.length) % ring.length] as Point) as [
    Point,
    Point,
    Point,
  ]
  const cross = (p[0] - q[0]) * (r[1] - q[1]) - (p[1] - q[1]) * (r[0] - q[0])
  const dot = (p[0] - q[0]) * (r[0] - q[0]) + (p[1] - q[1]) * (r[1] - q[1])
  const turn = (Math.atan2(-cross * Math.sign(signedArea(ring)), dot) * 180) / Math.PI
  return turn < 0 ? turn + 360 : turn
}
