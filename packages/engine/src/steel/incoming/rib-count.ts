/** One rib as a finger goes along the bar: `t` thickened, `n` normal. */
export type Rib = 't' | 'n'

export interface RibCount {
  /** Normal ribs between thickened ones after the start pair: country first, then the mill's number. */
  readonly counts: readonly number[]
  /** `start`: no pair of thickened ribs yet; `counting`: inside the mark; `once`: one whole mark; `twice`: read again and alike; `differs`: read again and not alike. */
  readonly state: 'start' | 'counting' | 'once' | 'twice' | 'differs'
  /** The same counts read from the other end of the bar. */
  readonly otherWay: readonly number[]
  /** What to do next, for the person who counts. */
  readonly next: string
}

/**
 * Counts the ribs of an EN 10080 mark as they are tapped in. The mark starts at two thickened ribs that follow each other; the
 * normal ribs up to the next thickened one are the country, the further groups the mill. It repeats along the bar about every metre, so
 * that the next start pair ends it, and a second round must give the same.
 *
 * Source: EN 10080:2005, 10 (seen). The side from which it is read is not told apart here: `otherWay` gives the reading from the other end.
 */
export function countRibs(ribs: readonly Rib[]): RibCount {
  const rounds: number[][] = []
  let round: number[] | null = null
  let normal = 0
  for (const [index, rib] of ribs.entries()) {
    if (rib === 'n') {
      normal += 1
      continue
    }
    const pair = index > 0 && ribs[index - 1] === 't'
    if (pair) {
      if (round !== null) rounds.push(round)
      round = []
    } else round?.push(normal)
    normal = 0
  }
  const [first, second] = rounds
  const counts = first ?? round ?? []
  return {
    counts,
    state: stateOf(round, first, second),
    otherWay: [...counts].reverse(),
    next: nextOf(round, first, second),
  }
}

function stateOf(
  round: readonly number[] | null,
  first: readonly number[] | undefined,
  second: readonly number[] | undefined,
): RibCount['state'] {
  if (round === null) return 'start'
  if (first === undefined) return 'counting'
  if (second === undefined) return 'once'
  return alike(first, second) ? 'twice' : 'differs'
}

function nextOf(
  round: readonly number[] | null,
  first: readonly number[] | undefined,
  second: readonly number[] | undefined,
): string {
  if (round === null) return 'Look for two thickened ribs that follow each other, within 1.5 m of bar.'
  if (first === undefined) return 'Go on rib by rib until the next two thickened ribs.'
  if (first.length < 2)
    return 'One group only: the mill’s number is missing. Start again at a pair of thickened ribs.'
  if (second === undefined) return 'One round is read. Read a second round: it must give the same.'
  return alike(first, second)
    ? 'Read twice and alike.'
    : 'The two rounds differ: clean the bar and read again.'
}

function alike(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((count, index) => count === b[index])
}
