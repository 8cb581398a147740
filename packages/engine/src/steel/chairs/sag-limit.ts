import type { Layer } from '../../panel/drawing.ts'
import { enteredBy, type Source } from '../../working/source.ts'
import type { Assumed } from '../../working/worked.ts'
import type { ChairsInput } from './plan-chairs.ts'

/** Chairs come in heights of 5 mm. */
const CHAIR_STEP = 5

/** How far a mat may come down, and how much higher than drawn its chairs stand for that. */
export interface Seat {
  readonly limit: number | null
  readonly raise: number
  readonly source: Source
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

export type SagLimitInput = Pick<ChairsInput, 'sag' | 'panel' | 'family'> & {
  readonly layer: Layer
  /** From the mould face to the middle of the bars on the chairs, mm. */
  readonly depth: number
}

/**
 * How far the mat may come down. Mould steel may use what the family allows under the drawn cover, and what its chairs stand
 * higher; where nothing is allowed under it, chairs half of the upper tolerance higher are assumed. Top steel may use what is
 * allowed over its cover, or of its effective depth.
 */
export function sagLimit({ layer, sag, depth, panel, family }: SagLimitInput): Seat {
  if (sag !== undefined)
    return { limit: sag, raise: 0, source: enteredBy('the yard: sag of the mat'), assumed: [], gaps: [] }
  const cover = panel.drawing.cover?.[layer] ?? Number.NaN
  const { below, above, source } = family.mould.coverTolerance({
    thickness: panel.drawing.thickness,
    cover,
  })
  const none = (side: string): Seat => ({
    limit: null,
    raise: 0,
    source,
    assumed: [],
    gaps: [
      `chairs, ${layer} layer: sag of the mat: no confirmed value ${side} the drawn cover; enter the largest sag or the spacing`,
    ],
  })
  if (layer === 'top') {
    const less = above === null ? family.mould.depthTolerance?.({ depth }) : undefined
    const limit = above ?? less?.less ?? null
    return limit === null
      ? none('over')
      : { limit, raise: 0, source: less?.source ?? source, assumed: [], gaps: [] }
  }
  if (below === null) return none('under')
  if (below > 0) return { limit: below, raise: 0, source, assumed: [], gaps: [] }
  const raise = above === null ? 0 : Math.floor(above / 2 / CHAIR_STEP) * CHAIR_STEP
  if (raise === 0) return none('under')
  return {
    limit: raise,
    raise,
    source,
    assumed: [
      {
        field: 'chairs.raise',
        value: raise,
        unit: 'mm',
        why: 'nothing is allowed under the drawn cover: chairs stand so much higher, within what is allowed over it',
      },
    ],
    gaps: [],
  }
}
