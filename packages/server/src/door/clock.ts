/** Server time, ms since 1970-01-01T00:00Z. */
export type Clock = () => number

export const wallClock: Clock = () => Date.now()

/** A clock that stood at `start` (ISO instant) when it was made, and runs on from there. */
export function clockFrom(start: string): Clock {
  const began = performance.now()
  const first = Date.parse(start)
  return () => first + Math.round(performance.now() - began)
}

export function instantOf(clock: Clock): string {
  return new Date(clock()).toISOString()
}
