import type { Source } from '../working/source.ts'
import type { Worked } from '../working/worked.ts'
import type { ActRules } from './bar-acts.ts'
import type { HookTailInput } from './bend-tail.ts'
import type { DeliveredRules } from './delivered-bar.ts'
import type { HookAnchorageInput } from './hook-anchorage.ts'

export type BarRole = 'main' | 'stirrup'

export interface SteelGrade {
  /** As written on schedule and docket. Example: `500E`. */
  readonly grade: string
  /** Lower characteristic yield, MPa. */
  readonly yield: number
  readonly source: Source
}

export interface BarSize {
  /** Nominal diameter that the rules count with, mm. */
  readonly diameter: number
  /** How the size is called where that is not its diameter. Example: `No. 5`. */
  readonly name: string
  /** mm² */
  readonly area: number
  /** kg/m */
  readonly massPerMetre: number
}

export interface BendRuleInput {
  /** mm */
  readonly diameter: number
  readonly grade: string
  readonly role: BarRole
  readonly plain: boolean
  /** Galvanised before or after bending. */
  readonly galvanised: boolean
}

export interface LapInput {
  /** mm */
  readonly diameter: number
  /** Characteristic yield of the bar, MPa; taken as fully used. */
  readonly yield: number
  /** Concrete strength of the family's own formula (cylinder), MPa. */
  readonly concrete: number
  /** Concrete cover to the bar itself, mm. */
  readonly cover: number
  /** Clear between neighbouring bars, or pairs where lapped, mm. */
  readonly gap: number
  /** Depth of fresh concrete cast below the bar, mm. */
  readonly below: number
  /** Bond condition of EN 1992-1-1; other families do not read it. */
  readonly bond: 'good' | 'poor'
  /** Bars lapped at one section, percent of all, above 0 to 100. */
  readonly share: number
  /** Clear between the two bars of one lap, mm; 0 is a contact lap. */
  readonly apart: number
  /** Steel provided over steel required at the lap, by the designer; where missing the bars count as fully used. */
  readonly spare?: number
  /** Epoxy-coated bar; where missing uncoated. */
  readonly epoxy?: boolean
}

export interface LapLength {
  /** Tension development (anchorage) of the straight bar, before the lap factor, its own least length included, mm. */
  readonly development: number
  /** Length of the lap, mm; null where the family gives none for this case. */
  readonly length: number | null
  readonly factors: readonly { readonly symbol: string; readonly value: number }[]
  /** Why `length` is null. */
  readonly gaps: readonly string[]
  readonly source: Source
}

export interface Candidate {
  readonly grade: string
  /** Null where the mark does not show it. */
  readonly process: string | null
  readonly why: string
}

export interface Identified {
  readonly candidates: readonly Candidate[]
  /** `pass`: one grade read; `fail`: not acceptable as a marked bar; `unknown`: more than one, or cannot be read. */
  readonly verdict: 'pass' | 'fail' | 'unknown'
  readonly unknown: readonly string[]
  /** The gap in `unknown` that a certificate of the bar's heat may close: one mark that stands for several grades. */
  readonly byCertificate?: string
  /** Nominal diameters that the size rolled on the bar may stand for, mm; left out where none was read or the family rolls none. */
  readonly sizes?: readonly number[]
  /** Standards that a type letter on the bar names. */
  readonly standards?: readonly string[]
  readonly notes: readonly string[]
  readonly source: Source
}

/** Good from `minus` below to `plus` above, both in the unit of the value; null: no limit on that side. */
export interface Tolerance {
  readonly minus: number | null
  readonly plus: number | null
  readonly source: Source
}

export interface TwoSided extends Tolerance {
  readonly minus: number
  readonly plus: number
}

/** What a place says about reinforcing bars: the same questions to every family. */
export interface SteelRules {
  readonly grades: readonly SteelGrade[]
  /** What may be done with a bar: bend, weld, heat. */
  readonly acts: ActRules
  /** Size, area and mass of a bar; unknown for a diameter that the family's bar table does not hold. */
  barSize(input: { readonly diameter: number }): Worked<BarSize>
  /** Least inside diameter of a bend, mm; unknown outside the rule's table. */
  leastBend(input: BendRuleInput): Worked<number>
  /** Least straight past the last bend of a bar, mm; unknown for a turn that the rule does not name. */
  hookTail(input: HookTailInput): Worked<number>
  /** Least outside dimension of an end leg by a table of the family, mm; null where it has none. */
  readonly endLeg:
    | ((input: {
        readonly diameter: number
        readonly role: BarRole
        readonly turn: number
      }) => Worked<number>)
    | null
  /** Largest shorter side of the rectangle around a bent bar on a usual load, mm; null where the family names none. */
  readonly transportBox: { readonly most: number; readonly source: Source } | null
  /** Lowest bar temperature for cold bending, °C; null where the family is silent. */
  readonly coldest: {
    readonly temperature: number
    readonly source: Source
    /** A warmer limit that another source of the place asks for, °C: said, not judged. */
    readonly advised?: { readonly temperature: number; readonly source: Source }
  } | null
  lap(input: LapInput): Worked<LapLength>
  /** Development and lap in compression, mm. */
  compressionLap(input: LapInput): Worked<LapLength>
  /** Development of a standard hook in tension, mm. */
  hookAnchorage(input: HookAnchorageInput): Worked<number>
  /** What that length is held against: the bar to its end along the centreline, or how deep the outside of the hook lies. */
  readonly hookMeasured: 'centreline' | 'outside'
  /** Laps with their middles no farther from that of a lap than this many laps count to its section. */
  readonly lapSection: number
  /** Grades that fit what was read on the bar. */
  identify(input: { readonly seen: readonly string[] }): Identified
  /** Least clear distance between parallel bars, mm. */
  clearSpacing(input: { readonly diameter: number; readonly aggregate: number | null }): Worked<number>
  /** Least cover for bond and placing (not for exposure or fire), mm; null where the family has no such rule. */
  readonly bondCover:
    | ((input: { readonly diameter: number; readonly aggregate: number | null }) => Worked<number>)
    | null
  /** Placing tolerance of bar spacing in a panel, mm. */
  spacingTolerance(input: { readonly spacing: number }): Tolerance
  /** Bars as they are delivered: sizes, tensile tests, lengths. */
  readonly delivered: DeliveredRules
  /** Mass per metre of delivered bar, parts of nominal: 0.045 is 4.5 %. */
  massTolerance(input: { readonly diameter: number }): Tolerance
  /** Cut length of a straight bar, mm; both sides are given. */
  cutTolerance(input: { readonly length: number }): TwoSided
  /** A bent dimension, mm. */
  legTolerance(input: {
    readonly leg: number
    readonly role: BarRole
    readonly plain: boolean
    /** mm; a family that goes by the size has no tolerance without it. */
    readonly diameter?: number
    /** Length of the whole bar, mm; without it the tighter row holds. */
    readonly cutLength?: number
  }): Tolerance | null
}
