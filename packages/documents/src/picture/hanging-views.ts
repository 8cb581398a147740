import type { Rigged, RiggedPick } from '@castwright/engine/lift/rigging'
import { bounds, type Drawing, type Point, type Ring } from '@castwright/engine/panel'
import { roundScale } from './layout.ts'
import type { Frame } from './picture.ts'

/** One view: the front, y up from the underside of the panel; or the plan. mm. */
export interface View {
  /** Of the view, into the units of the picture. */
  readonly at: (point: Point) => Point
  /** A place of the panel in the view. */
  readonly turn: (point: Point) => Point
  /** Where an insert shows in the view. */
  readonly pick: (at: Point) => Point
  readonly panel: {
    readonly left: number
    readonly right: number
    readonly bottom: number
    readonly top: number
  }
  /** Height of the picks in the view. */
  readonly picksAt: number
  readonly hook: Point | null
  readonly beam: readonly [Point, Point] | null
  /** Upper end of a leg; null where it is not known. */
  readonly upper: (pick: RiggedPick) => Point | null
  /** Where the height is measured, units from the left. */
  readonly dimension: number
}

export interface FitInput {
  readonly drawing: Drawing
  readonly rigged: Rigged | null
  readonly hang: 'flat' | 'row'
  readonly centre: Point
  readonly frame: Frame
  readonly text: number
  /** Space kept over the views, units. */
  readonly above: number
}

export interface Fitted {
  readonly front: View
  /** Null for a panel that hangs upright. */
  readonly plan: View | null
  readonly width: number
  readonly height: number
  readonly scale: number
  readonly ratio: number | null
}

/** Front and plan one under the other at one scale. */
export function fitViews({ drawing, rigged, hang, centre, frame, text, above }: FitInput): Fitted {
  const outline = drawing.outline as unknown as Ring
  const turn = hang === 'flat' ? (place: Point): Point => place : upright(rigged, centre)
  const box = bounds(outline.map(turn))
  const thick = drawing.thickness
  const panel =
    hang === 'flat'
      ? { left: box.left, right: box.right, bottom: 0, top: thick }
      : { left: box.left, right: box.right, bottom: box.bottom, top: box.top }
  const picksAt =
    hang === 'flat' || rigged === null
      ? panel.top
      : (rigged.picks.map(({ at }) => turn(at)[1])[0] ?? panel.top)
  const rig = rigged === null ? null : rigOf(rigged, turn, hang)
  const high = rig === null ? panel.top : Math.max(panel.top, picksAt + (rig.hookHigh ?? rig.legHigh ?? 0))
  const left = Math.min(panel.left, rig?.left ?? panel.left)
  const right = Math.max(panel.right, rig?.right ?? panel.right)
  const flat = hang === 'flat'
  const margins = {
    left: text * 1.2,
    right: text * 3,
    top: text * 2.2,
    bottom: text * 1.6,
    between: flat ? text * 2 : 0,
  }
  const rows = high - panel.bottom + (flat ? box.top - box.bottom : 0)
  const { scale, ratio } = roundScale(
    Math.min(
      Math.max(frame.width - margins.left - margins.right, text) / (right - left),
      Math.max(frame.height - above - margins.top - margins.bottom - margins.between, text) / rows,
    ),
    frame,
  )
  const spare = Math.max(0, frame.width - margins.left - margins.right - (right - left) * scale) / 2
  const x0 = margins.left + spare - left * scale
  const y0 = above + margins.top + high * scale
  const frontAt = ([x, y]: Point): Point => [x0 + x * scale, y0 - y * scale]
  const dimension = x0 + right * scale + text * 1.6
  const front: View = {
    at: frontAt,
    turn,
    pick: (at) => [turn(at)[0], flat ? panel.top : turn(at)[1]],
    panel,
    picksAt,
    hook: rig === null || rig.hookHigh === null ? null : [rig.hookX, picksAt + rig.hookHigh],
    beam:
      rig === null || rig.beam === null || rig.legHigh === null
        ? null
        : [
            [rig.beam[0][0], picksAt + rig.legHigh],
            [rig.beam[1][0], picksAt + rig.legHigh],
          ],
    upper: (pick) => {
      const end = rig?.upper(pick)
      return end === undefined || rig?.legHigh === null || rig === null
        ? null
        : [end[0], picksAt + rig.legHigh]
    },
    dimension,
  }
  const underFront = y0 - panel.bottom * scale
  const yPlan = underFront + margins.between + box.top * scale
  const plan: View | null = flat
    ? {
        at: ([x, y]) => [x0 + x * scale, yPlan - y * scale],
        turn,
        pick: (at) => at,
        panel: { left: box.left, right: box.right, bottom: box.bottom, top: box.top },
        picksAt: 0,
        hook: rig === null ? null : rig.hookPlan,
        beam: rig?.beam ?? null,
        upper: (pick) => rig?.upper(pick) ?? null,
        dimension,
      }
    : null
  const height = (flat ? yPlan - box.bottom * scale : underFront) + margins.bottom
  return { front, plan, width: frame.width, height, scale, ratio }
}

