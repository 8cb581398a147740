import type { CodeFamily } from '../../codes/family.ts'
import type { DrawnInsert } from '../../panel/drawing.ts'
import type { Panel } from '../../panel/panel.ts'
import { unknown, type Worked } from '../../working/worked.ts'
import type { InsertKind } from '../../yard/yard.ts'
import type { InsertAction, InsertResistance } from './stage.ts'

export interface AnchorModesInput {
  readonly panel: Panel
  readonly family: CodeFamily
  readonly kind: InsertKind
  readonly pick: DrawnInsert
  /** What pulls on it, one for each angle of the panel. */
  readonly actions: readonly InsertAction[]
}

export function anchorModes(_input: AnchorModesInput): Worked<InsertResistance> {
  return unknown('anchor rules')
}
