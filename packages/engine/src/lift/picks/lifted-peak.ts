import type { Point } from '../../panel/point.ts'
import { PlateField } from '../plate/field.ts'
import { type LiftedPlateInput, liftedPlate, plateOf } from '../plate/lifted-plate.ts'
import { assertBalance } from '../plate/model.ts'
import { type PlatePeak, platePeak, reentrantCorners } from '../plate/peak.ts'
import { candidate, loadCase } from '../plate/supports.ts'
import type { Sharing } from './forces.ts'

/** Peak and loads of a panel on given places, on a mesh made fine around them. */
export interface LiftedPeak {
  readonly peak: PlatePeak
  /** N, upward on the panel, in the order of the places. */
  readonly loads: readonly number[]
  readonly nodes: number
}

/** @throws InputError where the places do not hold the panel. */
export function liftedPeak(
  input: Omit<LiftedPlateInput, 'supports' | 'forces' | 'estimate'> & {
    readonly places: readonly Point[]
    readonly sharing: Sharing
    readonly centre: Point
  },
): LiftedPeak {
  const { places, sharing, centre } = input
  if (places.length === 2) return hangingPeak(input, centre, places as readonly [Point, Point])
  const { peak, reactions, model } = liftedPlate({
    ...input,
    supports: places.map((at) => (sharing === 'equalised' ? { at, equalised: 'all' } : { at })),
  })
  return { peak, loads: reactions, nodes: model.mesh.x.length }
}

/** Two places: the panel hangs free about their line, which runs through the centre of gravity; loads by balance alone. */
function hangingPeak(
  input: Omit<LiftedPlateInput, 'supports'>,
  [cx, cy]: Point,
  [first, second]: readonly [Point, Point],
): LiftedPeak {
  const model = plateOf({ ...input, supports: [first, second] })
  const load = loadCase(model, input)
  const weight =
    model.unitLoad.reduce((sum, value, i) => (i % 6 === 0 ? sum + value : sum), 0) * input.pressure
  const [dx, dy] = [second[0] - first[0], second[1] - first[1]]
  const share = ((cx - first[0]) * dx + (cy - first[1]) * dy) / (dx * dx + dy * dy)
  const loads = [weight * (1 - share), weight * share]
  const u = load.bent.slice()
  const left = load.loads.slice()
  for (const [k, at] of [first, second].entries()) {
    const one = candidate(model, at)
    for (let i = 0; i < u.length; i += 1) u[i]! -= loads[k]! * one.bent[i]!
    for (let i = 0; i < 18; i += 1)
      left[one.nodes[(i / 6) | 0]! * 6 + (i % 6)]! -= loads[k]! * one.weights[i]!
  }
  assertBalance(model, u, left)
  const field = new PlateField(model, u)
  const { peak } = platePeak({ field, supports: [first, second], corners: reentrantCorners(input.piece) })
  return { peak, loads, nodes: model.mesh.x.length }
}
