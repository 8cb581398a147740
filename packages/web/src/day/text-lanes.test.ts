import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LaneLabel, placeLabels, textWidth } from './text-lanes.ts'

function label(key: string, x: number, more: Partial<LaneLabel> = {}): LaneLabel {
  return { key, text: `Strip ${key}`, x, size: 14, rank: 1, ...more }
}

describe('labels over a bed', () => {
  it('stand where they want when nothing is in the way', () => {
    const [placed] = placeLabels([label('W1', 300)], { lanes: 2, left: 140, right: 1400 })
    expect(placed).toMatchObject({ x: 300, lane: 0 })
  })

  it('take the second lane where the first is taken', () => {
    const placed = placeLabels([label('W1', 300), label('W2', 305)], { lanes: 2, left: 140, right: 1400 })
    expect(placed.map(({ lane }) => lane)).toEqual([0, 1])
  })

  it('move to the other side of their mark when the line of now is in the way', () => {
    const wide = label('W1', 300, { text: 'W1: 07:52 low edge at 15 MPa', endsAt: 290 })
    const now = [0, 1].map((lane) => ({ lane, from: 360, to: 364 }))
    const [placed] = placeLabels([wide], { lanes: 2, left: 0, right: 1400, taken: now })
    expect((placed?.x ?? 0) + (placed?.width ?? 0)).toBeLessThanOrEqual(290)
  })

  it('say less before they say nothing', () => {
    const wide = label('W1', 300, { text: 'a very long sentence that has no room here', short: 'W1' })
    const [placed] = placeLabels([wide], { lanes: 1, left: 290, right: 360 })
    expect(placed?.text).toBe('W1')
  })

  it('never touch, never leave the picture', () => {
    const labels = fc.array(
      fc.record({
        x: fc.integer({ min: -100, max: 1600 }),
        text: fc.string({ minLength: 1, maxLength: 40 }),
        rank: fc.integer({ min: 0, max: 4 }),
        bold: fc.boolean(),
      }),
      { maxLength: 30 },
    )
    fc.assert(
      fc.property(labels, (drawn) => {
        const placed = placeLabels(
          drawn.map((one, index) => label(String(index), one.x, one)),
          { lanes: 2, left: 140, right: 1400 },
        )
        for (const one of placed) {
          expect(one.x).toBeGreaterThanOrEqual(140)
          expect(one.x + textWidth(one.text, one.size, one.bold)).toBeLessThanOrEqual(1400)
          for (const other of placed) {
            if (one === other || one.lane !== other.lane) continue
            expect(one.x + one.width <= other.x || other.x + other.width <= one.x).toBe(true)
          }
        }
      }),
      { seed: 1404 },
    )
  })
})
