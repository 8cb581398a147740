import type { Drawing } from '../panel/drawing.ts'
import type { Mix, Yard } from './yard.ts'

/**
 * The yard's mix for a drawing: of those strong enough, and of no coarser aggregate where both say it, the weakest; the
 * first listed of equals. Null where the yard lists none that fits.
 */
export function mixFor({
  yard,
  drawing,
}: {
  readonly yard: Yard | null
  readonly drawing: Drawing
}): Mix | null {
  const { strength, aggregate } = drawing.concrete
  const fit = (yard?.mixes ?? []).filter(
    (mix) =>
      mix.strength >= strength &&
      (aggregate === undefined || mix.aggregate === undefined || mix.aggregate <= aggregate),
  )
  return fit.reduce<Mix | null>(
    (best, mix) => (best === null || mix.strength < best.strength ? mix : best),
    null,
  )
}
