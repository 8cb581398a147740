import { expect, it } from 'vitest'
import { subtract } from '../../panel/region.ts'
import { matLines } from '../mat-lines.ts'
import { TIE, tiedCrossings } from './tie-plan.ts'

it('panel 6 × 3 m, 200 both ways, 40 to the ends: 31 × 16 crossings, 90 on the rim, 293 tied', () => {
  // computed, second method: n = ⌈(L − 2 c) / s⌉ + 1 each way; rim 2 (31 + 16) − 4; half of the 406 inside.
  const region = subtract(
    [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ],
    [],
  )
  const lines = (direction: 'x' | 'y') =>
    matLines({ region, direction, diameter: 12, spacing: 200, edgeCover: 40 }).lines
  const { x, why, rim, tied } = tiedCrossings({ alongX: lines('x'), alongY: lines('y') })
  expect(x.length).toBe(31 * 16)
  expect(rim).toBe(90)
  expect(why.filter((each) => each === TIE.everyOther).length).toBe(203)
  expect(tied).toBe(293)
})
