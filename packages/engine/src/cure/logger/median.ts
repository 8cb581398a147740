/** Middle of a list that is not empty; of an even number the upper of the two. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted[Math.floor(sorted.length / 2)]
  if (middle === undefined) throw new Error('median: found no values, expected at least one')
  return middle
}
