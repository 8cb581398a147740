import type { FAMILY_IDS } from '../panel/family-ids.ts'
import type { CureRules } from './cure-rules.ts'
import type { LiftRules } from './lift-rules.ts'
import type { MouldRules } from './mould-rules.ts'
import type { PourRules } from './pour-rules.ts'
import type { QualityRules } from './quality-rules.ts'
import type { SteelRules } from './steel-rules.ts'

export type FamilyId = (typeof FAMILY_IDS)[number]

/**
 * The rules of a place: a frozen choice of editions, the same shape for every family. One part a room; each part is a
 * table or a function in `codes/<family>/`, with its clause. A family is an argument everywhere, never a global.
 */
export interface CodeFamily {
  readonly id: FamilyId
  readonly name: string
  /** Standards and editions chosen, as printed on sheets. */
  readonly editions: readonly string[]
  readonly lift: LiftRules
  readonly mould: MouldRules
  readonly pour: PourRules
  readonly steel: SteelRules
  readonly cure: CureRules
  readonly quality: QualityRules
}
