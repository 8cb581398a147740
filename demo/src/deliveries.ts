/** One truck load of the invented job. Times are minutes from the mixing of the panel's pour; left out: as usual, or not yet. */
export interface Delivery {
  /** Of the concrete that was ordered. */
  readonly share: number
  /** Added to the panel's docket number and to its truck. */
  readonly next: number
  readonly batched?: number
  readonly arrived?: number
  readonly began?: number
  /** Not discharged where the clock of the job stands. */
  readonly running?: boolean
  /** mm; left out: within the band of the mix. */
  readonly slump?: number
  readonly decision?: 'accept' | 'send-back'
  readonly reason?: string
}

const USUAL: readonly Delivery[] = [{ share: 1, next: 0 }]

/** Pours whose trucks came otherwise, by mark. */
const OTHERWISE: Readonly<Record<string, readonly Delivery[]>> = {
  N03: [
    {
      share: 1,
      next: 0,
      slump: 140,
      decision: 'accept',
      reason:
        'Slump 140 against 130, the second test gave the same. No bleeding, no stones apart at the chute. Used.',
    },
  ],
  S04: [
    {
      share: 1,
      next: 1,
      batched: -14,
      arrived: 5,
      slump: 185,
      decision: 'send-back',
      reason: 'Slump 185 against 130 and water on the drum’s lip. Not used; the supplier sends another.',
    },
    { share: 1, next: 0 },
  ],
  // The second truck is being discharged as the clock of the job stands; its concrete is soon too old.
  E03: [
    { share: 0.6, next: 0 },
    { share: 0.4, next: 1, batched: 6, arrived: 62, began: 70, running: true },
  ],
}

export function deliveriesOf(mark: string): readonly Delivery[] {
  return OTHERWISE[mark] ?? USUAL
}
