import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'

describe('spacing of supports to bars', () => {
  // BS 7973-2:2001 as told in Durability of Reinforced Concrete, Part 2: 50 diameters of the bar carried; cap of 1000 mm from memory.
  it.each([
    [10, 500],
    [12, 600],
    [16, 800],
    [20, 1000],
    [25, 1000],
  ])('%i mm bars: %i mm', (diameter, spacing) => {
    expect(codeFamily('eu').mould.chairSpacing?.({ diameter }).spacing).toBe(spacing)
  })

  it('no other family has a confirmed rule', () => {
    for (const family of ['nz', 'au', 'us'] as const) expect(codeFamily(family).mould.chairSpacing).toBeNull()
  })
})
