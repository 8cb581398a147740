import { codeFamily } from '@castwright/engine/codes'
import type { ScheduledBar } from '@castwright/engine/steel'
import { takenKey } from '@castwright/record'
import { describe, expect, it } from 'vitest'
import { piecesText } from './piece-text.ts'
import { stillToCut } from './still-to-cut.ts'
import { lessPromised, nominal } from './what-is-there.ts'

const STEEL = { diameter: 12, grade: '500E' }

describe('bars that are there for one more plan', () => {
  it('are those that no plan at the shear still needs, the planned length first, then longer ones', () => {
    const bars = [
      { ...STEEL, length: 12_000, count: 2 },
      { ...STEEL, length: 6000, count: 3 },
    ]
    const line = { ...STEEL, length: 6000, rack: false }
    expect(lessPromised(bars, [{ ...line, count: 4 }], false)).toEqual([
      { ...STEEL, length: 12_000, count: 1 },
    ])
    expect(lessPromised(bars, [{ ...line, count: 4, rack: true }], false)).toHaveLength(2)
    expect(lessPromised(bars, [{ ...line, grade: '300E', count: 4 }], false)).toHaveLength(2)
  })

  it('have one diameter however a US yard writes it', () => {
    const { steel } = codeFamily('us')
    for (const diameter of [16, 15.875, 15.9]) expect(nominal({ diameter }, steel).diameter).toBe(15.875)
    expect(nominal({ diameter: 12 }, codeFamily('nz').steel).diameter).toBe(12)
  })
})

describe('bars of a panel that are still to be cut', () => {
  const bar = { ...STEEL, mark: 'MX1', cutLength: 2900.3, count: 6 } as unknown as ScheduledBar

  it('are those that no plan holds, each piece counted once though two rows have one mark', () => {
    const taken = new Map([[takenKey({ ...bar, length: 2900 }), 8]])
    expect(stillToCut([bar, bar], taken).map(({ count }) => count)).toEqual([4])
    expect(stillToCut([bar], undefined)).toEqual([bar])
  })

  it('are all of them where the drawing was revised to another length', () => {
    const taken = new Map([[takenKey({ ...bar, length: 2900 }), 6]])
    expect(stillToCut([{ ...bar, cutLength: 3100 }], taken)).toHaveLength(1)
  })
})

describe('pieces in words', () => {
  it('keep a panel mark that has a slash', () => {
    expect(piecesText([{ length: 880, count: 2, panel: 'J1/N/05', mark: 'MY1' }])).toBe('2 × 880 (N/05 MY1)')
  })
})
