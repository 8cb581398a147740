import type { Point } from '../../panel/point.ts'
import type { PlateModel } from '../plate/model.ts'
import { type Candidate, candidate } from '../plate/supports.ts'

/**
 * How picks give under each other: deflection at pick i under 1 kN at pick j, mm/kN, the plate held at three of its own nodes. Only what is
 * in balance among the picks has a meaning: the rigid motions are those of that holding.
 *
 * @throws InputError where a pick lies off the concrete.
 */
export function pickCompliance({
  model,
  points,
  candidates,
}: {
  readonly model: PlateModel
  readonly points: readonly Point[]
  /** In the order of the points; made where absent. */
  readonly candidates?: readonly Candidate[]
}): readonly (readonly number[])[] {
  const all = candidates ?? points.map((at) => candidate(model, at))
  return all.map(({ nodes, weights }) =>
    all.map(({ bent }) => {
      let sum = 0
      for (let i = 0; i < 18; i += 1) sum += weights[i]! * bent[nodes[(i / 6) | 0]! * 6 + (i % 6)]!
      return 1000 * sum
    }),
  )
}
