import type { SteelRules } from '../../codes/steel-rules.ts'
import { type Drawing, type DrawnMat, isListed, isMat } from '../../panel/drawing.ts'
import type { Point } from '../../panel/point.ts'
import { askedBeside } from './beside-check.ts'
import type { Obstacle } from './clear-rows.ts'
import { CONTACT, SHORTEST } from './side-by-side.ts'

export interface BesideListedInput {
  readonly drawing: Drawing
  readonly rules: SteelRules
  readonly mat: DrawnMat
  /** Concrete from the face of its layer to the bars of the mat, mm. */
  readonly cover: number
}

/**
 * Where a row of a mat would lie beside a listed bar of its layer, neither clear nor, where that is drawn tied, in contact. A listed bar lies over all
 * mats of its layer. None where the code's clear distance is not known.
 */
export function besideListed({ drawing, rules, mat, cover }: BesideListedInput): Obstacle[] {
  const face = drawing.cover?.[mat.layer]
  if (face === undefined) return []
  const steel = drawing.steel ?? []
  const over = steel
    .filter(isMat)
    .reduce((depth, each) => (each.layer === mat.layer ? depth + each.diameter : depth), face)
  const [along, across] = mat.direction === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  return steel.filter(isListed).flatMap(({ path, layer, diameter, tied }): Obstacle[] => {
    const [a, b] = (path ?? []) as readonly Point[]
    if (layer !== mat.layer || a === undefined || b === undefined || path?.length !== 2) return []
    if (Math.abs(a[across] - b[across]) > 1e-6) return []
    const clear = askedBeside({ drawing, rules, diameter: Math.max(diameter, mat.diameter) })
    if (!clear.known) return []
    const bars = (diameter + mat.diameter) / 2
    const up = over + diameter / 2 - (cover + mat.diameter / 2)
    const reach = asideFor(bars + clear.value, up)
    if (reach === 0) return []
    const inner = tied === true ? asideFor(bars + CONTACT, up) : 0
    const shortest = SHORTEST * Math.min(diameter, mat.diameter)
    const length = {
      from: Math.min(a[along], b[along]) + shortest,
      to: Math.max(a[along], b[along]) - shortest,
      isWeb: false,
      isBeside: true,
    }
    const at = a[across]
    return inner > 0
      ? [
          { ...length, low: at - reach, high: at - inner },
          { ...length, low: at + inner, high: at + reach },
        ]
      : [{ ...length, low: at - reach, high: at + reach }]
  })
}

/** How far aside two bars lie that are so far apart, one so much higher than the other, mm; 0 where the height alone is more. */
function asideFor(apart: number, up: number): number {
  return apart > Math.abs(up) ? Math.sqrt(apart * apart - up * up) : 0
}
