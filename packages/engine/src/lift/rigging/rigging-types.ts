import type { Point } from '../../panel/point.ts'
import type { YardRigging } from '../../yard/yard.ts'

/** An insert that a leg hangs from. */
export interface LegPick {
  readonly mark: string
  /** mm */
  readonly at: Point
  readonly kind: 'face' | 'edge'
}

export interface RiggedInput {
  readonly rigging: YardRigging
  /** In the order of the rigging's legs. */
  readonly picks: readonly LegPick[]
  /** Centre of gravity in plan, mm. */
  readonly centre: Point
  /** mm */
  readonly thickness: number
  /** All that the legs carry, kN, the stage's factor in it. When turned: the force on the hook, by `turningForce`. */
  readonly load: number
  /**
   * `flat`: hangs level, its face down; the shares follow from both directions. `row`: hangs upright or turns about an edge, picked along one
   * line; the shares follow from the places along that line.
   */
  readonly hang: 'flat' | 'row'
  /** Panel from level, degrees: 0 flat, 90 upright. */
  readonly angle: number
  /** Share of each pick by the bending of the panel on points that do not give, kN, sum = load. Absent: by statics where that is enough. */
  readonly shares?: readonly number[]
  /**
   * Deflection at pick i under 1 kN at pick j, mm/kN, the panel held anywhere: `pickCompliance`. Absent: a panel that does not bend, which
   * makes uneven legs worse.
   */
  readonly compliance?: readonly (readonly number[])[]
}

/** One pick on its leg; vertical parts downward on the leg, upward on the panel. */
export interface RiggedPick {
  readonly mark: string
  /** mm */
  readonly at: Point
  /** Share on points that do not give, kN; null where it was not given and statics is not enough. */
  readonly share: number | null
  /** Least and greatest share with legs of uneven length, kN; null where no length error is entered or it changes nothing. */
  readonly uneven: { readonly least: number; readonly most: number } | null
  /** Greatest share by the legs that count, kN. */
  readonly counted: number
  /** The greatest of them, kN: vertical. */
  readonly vertical: number
  /** Which case it is from, in words. Example: `two of 4 legs count`. */
  readonly from: string
  /** Leg from the vertical, degrees, on its own plan distance. */
  readonly angle: number
  /** Plan distance from the pick to the upper end of its leg, mm. */
  readonly reach: number
  /** Length of this leg with which the panel hangs level, mm; what the rigging's leg is longer must be taken up. */
  readonly length: number
  /** Direction in plan of the pull on the insert, degrees from x to y; null where the leg is vertical. */
  readonly bearing: number | null
  /** Working load along the leg, kN. */
  readonly load: number
  /** Horizontal pull, kN. */
  readonly pull: number
  /** Along the axis of the insert and across it, kN. */
  readonly tension: number
  readonly shear: number
  /** Moment that the pull, half a thickness above the middle, puts into a flat panel, kN·m; sagging. 0 in a row. */
  readonly moment: number
}

/** What hangs between hook and legs. */
export interface RiggedBeam {
  /** mm */
  readonly length: number
  /** Compression of a spreader under two top slings, kN; null for a beam hung at its middle, or where the top slings are not given. */
  readonly compression: number | null
  /** Bending of a beam hung at its middle, kN·m; null for a spreader under two top slings. */
  readonly moment: number | null
  /** Top slings from the vertical, degrees; null for a beam hung at its middle. */
  readonly topAngle: number | null
}

export interface Rigged {
  readonly picks: readonly RiggedPick[]
  /** Whether statics alone gives the shares. */
  readonly determinate: boolean
  /** Legs that count for inserts. */
  readonly counted: number
  /** Legs that count for the slings by the sling tables: three of four and more. */
  readonly slingsCounted: number
  /** Greatest tension of a leg by the sling tables, kN: what one leg must be rated for. */
  readonly legTension: number
  /** Least rating of one leg by the mode factor of the sling tables, kN; null where they end. */
  readonly legRating: number | null
  /** Difference of length between two legs at which the first leg goes slack, mm; null where length does not matter or nothing gives way. */
  readonly slackError: number | null
  /** Greatest angle of a leg from the vertical, degrees. */
  readonly angle: number
  /** Where the hook stands over, mm. */
  readonly hook: Point
  /** Hook above the picks, mm; null where a spreader's top slings are not given. */
  readonly hookHeight: number | null
  readonly beam: RiggedBeam | null
  /** How the panel hangs with all legs as long as the rigging says, none taken up. */
  readonly tilt: {
    /** Centre of gravity off the point that equal legs bring the hook over, mm. */
    readonly off: number
    /** degrees; null where nothing but friction of the running sling holds it level. */
    readonly angle: number | null
    /** In words. */
    readonly note: string
  }
  /** Out of plumb by thickness when it hangs upright from face inserts, degrees; 0 from edge inserts on the middle plane. */
  readonly plumb: number
  /** What could not be computed though the loads are known. Example: length of the top slings. */
  readonly gaps: readonly string[]
}
