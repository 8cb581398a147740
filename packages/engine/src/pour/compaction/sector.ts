/** Directions from one angle counter-clockwise to another, rad; the second not below the first. */
export type Sector = readonly [from: number, to: number]

const TURN = 2 * Math.PI

/** Whether the sectors together hold every direction of a cone. Sectors that only meet, without overlap, do. */
export function fillsCone(sectors: readonly Sector[], cone: Sector): boolean {
  const [start, end] = cone
  const parts: Sector[] = []
  for (const [from, to] of sectors) {
    // Turned so that it starts less than a turn before the cone does, and once more a turn on.
    const shift = TURN * Math.floor((from - start) / TURN) + TURN
    parts.push([from - shift, to - shift], [from - shift + TURN, to - shift + TURN])
  }
  parts.sort((a, b) => a[0] - b[0])
  let filled = start
  for (const [from, to] of parts) {
    if (from > filled) return false
    if (to > filled) filled = to
    if (filled >= end) return true
  }
  return false
}
