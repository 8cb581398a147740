import type { SlumpSample, SlumpTolerance } from '../../pour-rules.ts'

/**
 * Tolerance on a target slump, mm. A spot sample from the first discharge has the wider one. A target between two rows
 * is read in the higher row.
 */
export function slumpTolerance(target: number, sample: SlumpSample): SlumpTolerance | null {
  if (!(target > 0 && Number.isFinite(target))) return null
  const [composite, spot] = target <= 40 ? [10, 30] : target <= 90 ? [20, 40] : [30, 50]
  return sample === 'spot'
    ? {
        below: spot,
        above: spot,
        source: {
          standard: 'BS 8500-2, edition not noted (to EN 206:2013+A2)',
          clause: 'target slump, spot sample',
          status: 'seen',
        },
      }
    : {
        below: composite,
        above: composite,
        source: { standard: 'EN 206:2013+A2', clause: 'Table 23', status: 'from memory' },
      }
}

/** Ranges of a slump class for a spot sample from the first discharge, mm, both ends accepted. */
export const SLUMP_CLASSES = {
  S1: [0, 60],
  S2: [30, 110],
  S3: [80, 170],
  S4: [140, 230],
} as const

export const SLUMP_CLASS_SOURCE = {
  standard: 'EN 206:2013+A2 / BS 8500-1, edition not noted',
  clause: 'slump classes, spot sample',
  status: 'seen',
} as const
