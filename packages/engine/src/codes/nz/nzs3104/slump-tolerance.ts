import type { SlumpSample, SlumpTolerance } from '../../pour-rules.ts'

const SOURCE = { standard: 'NZS 3104, edition not noted', clause: 'Table 2.6', status: 'seen' } as const

/**
 * Tolerance on the ordered slump, mm. Targets are ordered in tens; one between two rows is read in the higher row.
 * A spot sample is the standard's snatch sample, a composite one its representative sample.
 */
export function slumpTolerance(target: number, sample: SlumpSample): SlumpTolerance | null {
  if (!(target > 0 && Number.isFinite(target))) return null
  const [composite, spot] = target <= 60 ? [20, 20] : target <= 110 ? [20, 30] : [30, 40]
  const by = sample === 'spot' ? spot : composite
  return {
    below: by,
    above: by,
    source: SOURCE,
    note: 'a repeat test is allowed at once on the same or a fresh sample',
  }
}
