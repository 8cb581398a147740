const ENLARGED = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000] as const

/** How many times larger a deviation is drawn so that it takes no more than so much room; both mm. A round number, stated beside the picture. */
export function timesLarger(most: number, room: number): number {
  if (!(most > 0)) return 1
  return ENLARGED.filter((factor) => factor * most <= room).at(-1) ?? 1
}

/** Example: `drawn 50 times larger`. */
export function timesText(times: number): string {
  return times === 1 ? 'drawn to scale' : `drawn ${times} times larger`
}