interface Rig {
  readonly hookX: number
  readonly hookPlan: Point
  /** Above the picks, mm; null where not known. */
  readonly hookHigh: number | null
  readonly legHigh: number | null
  readonly beam: readonly [Point, Point] | null
  readonly upper: (pick: RiggedPick) => Point
  readonly left: number
  readonly right: number
}

function rigOf(rigged: Rigged, turn: (place: Point) => Point, hang: 'flat' | 'row'): Rig {
  const picks = rigged.picks.map(({ at }) => turn(at))
  const hookPlan = turn(rigged.hook)
  const spread = (axis: 0 | 1): number =>
    Math.max(...picks.map((pick) => pick[axis])) - Math.min(...picks.map((pick) => pick[axis]))
  const along: Point = hang === 'row' || spread(0) >= spread(1) ? [1, 0] : [0, 1]
  const half = (rigged.beam?.length ?? 0) / 2
  const upper = (pick: RiggedPick): Point => {
    const [x, y] = turn(pick.at)
    const s = (x - hookPlan[0]) * along[0] + (y - hookPlan[1]) * along[1]
    const end = rigged.beam === null ? 0 : Math.sign(s) * half
    return [hookPlan[0] + end * along[0], hookPlan[1] + end * along[1]]
  }
  const heights = rigged.picks.map(({ length, reach }) => Math.sqrt(Math.max(0, length ** 2 - reach ** 2)))
  const legHigh = Math.max(...heights)
  const beam: [Point, Point] | null =
    rigged.beam === null
      ? null
      : [
          [hookPlan[0] - half * along[0], hookPlan[1] - half * along[1]],
          [hookPlan[0] + half * along[0], hookPlan[1] + half * along[1]],
        ]
  const xs = [hookPlan[0], ...(beam ?? []).map(([x]) => x)]
  return {
    hookX: hookPlan[0],
    hookPlan,
    hookHigh: rigged.hookHeight ?? null,
    legHigh: Number.isFinite(legHigh) ? legHigh : null,
    beam,
    upper,
    left: Math.min(...xs),
    right: Math.max(...xs),
  }
}

/** Turns the panel so that the line of its picks is level and the panel hangs below. */
function upright(rigged: Rigged | null, centre: Point): (place: Point) => Point {
  const picks = rigged?.picks.map(({ at }) => at) ?? []
  const [first, last] = [picks[0], picks.at(-1)]
  if (first === undefined || last === undefined) return (place) => place
  const length = Math.hypot(last[0] - first[0], last[1] - first[1])
  let [ux, uy] = length > 0 ? [(last[0] - first[0]) / length, (last[1] - first[1]) / length] : [1, 0]
  // The centre of gravity hangs below the line.
  if (ux * (centre[1] - first[1]) - uy * (centre[0] - first[0]) > 0) [ux, uy] = [-ux, -uy]
  return ([x, y]) => [x * ux + y * uy, -x * uy + y * ux]
}
