import { commonPractice, type Source } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import { LEFT_SOURCE } from '../left-too-long.ts'

export interface BandWidthInput {
  /** Concrete of the panel, m³. */
  readonly volume: number
  /** Length across which the bands follow each other, mm. */
  readonly length: number
  /** Vibrating the whole panel with all heads at work, minutes. */
  readonly minutes: number
  /** Concrete that the gang places, m³/h; null where only the heads are known. */
  readonly placing: number | null
  /** Minutes that a band may wait for the one beside it. */
  readonly wait: number
}

export interface BandWidth {
  /** mm; at most the length. */
  readonly width: number
  readonly steps: readonly Step[]
}

const PACE: Source = commonPractice('no more concrete ahead of the heads than they compact')

/**
 * Width of the bands in which a panel is placed: what the heads and the gang finish before the band beside it has waited too long. Rows run
 * along the width of a band, so concrete at its edge waits about as long as the next band takes.
 *
 * Example: 2.7 m³ over 6 m, 54 min of vibrating: 3 m³/h, so 15 min are 0.75 m³ and a band is 1667 mm wide.
 */
export function bandWidth({ volume, length, minutes, placing, wait }: BandWidthInput): BandWidth {
  const pace = (60 * volume) / minutes
  const rate = placing === null ? pace : Math.min(pace, placing)
  const width = Math.min(length, (length * rate * wait) / (60 * volume))
  return {
    width,
    steps: [
      {
        symbol: 'q_v',
        formula: '60 V / t_all',
        given: { V: volume, t_all: minutes },
        result: pace,
        unit: 'm³/h',
        source: PACE,
        note: 'all heads at work',
      },
      {
        symbol: 'w',
        formula: 'min(L, L q t_w / (60 V))',
        given: { L: length, q: rate, t_w: wait, V: volume },
        result: width,
        unit: 'mm',
        source: LEFT_SOURCE,
        note:
          placing !== null && placing < pace
            ? 'q: what the gang places is less than what the heads keep up with'
            : 'q: what the heads keep up with',
      },
    ],
  }
}
