import type { BarLine } from '../mat-lines.ts'

export interface Section {
  /** Sum of the bars' own second moments of area where fewest cross the section, mm⁴. */
  readonly inertia: number
  /** Thickest bar, mm. */
  readonly diameter: number
}

/**
 * Weakest section of parallel bars between two places along them: each bar bends for itself, laps count as one bar. Null where a
 * section has no bar at all.
 */
export function weakestSection(
  lines: readonly (BarLine & { readonly diameter: number })[],
  low: number,
  high: number,
): Section | null {
  const turns: { readonly at: number; readonly by: number }[] = []
  let [start, thickest] = [0, 0]
  for (const { from, to, diameter } of lines) {
    if (to < low || from > high) continue
    const own = (Math.PI * diameter ** 4) / 64
    thickest = Math.max(thickest, diameter)
    if (from <= low) start += own
    else turns.push({ at: from, by: own })
    if (to < high) turns.push({ at: to, by: -own })
  }
  // Where one bar ends and another starts at the same place nothing holds across: ends come first.
  turns.sort((a, b) => a.at - b.at || a.by - b.by)
  let [now, least] = [start, start]
  for (const { by } of turns) {
    now += by
    least = Math.min(least, now)
  }
  // A rounding of sums is no bar.
  const thinnest = lines.reduce((thin, { diameter }) => Math.min(thin, diameter), Number.POSITIVE_INFINITY)
  return least > (Math.PI * thinnest ** 4) / 128 ? { inertia: least, diameter: thickest } : null
}
