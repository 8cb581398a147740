import type { SlumpSample } from '../../codes/pour-rules.ts'
import type { Signed, Signer } from '../../steps/facts.ts'

/** What a delivery docket says and what was measured at the truck. Left out: nobody has said. Times are UTC with milliseconds. */
export interface DocketWords {
  readonly number: string
  readonly supplier?: string | undefined
  readonly truck?: string | undefined
  readonly mix?: string | undefined
  /** Ordered for this load by the ticket, and delivered, m³. */
  readonly ordered?: number | undefined
  readonly volume?: number | undefined
  /** Of it into this panel, m³, where one load fills several. */
  readonly used?: number | undefined
  readonly batched?: string | undefined
  readonly arrived?: string | undefined
  /** Discharge, begin and end. */
  readonly began?: string | undefined
  readonly discharged?: string | undefined
  /** Slump that the ticket names as ordered, and as measured, mm. */
  readonly slumpTarget?: number | undefined
  readonly slump?: number | undefined
  readonly slumpSample?: SlumpSample | undefined
  /** Of the concrete, °C. */
  readonly temperature?: number | undefined
  /** Litres that the ticket allows to be added on site, and that were added. */
  readonly waterAllowed?: number | undefined
  readonly waterAdded?: number | undefined
  /** Whether water was added after discharge had begun (over about 0.2 m³). */
  readonly waterAfterDischarge?: boolean | undefined
  /** Admixture added on site, litres. */
  readonly admixtureAdded?: number | undefined
  /** At mixing speed after the last addition. */
  readonly remixTurns?: number | undefined
  readonly remixMinutes?: number | undefined
  /** Marks of the cylinders or cubes made from this load. */
  readonly specimens?: readonly string[] | undefined
}

export type DocketField = keyof DocketWords

/** A load was accepted in spite of a fail or a not-known, or sent back. */
export interface LoadDecision extends Signed {
  readonly decision: 'accept' | 'send-back'
}

/** One truck load of a pour: all that was recorded under one docket number, later words filling or changing earlier ones. */
export interface Load extends DocketWords {
  /** The last entry that speaks of it, and all of them. */
  readonly entry: string
  readonly entries: readonly string[]
  readonly by: Signer
  readonly seen: string
  /** Which entry said each field, and when it was seen. */
  readonly said: Readonly<Partial<Record<DocketField, { readonly entry: string; readonly seen: string }>>>
  /** Fields of which two recordings say different things. */
  readonly differs: readonly DocketField[]
  readonly decision: LoadDecision | null
}

/** Whether a load counts: what was sent back is no concrete of this panel. */
export function counts({ decision }: Pick<Load, 'decision'>): boolean {
  return decision?.decision !== 'send-back'
}

/** Whether a load still discharges by what is on record: begun, and no end said. */
export function isRunning({ began, discharged }: Pick<Load, 'began' | 'discharged'>): boolean {
  return began !== undefined && discharged === undefined
}

/** Concrete of a load in this panel, m³; null where nobody has said. */
export function volumeHere({ used, volume }: Pick<Load, 'used' | 'volume'>): number | null {
  return used ?? volume ?? null
}

/** What was said of a load, without who said it and what was decided. */
export function wordsOf({
  entry: _entry,
  entries: _entries,
  by: _by,
  seen: _seen,
  said: _said,
  differs: _differs,
  decision: _decision,
  ...words
}: Load): DocketWords {
  return words
}

/** Loads in the order in which they were discharged, as far as that is known: begin, else arrival, else batching. */
export function inOrder(loads: readonly Load[]): Load[] {
  const at = ({ began, arrived, discharged, batched }: Load): string =>
    began ?? arrived ?? discharged ?? batched ?? '~'
  return [...loads].sort((a, b) => {
    const [x, y] = [`${at(a)} ${a.number}`, `${at(b)} ${b.number}`]
    return x < y ? -1 : x > y ? 1 : 0
  })
}
