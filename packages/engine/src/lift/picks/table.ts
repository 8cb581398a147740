import type { Influence, Response } from './influence.ts'

/** How many readings above a bound are remembered. */
const REMEMBERED = 6

/** Places beside each other: what each does at each, made when first asked for. */
export class Table {
  readonly influence: Influence
  readonly responses: Response[]
  /** Four each; not a number where not made yet. */
  readonly #pairs: Float64Array
  readonly #dead: Float64Array[] = []
  readonly #stress: number
  readonly #sum = new Float64Array(4)
  /** Readings that were last found above a bound: most sets that fail do so at one of these. */
  readonly #worst: number[] = []

  constructor(influence: Influence, responses: readonly Response[]) {
    this.influence = influence
    this.responses = [...responses]
    this.#pairs = new Float64Array(4 * responses.length ** 2).fill(Number.NaN)
    this.#stress = 6 / (4 * influence.radius * influence.radius)
    for (const response of responses) {
      const out = new Float64Array(4)
      influence.deadAt(out, response)
      this.#dead.push(out)
    }
  }

  /** Where `pairs` holds w and the disc's mx, my, mxy at place i under 1 N at place j. */
  pair(i: number, j: number): number {
    const at = 4 * (i * this.responses.length + j)
    if (Number.isNaN(this.#pairs[at])) {
      this.influence.pairAt(this.#sum, this.responses[i]!, this.responses[j]!)
      this.#pairs.set(this.#sum, at)
    }
    return at
  }

  /** mm per N */
  deflection(i: number, j: number): number {
    return this.#pairs[this.pair(i, j)]!
  }

  dead(i: number): Float64Array {
    return this.#dead[i]!
  }

  /** Stress of the disc at member `k` of a set under its forces, MPa. */
  discStress(set: readonly number[], forces: Float64Array, k: number): number {
    const dead = this.#dead[set[k]!]!
    let [mx, my, mxy] = [dead[1]!, dead[2]!, dead[3]!]
    for (let j = 0; j < set.length; j += 1) {
      const at = this.pair(set[k]!, set[j]!)
      const force = forces[j]!
      mx -= force * this.#pairs[at + 1]!
      my -= force * this.#pairs[at + 2]!
      mxy -= force * this.#pairs[at + 3]!
    }
    return this.#stress * tension(mx, my, mxy)
  }

  /** Largest stress of discs and readings, MPa; as soon as it passes `bound` any value above that. */
  peak(set: readonly number[], forces: Float64Array, bound: number): number {
    let most = 0
    for (let k = 0; k < set.length; k += 1) {
      most = Math.max(most, this.discStress(set, forces, k))
      if (most > bound) return most
    }
    const { readings } = this.influence
    const allowed = bound / this.#stress
    for (const i of this.#worst) {
      const found = this.#tensionAt(set, forces, i)
      if (found > allowed && !this.inDisc(set, i)) return found * this.#stress
    }
    let value = most / this.#stress
    for (let i = 0; i < readings.length; i += 1) {
      const found = this.#tensionAt(set, forces, i)
      if (!(found > value) || this.inDisc(set, i)) continue
      value = found
      if (found > allowed) {
        this.#worst.unshift(i)
        if (this.#worst.length > REMEMBERED) this.#worst.pop()
        break
      }
    }
    return value * this.#stress
  }

  /** Stress at every reading, then at the disc of each member, MPa; 0 for a reading inside a disc. */
  stresses(set: readonly number[], forces: Float64Array): Float64Array {
    const all = Array.from({ length: this.influence.readings.length + set.length }, (_, i) => i)
    return this.stressesAt(all, set, forces)
  }

  /** The same, of some. */
  stressesAt(wanted: readonly number[], set: readonly number[], forces: Float64Array): Float64Array {
    const { length } = this.influence.readings
    return Float64Array.from(wanted, (i) => {
      if (i >= length) return this.discStress(set, forces, i - length)
      return this.inDisc(set, i) ? 0 : this.#stress * this.#tensionAt(set, forces, i)
    })
  }

  #tensionAt(set: readonly number[], forces: Float64Array, i: number): number {
    const { dead } = this.influence
    let [mx, my, mxy] = [dead[3 * i]!, dead[3 * i + 1]!, dead[3 * i + 2]!]
    for (let j = 0; j < set.length; j += 1) {
      const { moments } = this.responses[set[j]!]!
      const force = forces[j]!
      mx -= force * moments[3 * i]!
      my -= force * moments[3 * i + 1]!
      mxy -= force * moments[3 * i + 2]!
    }
    return tension(mx, my, mxy)
  }

  /** Whether a reading lies in the disc of a member or of a corner, whose average stands for it. */
  inDisc(set: readonly number[], i: number): boolean {
    const { readings, radius, averaged } = this.influence
    if (averaged[i]) return true
    const [x, y] = readings[i]!
    for (const k of set) {
      const { at } = this.responses[k]!
      if ((at[0] - x) ** 2 + (at[1] - y) ** 2 < radius * radius) return true
    }
    return false
  }
}

/** Larger of the two principal tensions, N·mm/mm. */
function tension(mx: number, my: number, mxy: number): number {
  const middle = (mx + my) / 2
  const half = (mx - my) / 2
  return Math.abs(middle) + Math.sqrt(half * half + mxy * mxy)
}
