import { au } from './au/index.ts'
import { eu } from './eu/index.ts'
import type { CodeFamily, FamilyId } from './family.ts'
import { nz } from './nz/index.ts'
import { us } from './us/index.ts'

export { ACTS, type Act, type Answer, MADE_BY, type MadeBy } from './bar-acts.ts'
export type { HookTailInput } from './bend-tail.ts'
export type { CodeFamily, FamilyId } from './family.ts'
export type { LiftFactorInput, LiftLimit, LiftRules, LoadCaseId, MouldFace } from './lift-rules.ts'
export type {
  BarRole,
  BarSize,
  BendRuleInput,
  Candidate,
  Identified,
  LapInput,
  LapLength,
  SteelGrade,
  SteelRules,
  Tolerance,
} from './steel-rules.ts'

/** The code families by id. */
export const FAMILIES: Readonly<Record<FamilyId, CodeFamily>> = { nz, au, eu, us }

export function codeFamily(id: FamilyId): CodeFamily {
  return FAMILIES[id]
}
