import type { CoverTolerance } from '../../mould-rules.ts'

/** Beams, slabs, columns and walls: 5 mm under the drawn cover, 10 mm over it. */
export function coverTolerance(): CoverTolerance {
  return {
    below: 5,
    above: 10,
    source: { standard: 'AS 3600:2018', clause: '17.5.3', status: 'seen' },
  }
}
