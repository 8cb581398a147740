import type { Table } from './table.ts'

/** How the legs share: by the bending of the panel on rigid points, or alike by slings that run. */
export type Sharing = 'rigid' | 'equalised'

/**
 * Upward force of each place of a set, N; null where the set does not hold the plate. Rigid: no place sinks beside a plane. Equalised: as
 * equal as balance lets them be. Two: by balance alone.
 */
export function forcesOf(table: Table, set: readonly number[], sharing: Sharing): Float64Array | null {
  const n = set.length
  if (n === 2 || sharing === 'equalised') return nearestEqual(table, set)
  const size = n + 3
  const width = size + 1
  const a = new Float64Array(size * width)
  let scale = 0
  for (let i = 0; i < n; i += 1) scale = Math.max(scale, Math.abs(table.deflection(set[i]!, set[i]!)))
  if (!(scale > 0)) return null
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      a[i * width + j] = table.deflection(set[i]!, set[j]!) / scale
    }
    const { motion } = table.responses[set[i]!]!
    for (let m = 0; m < 3; m += 1) {
      a[i * width + n + m] = -motion[m]!
      a[(n + m) * width + i] = motion[m]!
    }
    a[i * width + size] = table.dead(set[i]!)[0]! / scale
  }
  for (let m = 0; m < 3; m += 1) a[(n + m) * width + size] = table.influence.work[m]!
  if (!eliminate(a, size)) return null
  const forces = new Float64Array(n)
  for (let i = 0; i < n; i += 1) forces[i] = a[i * width + size]!
  return forces
}

/** Gauss–Jordan with row exchange on n rows of n + 1, in place; false where singular. */
function eliminate(a: Float64Array, n: number): boolean {
  const width = n + 1
  for (let k = 0; k < n; k += 1) {
    let pivot = k
    for (let i = k + 1; i < n; i += 1) {
      if (Math.abs(a[i * width + k]!) > Math.abs(a[pivot * width + k]!)) pivot = i
    }
    const most = a[pivot * width + k]!
    if (!(Math.abs(most) > 1e-12)) return false
    if (pivot !== k) {
      for (let j = k; j < width; j += 1) {
        const held = a[k * width + j]!
        a[k * width + j] = a[pivot * width + j]!
        a[pivot * width + j] = held
      }
    }
    for (let j = k; j < width; j += 1) a[k * width + j]! /= most
    for (let i = 0; i < n; i += 1) {
      const factor = a[i * width + k]!
      if (i === k || factor === 0) continue
      for (let j = k; j < width; j += 1) a[i * width + j]! -= factor * a[k * width + j]!
    }
  }
  return true
}

/** Forces nearest to equal that balance the load: r = W / n + Φ λ. */
function nearestEqual(table: Table, set: readonly number[]): Float64Array | null {
  const n = set.length
  const { work } = table.influence
  const equal = work[0] / n
  const motions = set.map((i) => table.responses[i]!.motion)
  const rest = work.map((value, m) => value - equal * motions.reduce((sum, motion) => sum + motion[m]!, 0))
  if (n === 2) {
    // On a line through the centre of gravity: shares by distance.
    const [p, q] = [motions[0]!, motions[1]!]
    const [dx, dy] = [q[1]! - p[1]!, q[2]! - p[2]!]
    const square = dx * dx + dy * dy
    if (!(square > 0)) return null
    const second = ((work[1] - work[0] * p[1]!) * dx + (work[2] - work[0] * p[2]!) * dy) / square
    return Float64Array.from([work[0] - second, second])
  }
  const a = new Float64Array(12)
  for (let m = 0; m < 3; m += 1) {
    for (let k = 0; k < 3; k += 1)
      a[m * 4 + k] = motions.reduce((sum, motion) => sum + motion[m]! * motion[k]!, 0)
    a[m * 4 + 3] = rest[m]!
  }
  if (!eliminate(a, 3)) return null
  return Float64Array.from(
    motions,
    (motion) => equal + motion[0] * a[3]! + motion[1] * a[7]! + motion[2] * a[11]!,
  )
}
