import type { DepthTolerance } from '../../mould-rules.ts'

const INCH = 25.4

/** How much less effective depth top steel may have: 3/8 in up to 8 in of depth, 1/2 in above. Null where the depth is not a size. */
export function depthTolerance({ depth }: { readonly depth: number }): DepthTolerance {
  const sized = depth > 0 && Number.isFinite(depth)
  return {
    less: sized ? (depth <= 8 * INCH ? (3 / 8) * INCH : INCH / 2) : null,
    source: { standard: 'ACI 318-19 / ACI 117-10', clause: '26.6.2', status: 'from memory' },
  }
}
