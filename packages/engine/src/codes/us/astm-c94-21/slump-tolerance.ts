import type { SlumpTolerance } from '../../pour-rules.ts'

const SOURCE = { standard: 'ASTM C94/C94M-21', clause: 'slump tolerances', status: 'from memory' } as const

/** Tolerance on a nominal (target) slump, mm, whatever the sample. */
export function slumpTolerance(target: number): SlumpTolerance | null {
  if (!(target > 0 && Number.isFinite(target))) return null
  const by = target <= 50 ? 15 : target <= 100 ? 25 : 40
  return { below: by, above: by, source: SOURCE }
}

/** Tolerance where the slump was ordered as a maximum, mm. */
export function maximumSlumpTolerance(maximum: number): SlumpTolerance | null {
  if (!(maximum > 0 && Number.isFinite(maximum))) return null
  return { below: maximum <= 75 ? 40 : 65, above: 0, source: SOURCE }
}
