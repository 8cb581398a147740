/** One printed line of the bench: what, the value, and beside what it was held in the same run. */
export interface BenchLine {
  readonly what: string
  readonly value: string
  readonly beside: string
}

export function printLines(title: string, lines: readonly BenchLine[]): void {
  console.log(`\n${title}`)
  for (const { what, value, beside } of lines)
    console.log(`  ${what.padEnd(46)} ${value.padStart(16)}   ${beside}`)
}

/** Middle of several runs, so that one slow run does not tell. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}

/** Seconds that a call takes. */
export function seconds(call: () => unknown): number {
  const from = performance.now()
  call()
  return (performance.now() - from) / 1000
}

/** Seconds until a promise is kept. */
export async function secondsOf(call: () => Promise<unknown>): Promise<number> {
  const from = performance.now()
  await call()
  return (performance.now() - from) / 1000
}
