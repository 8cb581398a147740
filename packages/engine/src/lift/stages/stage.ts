import type { Point } from '../../panel/point.ts'
import type { StepId } from '../../steps/steps.ts'
import type { Source } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import type { Rigged } from '../rigging/rigging-types.ts'

/**
 * Stages of handling, in the order of a panel's life: off the mould flat, turned up about an edge, hanging upright, stored,
 * on the trailer, turned and set at the site.
 */
export const LIFT_STAGE_IDS = ['release', 'turn', 'hang', 'store', 'travel', 'erect'] as const
export type LiftStageId = (typeof LIFT_STAGE_IDS)[number]

/** What a tension was found as; a limit belongs to the way its stress is found. */
export type PeakKind =
  /** Hogging at a pick: plate moment averaged over the handbook strip. */
  | 'pick'
  /** The plate's own value, free edges at theirs. */
  | 'plate'
  /** Averaged over the concrete of a disc of one thickness at a re-entrant corner. */
  | 'corner'
  /** Tension along a panel that hangs: force over the section that is there, with the moment of an insert off the middle. */
  | 'section'

export interface StagePeak {
  readonly of: PeakKind
  /** mm */
  readonly at: Point
  /** Mark of the insert for `pick`, else empty. */
  readonly mark: string
  /** Largest principal tension on either face, the stage's factor in it, MPa. */
  readonly stress: number
  /** Which face is in tension. */
  readonly face: 'mould' | 'top'
  /** Moments behind it, kN·m/m, factor in them; sagging positive. */
  readonly mx: number
  readonly my: number
  readonly mxy: number
  /** Width that the moment is averaged over, mm; 0: not averaged. */
  readonly width: number
}

/** Bars across a re-entrant corner that carry its tension with the concrete cracked. */
export interface CornerBars {
  readonly at: Point
  /** Steel per width across the tension, mm²/m. */
  readonly area: number
  /** Bar stress, MPa; null where no drawn bar crosses. */
  readonly stress: number | null
  readonly limit: number
  readonly source: Source
}

export interface StageSupport {
  /** Mark of an insert; else words such as `timber 1`. */
  readonly mark: string
  readonly kind: 'insert' | 'timber' | 'edge'
  /** A point, or the two ends of a line. */
  readonly at: readonly [Point] | readonly [Point, Point]
  /** Vertical load with the stage's bending factor, kN; null where not known. */
  readonly load: number | null
}

/** What pulls on an insert, kN: along its leg, along its own axis and across it. */
export interface InsertAction {
  /** Panel from level, degrees. */
  readonly angle: number
  readonly load: number
  readonly tension: number
  readonly shear: number
}

/** How a mode grows with the strength of the concrete. */
export type ModeLaw = 'root' | 'linear' | 'constant'

export interface InsertMode {
  readonly mode: string
  /** kN, at the strength `at`. */
  readonly nominal: number
  /** Part of the working load that it holds, kN. */
  readonly demand: number
  readonly law: ModeLaw
}

export interface InsertResistance {
  /** Strength that the nominal values are for, MPa. */
  readonly at: number
  readonly cracked: boolean
  readonly modes: readonly InsertMode[]
}

/** One insert at one stage: the working load and what it may be. */
export interface StageInsert {
  readonly mark: string
  readonly at: Point
  /** Share by the bending of the panel (rigid points or equalised), the stage's factor for inserts in it, kN, along the sling's vertical. */
  readonly share: number | null
  /** Greatest working load: worst case of the legs that count, uneven legs, sling angle in it, kN, along the leg. */
  readonly load: number | null
  /** Its part along the insert's axis and across it, kN. */
  readonly tension: number | null
  readonly shear: number | null
  /** Which case the load is from, in words. Example: `two of four legs count`. */
  readonly from: string
  /** Maker's rating as the yard lists it; null where it lists none. */
  readonly rating: {
    readonly mark: string
    readonly rated: number
    readonly ratedStrength: number
    readonly leastStrength: number
  } | null
  /** Nominal resistances by the family's anchor rules; null where the family has none or the kind's sizes are not entered. */
  readonly resistance: InsertResistance | null
  /** Everything that keeps the load or its limit from being known. */
  readonly gaps: readonly string[]
  readonly working: readonly Step[]
}

/** The panel on its rigging, its factor for inserts in the loads; of what is turned, at the angle of the greatest leg load. */
export interface StageHung {
  /** Panel from level, degrees. */
  readonly angle: number
  readonly hang: 'flat' | 'row'
  /** Mark of the rigging. */
  readonly rigging: string
  readonly rigged: Rigged
}

/**
 * One stage of handling, computed from drawing, yard and family alone: what it asks of the concrete. The strength of the hour comes in
 * later: `stageChecks` compares, at the strength wanted or at the strength of now.
 */
export interface LiftStage {
  readonly id: LiftStageId
  /** Step whose card carries its checks. */
  readonly step: StepId
  /** Example: `Leaves the mould`. */
  readonly name: string
  /** Supports in words. Example: `flat on 4 face inserts`. */
  readonly how: string
  /** Factor on own weight for bending; null where the family has none and nobody entered one. */
  readonly factor: number | null
  readonly factorSource: Source | null
  /** Angle of the panel from flat at which the peak stands, degrees. */
  readonly angle: number
  readonly supports: readonly StageSupport[]
  /** The governing tension of what opens or shuts; null where the stage is not known or does not bend the panel. */
  readonly peak: StagePeak | null
  /** Others beside it, greatest first: at each pick, the plate's greatest, each re-entrant corner above half the peak. */
  readonly peaks: readonly StagePeak[]
  /** For each corner of `peaks`. */
  readonly corners: readonly CornerBars[]
  /** The peak by the other convention, averaged over a disc of one thickness at supports too, for comparison and for the search of picks. */
  readonly disc: { readonly at: Point; readonly stress: number } | null
  /** Greatest deflection downward and upward (negative), mm, with the factor. */
  readonly sag: { readonly most: number; readonly least: number } | null
  /** Least strength of the concrete at which the tension limit holds the peak, MPa; null where not known. */
  readonly leastStrength: number | null
  readonly inserts: readonly StageInsert[]
  /** How it hangs on its rigging; null where that is not known, absent where nothing hangs. */
  readonly hung?: StageHung | null
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  /** Why it is not known; empty where it is. */
  readonly unknown: readonly string[]
}

/** One thing that must hold at a stage, and the least strength at which it does. */
export interface LiftCondition {
  /** Id of the check that compares it. Example: `lift-peak:release`, `lift-insert:release:A`. */
  readonly check: string
  readonly stage: LiftStageId
  readonly what: string
  /** MPa; 0 where strength does not matter and it holds; null where not known, or where no strength is enough. */
  readonly strength: number | null
  /** True where it fails at any strength. */
  readonly never: boolean
  readonly gaps: readonly string[]
}
