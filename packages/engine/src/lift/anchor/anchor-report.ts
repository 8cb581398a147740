import type { CodeFamily } from '../../codes/family.ts'
import type { Point } from '../../panel/point.ts'
import { type AnchorCase, faceOf } from './anchor-case.ts'
import { type AnchorFound, anchorModes } from './anchor-modes.ts'

/**
 * A case by a family's anchor code. A family that has none in here (nz, au) gives no mode and the reason: there the maker's rating counts.
 */
export function anchorReport({
  anchorCase,
  family,
  supplementary,
}: {
  readonly anchorCase: AnchorCase
  readonly family: CodeFamily
  readonly supplementary: boolean
}): AnchorFound {
  const rules = family.lift.anchor ?? null
  if (rules === null) return noRules(family)
  const { at, thickness, depth, head, shaft, steel, concrete, tension, shear, eccentricity } = anchorCase
  return anchorModes({
    rules,
    group: {
      at: at as unknown as Point[],
      region: faceOf(anchorCase),
      thickness,
      depth,
      head,
      shaft: shaft ?? null,
      steel: steel ?? null,
      strength: concrete.strength,
      cracked: concrete.cracked,
      splitting: anchorCase.splitting ?? null,
    },
    eccentricity: (eccentricity as Point | undefined) ?? [0, 0],
    tension,
    shear: shear === undefined ? null : typeof shear === 'number' ? { force: shear, direction: null } : shear,
    supplementary,
    ductile: anchorCase.ductile ?? null,
    yieldRatio: anchorCase.yieldRatio ?? null,
  })
}

/** What a family without anchor rules answers. */
export function noRules({ id }: Pick<CodeFamily, 'id'>): AnchorFound {
  return {
    modes: [],
    notNeeded: [],
    governing: null,
    demand: null,
    ratio: null,
    governingNominal: null,
    interaction: [],
    verdict: 'unknown',
    unknown: [`resistance in concrete: ${id} has no anchor rules in here; the maker's rated load counts`],
    working: [],
    assumed: [],
  }
}
