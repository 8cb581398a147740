/** Bending moments per length, N·mm/mm, which is also 10⁻³ kN·m/m; sagging positive. */
export interface Moments {
  readonly mx: number
  readonly my: number
  readonly mxy: number
}

/** The larger and the smaller principal moment. */
export function principalMoments({ mx, my, mxy }: Moments): [number, number] {
  const middle = (mx + my) / 2
  const radius = Math.hypot((mx - my) / 2, mxy)
  return [middle + radius, middle - radius]
}

/** Largest principal bending tension on either face, MPa: 6 m / t² of the lower face for sagging, of the upper for hogging. */
export function peakTension(moments: Moments, thickness: number): number {
  const [most, least] = principalMoments(moments)
  return (6 * Math.max(most, -least, 0)) / (thickness * thickness)
}
