import type { CoverTolerance } from '../../mould-rules.ts'

/** Nothing under the drawn cover, 10 mm over it. */
export function coverTolerance(): CoverTolerance {
  return {
    below: 0,
    above: 10,
    source: { standard: 'NZS 3109:1997', clause: '3.9', status: 'seen' },
  }
}
