import { cutPlan, parseCutList } from '@castwright/engine/steel'
import { describe, expect, it } from 'vitest'
import { cuttingPicture } from '../picture/cutting-picture.ts'
import { cuttingSheet } from './cutting-sheet.ts'

const LIST = parseCutList({
  stock: [{ length: 6000 }, { length: 12_000 }],
  offcuts: [{ length: 2600, count: 2 }],
  kerf: 3,
  keep: 800,
  together: 5,
  pieces: [
    { length: 2500, count: 24, mark: 'B1', panel: 'W7', machine: 'M2', order: 1 },
    { length: 150, count: 30, mark: 'Chair leg 7' },
    { length: 3775, count: 400, mark: 'MX2' },
  ],
})
const SHEET = { name: '12 mm', timezone: 'UTC', size: 'a4', made: '2026-03-02T05:00:00.000Z' } as const

describe('cutting sheet', () => {
  it('is a PDF, the same bytes twice', async () => {
    const plan = await cutPlan({ list: LIST, within: 5 })
    const bytes = await cuttingSheet({ ...SHEET, list: LIST, plan })
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 8))).toBe('%PDF-1.7')
    expect(await cuttingSheet({ ...SHEET, list: LIST, plan })).toEqual(bytes)
  })

  it('pieces and offcut fill the bar less its kerfs, to one scale, letters inside their piece', async () => {
    const plan = await cutPlan({ list: LIST, within: 5 })
    const longest = Math.max(...plan.bars.map(({ stock }) => stock))
    for (const bar of plan.bars) {
      const picture = cuttingPicture({
        bar,
        kerf: 3,
        longest,
        frame: { width: 500, height: 40, text: 9 },
      })
      const boxes = picture.shapes.flatMap((shape) =>
        shape.kind === 'polygon' ? [shape.rings[0] ?? []] : [],
      )
      const wide = boxes.reduce((sum, ring) => sum + ((ring[1]?.[0] ?? 0) - (ring[0]?.[0] ?? 0)), 0)
      const pieces = bar.pieces.reduce((sum, { count }) => sum + count, 0)
      expect(wide).toBeCloseTo((500 / longest) * (bar.stock - (pieces - 1) * 3), 6)
      expect(boxes.length).toBe(pieces + (bar.offcut > 0 ? 1 : 0))
      for (const shape of picture.shapes) {
        if (shape.kind !== 'text') continue
        const home = boxes.find(
          (ring) => (ring[0]?.[0] ?? 0) <= shape.at[0] && shape.at[0] <= (ring[1]?.[0] ?? 0),
        )
        expect(shape.box.left).toBeGreaterThanOrEqual(home?.[0]?.[0] ?? 0)
        expect(shape.box.right).toBeLessThanOrEqual(home?.[1]?.[0] ?? 0)
      }
    }
  })
})
