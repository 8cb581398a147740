import { describe, expect, it } from 'vitest'
import { bandPath, bandShade, bandWords } from './band-path.ts'
import { contourLabels } from './contour-labels.ts'
import { boxAt, meet, placeLabels } from './load-labels.ts'

const bounds = { left: 0, top: 0, right: 300, bottom: 200 }

describe('labels of loads', () => {
  it('stand beside their inserts and never over each other', () => {
    const wanted = [40, 60, 80, 100].map((x) => ({ text: '12.5 kN', at: [x, 100] as const, clear: 24 }))
    const taken = wanted.map(({ at }) => boxAt(at, [16, 16]))
    const placed = placeLabels({ wanted, size: 14, bounds, taken })
    expect(placed.length).toBeGreaterThan(2)
    for (const [i, { box }] of placed.entries()) {
      expect([...taken, ...placed.slice(0, i).map((one) => one.box)].some((other) => meet(box, other))).toBe(
        false,
      )
      expect(box.left >= 0 && box.right <= 300 && box.top >= 0 && box.bottom <= 200).toBe(true)
    }
  })

  it('go to the left where the right has no room', () => {
    const [label] = placeLabels({
      wanted: [{ text: '9.1 kN', at: [280, 100], clear: 24 }],
      size: 14,
      bounds,
      taken: [],
    })
    expect(label?.middle[0]).toBeLessThan(280)
  })
})

describe('bands', () => {
  it('are one path each, closed', () => {
    expect(
      bandPath([Float32Array.from([0.2, 0, 10.4, 0, 10, 10]), Float32Array.from([2, 2, 4, 2, 4, 4])]),
    ).toBe('M0 0L10 0L10 10ZM2 2L4 2L4 4Z')
  })

  it('grow darker with the stress', () => {
    const shades = [0, 1, 2, 3, 4].map((i) => bandShade(i, 5))
    expect([...shades].sort((a, b) => a - b)).toEqual(shades)
    expect(new Set(shades).size).toBe(5)
  })

  it('are told in words', () => {
    expect(
      bandWords([
        { level: 0.25, rings: [] },
        { level: 0.5, rings: [] },
      ]),
    ).toEqual(['0.25 to 0.5', 'from 0.5'])
  })

  it('are named once each, where there is room', () => {
    const circle = (r: number): Float32Array =>
      Float32Array.from(
        Array.from({ length: 90 }, (_, i) => [
          100 + r * Math.cos(i / 14.3),
          100 + r * Math.sin(i / 14.3),
        ]).flat(),
      )
    const labels = contourLabels({
      bands: [
        { level: 0.2, rings: [circle(90)] },
        { level: 0.4, rings: [circle(60)] },
        { level: 0.6, rings: [circle(6)] },
      ],
      toPicture: (at) => at,
      half: [16, 10],
      taken: [boxAt([100, 100], [20, 20])],
      clear: ([x]) => x > 20,
    })
    expect(labels.map(({ level }) => level)).toEqual([0.2, 0.4])
  })
})
