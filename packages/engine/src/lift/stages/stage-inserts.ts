import type { CodeFamily } from '../../codes/family.ts'
import type { Panel } from '../../panel/panel.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import type { Yard } from '../../yard/yard.ts'
import type { Arrangement } from './arrangement.ts'
import type { Bent } from './bending.ts'
import type { StageInsert } from './stage.ts'

export interface StageInsertsInput {
  readonly arrangement: Arrangement
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Bending under factor 1; null for what hangs, or where it is not known. */
  readonly bent: Omit<Bent, 'field'> | null
}

export function stageInserts(_input: StageInsertsInput): StageInsert[] {
  return []
}
