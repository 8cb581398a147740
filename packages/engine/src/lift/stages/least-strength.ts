import type { Worked } from '../../working/worked.ts'

/** Strongest concrete that the search looks at, MPa: beyond it nobody lifts a panel on its first day. */
export const STRONGEST = 100
/** Steps of the search before it halves, MPa. */
const STEP = 0.5

export interface LeastStrength {
  /** MPa; 0 where there is no demand; null where not known, or where no strength is enough. */
  readonly strength: number | null
  /** True where the limit is known and no strength up to `STRONGEST` reaches the demand. */
  readonly never: boolean
  readonly gaps: readonly string[]
}

/**
 * Least strength at which a limit that grows with the strength reaches a demand. The limit may be known over a part of the strengths
 * only: a maker's table begins at its least strength, a code's formula ends somewhere.
 */
export function leastStrength(demand: number, limitAt: (strength: number) => Worked<number>): LeastStrength {
  if (!Number.isFinite(demand)) return { strength: null, never: false, gaps: ['demand: a finite number'] }
  if (demand <= 0) return { strength: 0, never: false, gaps: [] }
  const holds = (strength: number): boolean => {
    const found = limitAt(strength)
    return found.known && found.value >= demand
  }
  for (let at = STEP; at <= STRONGEST; at += STEP) {
    if (holds(at)) return { strength: firstThat(at - STEP, at, holds), never: false, gaps: [] }
  }
  const tried = [10, 20, 30, 40].map(limitAt)
  if (tried.some(({ known }) => known)) {
    return { strength: null, never: true, gaps: [`no strength up to ${STRONGEST} MPa is enough`] }
  }
  return {
    strength: null,
    never: false,
    gaps: tried.flatMap((found) => (found.known ? [] : found.gaps)).slice(0, 1),
  }
}

/** Least value above `from` at which something holds that holds at `to`; on the side that holds. */
function firstThat(from: number, to: number, holds: (value: number) => boolean): number {
  let [low, high] = [from, to]
  for (let i = 0; i < 50 && high - low > 1e-12 * high; i += 1) {
    const middle = (low + high) / 2
    if (holds(middle)) high = middle
    else low = middle
  }
  return high
}
