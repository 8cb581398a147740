import type { Panel } from '../panel/panel.ts'
import type { Asked } from '../working/asked.ts'
import type { Check } from '../working/check.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { type HeldDuct, type HeldVoid, heldDuct, heldVoid, strapGap } from './held-down.ts'
import { heldAtPlacing, heldAtSet } from './hold-down-asked.ts'
import { holdDownCheck, voidCoverChecks } from './hold-down-checks.ts'

export interface HoldDown {
  readonly voids: readonly HeldVoid[]
  readonly ducts: readonly HeldDuct[]
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

/**
 * Void formers and ducts of one panel: uplift, straps and ties, the concrete round them, and what is looked at. Empty for a full panel. `weight`: of fresh concrete
 * where the drawing gives it as heavier than usual, kN/m³.
 */
export function planHoldDown(panel: Panel, yard: Yard | null, weight: number | undefined): HoldDown {
  const strap = yard?.strap ?? null
  const { thickness } = panel.drawing
  const voids = (panel.drawing.voids ?? []).map((former) => heldVoid({ former, thickness, strap, weight }))
  const ducts = (panel.drawing.ducts ?? []).map((duct) => heldDuct({ duct, strap, weight }))
  const found = [...voids, ...ducts]
  const heldVoids = voids.flatMap((one) => (one.known ? [one.value] : []))
  const heldDucts = ducts.flatMap((one) => (one.known ? [one.value] : []))
  const gap = strapGap(strap)
  const floating = [...heldVoids, ...heldDucts].some(({ hold }) => hold > 0)
  return {
    voids: heldVoids,
    ducts: heldDucts,
    checks: [
      ...voids.flatMap((one) =>
        one.known ? holdDownCheck(one.value, { kind: 'void', strap, working: one.working }) : [],
      ),
      ...ducts.flatMap((one) =>
        one.known ? holdDownCheck(one.value, { kind: 'duct', strap, working: one.working }) : [],
      ),
      ...voidCoverChecks(panel),
    ],
    toRecord: [...heldAtSet(heldVoids, heldDucts, strap), ...heldAtPlacing(heldVoids, heldDucts)],
    working: found.flatMap((one) => one.working ?? []),
    assumed: found.flatMap((one) => one.assumed ?? []),
    unknown: [
      ...found.flatMap((one) => (one.known ? [] : one.gaps)),
      ...(floating && gap !== null ? [gap] : []),
    ],
  }
}
