import type { YardWeather } from '../cure/heat/yard-weather.ts'
import type { Drawing } from '../panel/drawing.ts'
import type { Load } from '../pour/loads/load.ts'
import type { PanelSteel } from '../steel/incoming/panel-steel.ts'
import type { Verdict } from '../working/verdict.ts'
import type { Yard } from '../yard/yard.ts'
import type { StepId } from './steps.ts'

/**
 * What the record holds of a panel and its yard, as plain facts: the record folds entries into this form, and the engine reads
 * it without knowing of entries, stores or networks. Times are UTC with milliseconds.
 */
export interface Signer {
  readonly id: string
  readonly name: string
  readonly role: 'lead' | 'engineer' | 'floor' | 'viewer'
}

/** One thing seen or measured, corrections already applied. */
export interface Recorded {
  /** Id of the entry in force. */
  readonly entry: string
  readonly value: unknown
  readonly verdict: Verdict
  readonly by: Signer
  readonly seen: string
  /** Null while it is only kept on a device. */
  readonly stored: string | null
  readonly revision: string | null
  readonly reason: string | null
  /** Ids of the entries that it corrects, oldest first. */
  readonly corrects: readonly string[]
  readonly attachments: readonly { readonly sha256: string; readonly name: string; readonly type: string }[]
}

/** A signature or decision with its reason. */
export interface Signed {
  readonly entry: string
  readonly by: Signer
  readonly seen: string
  readonly stored: string | null
  readonly reason: string | null
  readonly revision: string | null
}

/**
 * An engineer's signature on a difference: our result fails or is not known where a confirmed lifting design holds. It says
 * what it was signed for, so that it does not cover anything worse.
 */
export interface SignedDifference extends Signed {
  /** Reference of the lifting design that ours was held beside. */
  readonly reference: string
  readonly verdict: 'fail' | 'unknown'
  /** Ours and its limit as they stood, in `unit`; null where not known. */
  readonly demand: number | null
  readonly limit: number | null
  readonly unit: string
  /** What was missing then, where it was not known. */
  readonly missing: readonly string[]
}

export interface StepFacts {
  /** By id of the check or asked item. */
  readonly values: Readonly<Record<string, Recorded>>
  /** Decisions on a fail or a not-known, by id of the check. */
  readonly decisions: Readonly<Record<string, Signed>>
  /** Differences from the lifting design that an engineer signed, by id of the row; only at `strip`. */
  readonly differences: Readonly<Record<string, SignedDifference>>
  /** Signatures that ask for the hold to open, oldest first. */
  readonly requests: readonly Signed[]
  /** The hold is open, and on which entries it rested. */
  readonly opening: (Signed & { readonly rests: readonly string[] }) | null
  /** The step is closed (steps without hold). */
  readonly closed: Signed | null
}

export interface Defect extends Signed {
  readonly text: string
  readonly place: readonly [number, number] | null
  readonly step: StepId | null
  readonly attachments: Recorded['attachments']
  readonly disposition: (Signed & { readonly decision: 'accept' | 'repair' | 'reject' }) | null
  readonly inspection: (Signed & { readonly verdict: Verdict }) | null
  /** Open until accepted by somebody entitled, or repaired and inspected with a pass. A rejected panel stays open. */
  readonly open: boolean
}

export interface SpecimenResult {
  readonly entry: string
  readonly specimen: string
  readonly kind: 'cylinder' | 'cube' | 'probe'
  /** Hours from mixing of this pour to the test. */
  readonly age: number
  /** MPa */
  readonly strength: number
  /** Beside the panel or in it, or kept at the standard's temperature; beside the panel where nobody said. */
  readonly cured?: 'panel' | 'standard' | undefined
  readonly by: Signer
  readonly seen: string
}

/** Specimens made from one load, and when each is to be tested. */
export interface SpecimenSet {
  readonly entry: string
  readonly set: string
  readonly kind: 'cylinder' | 'cube'
  /** Diameter or side, mm. */
  readonly size?: number | undefined
  /** UTC; test ages count from here. */
  readonly made: string
  /** Number of the docket that the load came with. */
  readonly docket?: string | undefined
  readonly tests: readonly PlannedTest[]
  readonly by: Signer
  readonly seen: string
}

export interface PlannedTest {
  /** h from making */
  readonly age: number
  readonly cured: 'panel' | 'standard'
  /** Marks of the specimens. */
  readonly specimens: readonly string[]
}

/** All that one person or logger recorded of one channel, in however many entries it came. */
export interface TemperatureLog {
  /** The last of its entries. */
  readonly entry: string
  /** Every entry that it is made of, the last one last. */
  readonly entries: readonly string[]
  readonly channel: string
  readonly by: Signer
  /** Hours from mixing, °C; hours rise. */
  readonly readings: readonly (readonly [hours: number, celsius: number])[]
  /** What no sensor in concrete reads, kept apart since it is no temperature; left out where there is none. */
  readonly broken?: readonly (readonly [hours: number, celsius: number])[]
}

export interface PanelFacts {
  readonly job: string
  readonly mark: string
  readonly revision: string | null
  readonly drawing: Drawing | null
  readonly steps: Readonly<Record<StepId, StepFacts>>
  /** The lifting design of the revision in force, confirmed by an engineer. */
  readonly design: Signed | null
  /** Mixing time of the concrete, bed and mix. */
  readonly cast: {
    readonly entry: string
    readonly at: string
    readonly bed: string | null
    readonly mix: string | null
  } | null
  /** Truck loads by their dockets, as recorded. */
  readonly dockets: readonly Load[]
  readonly specimens: readonly SpecimenResult[]
  /** Specimens that were made of this pour and are to be tested; left out where the record says of none. */
  readonly sets?: readonly SpecimenSet[]
  readonly temperatures: readonly TemperatureLog[]
  readonly defects: readonly Defect[]
  /** Where it stands: bed, rack or truck. */
  readonly place: string | null
  /** Steel that went into it, by bundle; left out where the record says of none. */
  readonly steel?: readonly PanelSteel[]
}

/** A limit that an engineer entered for the yard, with its source; shown at every use as entered by. */
export interface EnteredLimit {
  readonly entry: string
  readonly value: number
  readonly unit: string
  readonly standard: string
  readonly edition: string
  readonly by: Signer
  /** Why the engineer set it, where one was given. */
  readonly reason?: string | null
}

export interface YardFacts {
  readonly yard: Yard | null
  /** Date until which a piece of gear is in date, by mark (crane, rigging, scale …): the latest inspection on record. */
  readonly gear: Readonly<Record<string, { readonly entry: string; readonly due: string }>>
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Weather by time, as logged and as foretold; left out where the record has none. */
  readonly weather?: readonly YardWeather[]
  readonly forecast?: readonly YardWeather[]
}
