import type { PlateModel } from './model.ts'
import { solvePlate } from './model.ts'

/** Nodes kept at most; beyond it all are dropped. */
const MOST_KEPT = 64

/**
 * Bending under one unit on each of a node's six unknowns, kept while a force is dragged about: a force inside a triangle is eighteen of
 * them added up. One node is solved for at a time, so that no single step of the finger waits long.
 */
export class UnitSolutions {
  private readonly kept = new Map<number, readonly Float64Array[]>()
  private last = ''

  /** Nodal deflections under a force with these weights; null while a node of the triangle is not solved for. */
  under(
    model: PlateModel,
    nodes: readonly [number, number, number],
    weights: Float64Array,
  ): Float64Array | null {
    const place = nodes.join(' ')
    // Only a force that stays in a triangle is being dragged.
    const dragged = place === this.last
    this.last = place
    const missing = nodes.find((node) => !this.kept.has(node))
    if (missing !== undefined) {
      if (dragged) this.keep(model, missing)
      return null
    }
    const out = new Float64Array(model.unitLoad.length)
    for (let i = 0; i < 18; i += 1) {
      add(out, this.kept.get(nodes[(i / 6) | 0]!)![i % 6]!, weights[i]!)
    }
    return out
  }

  private keep(model: PlateModel, node: number): void {
    if (this.kept.size >= MOST_KEPT) this.kept.clear()
    const solutions = [0, 1, 2, 3, 4, 5].map((k) => {
      const loads = new Float64Array(model.unitLoad.length)
      loads[node * 6 + k] = 1
      return solvePlate(model, loads)
    })
    this.kept.set(node, solutions)
  }
}

function add(out: Float64Array, values: Float64Array, times: number): void {
  for (let i = 0; i < out.length; i += 1) out[i]! += times * values[i]!
}
