import type { CodeFamily } from '../../codes/family.ts'
import type { DrawnInsert } from '../../panel/drawing.ts'
import type { Panel } from '../../panel/panel.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { InsertKind } from '../../yard/yard.ts'
import { handlingModes } from '../anchor/handling-modes.ts'
import type { InsertAction, InsertMode, InsertResistance } from './stage.ts'

export interface AnchorModesInput {
  readonly panel: Panel
  readonly family: CodeFamily
  readonly kind: InsertKind
  readonly pick: DrawnInsert
  /** What pulls on it, one for each angle of the panel. */
  readonly actions: readonly InsertAction[]
  readonly cracked: boolean
}

/** Pull and push of 1 kN each: what a mode holds of them grows with them, so that one look at the concrete serves every stage. */
const UNIT: readonly InsertAction[] = [{ angle: 0, load: 1, tension: 1, shear: 1 }]
const PULL: readonly InsertAction[] = [{ angle: 0, load: 1, tension: 1, shear: 0 }]

/**
 * Nominal resistances of one insert by the family's anchor rules, each with the greatest part of the working load that it holds over all angles. Bars of
 * its kind that are developed beyond what would break away carry instead of the concrete, never with it: tail bars for the cone, a tie for the edge.
 *
 * Shear is taken towards the worst edge, whichever way the leg pulls.
 *
 * Unknown where the family has no anchor rules, where the yard gives no sizes of the kind, and where the rules end.
 */
export function anchorModes(input: AnchorModesInput): Worked<InsertResistance> {
  const { actions, kind } = input
  const tension = Math.max(0, ...actions.map((action) => action.tension))
  const shear = Math.max(0, ...actions.map((action) => Math.abs(action.shear)))
  // Without shear nobody needs to know the shank.
  const found = ofConcrete(input, shear > 1e-9 * tension ? UNIT : PULL)
  if (!found.known) return found
  const modes = found.value.modes.map((mode): InsertMode => {
    const demand = mode.demand * (mode.mode.endsWith('shear') ? shear : tension)
    if (kind.tail !== undefined && mode.mode === 'breakout, tension') {
      return { mode: 'tail bars, tension', nominal: kind.tail, demand, law: 'constant' }
    }
    if (kind.tie !== undefined && mode.mode === 'edge, shear') {
      return { mode: 'tie round it, shear', nominal: kind.tie, demand, law: 'constant' }
    }
    return { ...mode, demand }
  })
  return known({ ...found.value, modes }, found.working)
}

/** Inserts whose concrete was looked at, the oldest goes first. */
const KEPT = 4000
const kept = new Map<string, Worked<InsertResistance>>()

function ofConcrete(
  { panel, family, kind, pick, cracked }: AnchorModesInput,
  actions: readonly InsertAction[],
): Worked<InsertResistance> {
  const rules = family.lift.anchor
  if (!rules)
    return unknown(
      `anchor rules: the family ${family.id} has none; its inserts are held against the maker’s rating`,
    )
  // Void formers and ducts are not asked here: one near enough to count makes the insert not known.
  const { outline, openings, thickness, inserts = [] } = panel.drawing
  const key = JSON.stringify([family.id, kind, pick, cracked, actions, outline, openings, thickness, inserts])
  const known = kept.get(key)
  if (known !== undefined) return known
  const found = handlingModes({
    rules,
    region: panel.region,
    thickness,
    mark: pick.mark,
    at: pick.at,
    others: inserts.filter(({ mark }) => mark !== pick.mark).map(({ at }) => at),
    kind,
    cracked,
    actions,
  })
  kept.set(key, found)
  for (const oldest of kept.keys()) {
    if (kept.size <= KEPT) break
    kept.delete(oldest)
  }
  return found
}
