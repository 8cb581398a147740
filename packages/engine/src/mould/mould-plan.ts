import type { Layer, Point } from '../panel/index.ts'
import type { Asked, Assumed, Check, Step } from '../working/index.ts'
import type { AgentChoice } from './agent-choice.ts'
import type { HeldDuct, HeldVoid } from './held-down.ts'
import type { PropSide } from './props.ts'

export interface ChairGrid {
  readonly layer: Layer
  /** Height of the chair, mm: cover, or up to the underside of the top mat. */
  readonly height: number
  /** Largest spacing, mm. */
  readonly spacing: number
  readonly at: readonly Point[]
}

/** Release agent for one kind of face. */
export interface FaceAgent extends AgentChoice {
  /** L; null where the rate is not known. */
  readonly litres: number | null
  /** Mean film, µm. */
  readonly film: number | null
}

export interface MouldPlate {
  readonly held: 'foot' | 'both'
  /** mm, of the plate */
  readonly thickness: number
  /** Largest bow, mm. */
  readonly bow: number
  /** Largest bending stress, MPa. */
  readonly stress: number
}

export interface MouldPlan {
  /** Largest side pressure, kPa. */
  readonly pressure: number | null
  /** Weight density of the fresh concrete that it is computed with, kN/m³. */
  readonly weight: number
  /** Line load on the side forms, kN/m, at a third of the depth. */
  readonly thrust: number | null
  /** Overturning of the side forms about the bed, kN·m/m. */
  readonly overturning: number | null
  /** What a brace at the top of the concrete holds of it, kN/m. */
  readonly brace: number | null
  /** Mark of the yard's form that was chosen; null where the yard has none that fits. */
  readonly form: string | null
  /** Spacing of props along the side forms, mm. */
  readonly propSpacing: number | null
  /** Bow of the side form between props at that spacing, mm. */
  readonly bow: number | null
  /** The upright plate of the form; null where the yard does not say it. */
  readonly plate: MouldPlate | null
  /** Props side by side, in the order and by the numbers of the drawing's sides. */
  readonly sides: readonly PropSide[]
  /** Where props stand: on the outline, mm. */
  readonly props: readonly Point[]
  readonly chairs: readonly ChairGrid[]
  /** Void formers and ducts, with what holds them down. */
  readonly voids: readonly HeldVoid[]
  readonly ducts: readonly HeldDuct[]
  /** Release agent, litres, for the thirstiest face of the yard's beds; null where a rate is not known. */
  readonly releaseAgent: number | null
  /** The same for each kind of face that the yard's beds have. */
  readonly agents: readonly FaceAgent[]
  /** Mould face and side forms to oil, m². */
  readonly oiledArea: number
  readonly checks: readonly Check[]
  readonly toRecord: readonly Asked[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}
