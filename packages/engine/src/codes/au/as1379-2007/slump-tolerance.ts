import type { SlumpTolerance } from '../../pour-rules.ts'

const SOURCE = { standard: 'AS 1379:2007', clause: 'Table 5.1', status: 'from memory' } as const

/** Tolerance on the ordered slump, mm, whatever the sample. */
export function slumpTolerance(target: number): SlumpTolerance | null {
  if (!(target > 0 && Number.isFinite(target))) return null
  const by = target < 60 ? 10 : target <= 80 ? 15 : target <= 110 ? 20 : target <= 150 ? 30 : 40
  return { below: by, above: by, source: SOURCE }
}
