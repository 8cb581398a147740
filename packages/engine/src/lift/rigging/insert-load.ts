import { STATICS } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import type { LegPlace } from './leg-places.ts'
import type { LegPick, RiggedInput, RiggedPick } from './rigging-types.ts'

type OnInsert = Pick<RiggedPick, 'load' | 'pull' | 'tension' | 'shear' | 'moment'>

/**
 * Load of one insert along its leg, as tension along its axis and shear across it, kN.
 *
 * A face insert's axis stands on the face, an edge insert's lies in the panel, square to the row. Legs lie in a vertical plane along the row, or
 * go to the hook from a flat panel. An edge insert of a flat panel has the whole pull across its axis.
 *
 * Source: statics.
 * Example: 16.875 kN at 29.42° on a face insert of a flat panel 150 mm thick: 19.37 kN along the leg, 9.515 kN across, 0.7136 kN·m.
 */
export function insertLoad({
  input,
  pick,
  leg,
  vertical,
  plumb,
}: {
  readonly input: RiggedInput
  readonly pick: LegPick
  readonly leg: LegPlace
  /** kN */
  readonly vertical: number
  /** Out of plumb when upright from face inserts, degrees. */
  readonly plumb: number
}): { readonly value: OnInsert; readonly working: readonly Step[] } {
  const { hang, thickness } = input
  const { mark, kind } = pick
  const radians = (leg.angle * Math.PI) / 180
  const load = vertical / Math.cos(radians)
  const pull = vertical * Math.tan(radians)
  const at = { V: vertical, β: leg.angle }
  const working: Step[] = [
    {
      symbol: `F ${mark}`,
      formula: 'V / cos(β°)',
      given: at,
      result: load,
      unit: 'kN',
      source: STATICS,
      note: 'along the leg',
    },
    {
      symbol: `H ${mark}`,
      formula: 'V tan(β°)',
      given: at,
      result: pull,
      unit: 'kN',
      source: STATICS,
      note: 'horizontal pull',
    },
  ]
  // Angle between the vertical and the axis of the insert.
  const lean = input.angle === 90 && kind === 'face' ? 90 - plumb : input.angle
  const axis = hang === 'flat' ? (kind === 'face' ? 0 : 90) : kind === 'face' ? lean : 90 - input.angle
  const tension = axis === 90 ? 0 : vertical * Math.cos((axis * Math.PI) / 180)
  const across = axis === 90 ? vertical : vertical * Math.sin((axis * Math.PI) / 180)
  const shear = Math.hypot(across, pull)
  const note = `${kind} insert, its axis ${axis.toFixed(1)}° from the vertical`
  const split = { V: vertical, α: axis, H: pull }
  working.push(
    axis === 90
      ? {
          symbol: `N ${mark}`,
          formula: '0 V',
          given: { V: vertical },
          result: 0,
          unit: 'kN',
          source: STATICS,
          note,
        }
      : {
          symbol: `N ${mark}`,
          formula: 'V cos(α°)',
          given: { V: vertical, α: axis },
          result: tension,
          unit: 'kN',
          source: STATICS,
          note,
        },
    {
      symbol: `Q ${mark}`,
      formula: 'sqrt((V sin(α°))² + H²)',
      given: split,
      result: shear,
      unit: 'kN',
      source: STATICS,
      note: 'across the axis',
    },
  )
  const arm = hang === 'flat' && kind === 'face' ? thickness / 2 : 0
  const moment = (pull * arm) / 1000
  if (arm > 0) {
    working.push({
      symbol: `M ${mark}`,
      formula: 'H t / 2000',
      given: { H: pull, t: thickness },
      result: moment,
      unit: 'kN·m',
      source: STATICS,
      note: 'sagging between the picks, with H as compression of the panel',
    })
  }
  return { value: { load, pull, tension, shear, moment }, working }
}
