import { describe, expect, test } from 'vitest'
import { expectClearLabels } from './clear-labels.ts'
import { EXAMPLE_DRAWINGS } from './example-drawings.ts'
import { examplePlan } from './example-plan.ts'
import { lapPicture } from './lap-picture.ts'
import { type Frame, type Picture, picturePoint } from './picture.ts'
import { steelLayerPicture, steelParts } from './steel-layers.ts'
import { exampleCage } from './steel-layers-example.ts'
import { hooksPicture } from './steel-layers-hooks.ts'
import { tiePicture } from './steel-layers-ties.ts'
import { steelPicture } from './steel-picture.ts'
import { steelSection } from './steel-section.ts'
import { svgText, toSvgElements } from './svg.ts'

const PHONE: Frame = { width: 328, height: 420, text: 13 }
const DESK: Frame = { width: 860, height: 560, text: 14 }
const PAPER: Frame = { width: 500, height: 300, text: 8, paper: 72 / 25.4 }

type Drawing = (typeof EXAMPLE_DRAWINGS)[number]

/** Every picture of a cage, by name. */
function picturesOf(drawing: Drawing, frame: Frame): [name: string, picture: Picture][] {
  const cage = exampleCage(drawing)
  const [lap] = cage.laps
  const section = steelSection({ drawing, steel: cage, frame, along: 'x' })
  const other = steelSection({ drawing, steel: cage, frame, along: 'y' })
  if (lap === undefined || section === null || other === null)
    throw new Error('the example has laps and heights')
  return [
    ...steelParts(cage).map((part): [string, Picture] => [
      `layer-${part.key}`,
      steelLayerPicture({ drawing, part, frame, ...(part.key === 'mould-x' ? { chairs: cage.chairs } : {}) }),
    ]),
    ['ties', tiePicture({ drawing, steel: cage, ties: cage.ties, frame })],
    ['section-x', section],
    ['section-y', other],
    ['hooks', hooksPicture({ drawing, steel: cage, cage: cage.cage, frame })],
    ['lap', lapPicture({ lap, frame: { ...frame, height: 120 } })],
  ]
}

describe('pictures of a cage', () => {
  for (const drawing of EXAMPLE_DRAWINGS) {
    test(`${drawing.mark}: no label meets another or is cut, on phone, desk and paper`, () => {
      for (const frame of [PHONE, DESK, PAPER]) {
        for (const [name, picture] of picturesOf(drawing, frame)) {
          expectClearLabels(picture)
          expect(picture.width, name).toBe(frame.width)
          expect(picture.height, name).toBeLessThanOrEqual((name === 'lap' ? 120 : frame.height) + 1e-6)
        }
      }
    })
  }
  const [first] = EXAMPLE_DRAWINGS
  if (first === undefined) throw new Error('no example')
  for (const [name, picture] of picturesOf(first, PHONE)) {
    test(`${first.mark}, ${name}`, async () => {
      await expect(svgText(toSvgElements(picture))).toMatchFileSnapshot(
        `golden/${first.mark}-cage-${name}.golden.svg`,
      )
    })
  }
})

describe('what the pictures show', () => {
  const [drawing] = EXAMPLE_DRAWINGS
  if (drawing === undefined) throw new Error('no example')
  const cage = exampleCage(drawing)

  test('layers come in the order in which they are laid', () => {
    expect(steelParts(cage).map(({ key }) => key)).toEqual(['mould-x', 'mould-y', 'top-y', 'more'])
  })

  test('a section is true to scale: a bar on end is as thick as it is, at its height', () => {
    const picture = steelSection({ drawing, steel: cage, frame: DESK, along: 'x' })
    if (picture === null) throw new Error('no section')
    const discs = picture.shapes.filter((shape) => shape.kind === 'circle')
    expect(discs.length).toBeGreaterThan(1)
    for (const disc of discs) {
      expect([5 * picture.scale]).toContainEqual(expect.closeTo(disc.radius, 9))
      const heights = [47, 115].map((z) => picturePoint(picture, [0, z])[1])
      expect(heights).toContainEqual(expect.closeTo(disc.at[1], 9))
    }
    // 150 thick: 30 cover, 12 and 10 bars, 58 to 110, 10 bar, 30 cover.
    expect(picture.title).toContain('30, 22, 58, 10, 30 mm from the mould face')
    const texts = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
    for (const word of ['12 mm at 36', '10 mm at 47', '10 mm at 115']) expect(texts).toContain(word)
  })

  test('two bars side by side: the cut goes through them, both are ringed, the concrete between is measured', () => {
    const [one, other] = cage.placed.filter(
      ({ path, layer }) => layer === 'mould' && path[0]?.[0] === path[1]?.[0],
    )
    if (one === undefined || other === undefined) throw new Error('the example has rows along y')
    const [x, y] = one.path[0] as [number, number]
    const clear = (other.path[0]?.[0] ?? 0) - x - one.diameter
    const at = [x + (clear + one.diameter) / 2, y + 700, one.height ?? 0] as const
    const pair = {
      bars: [one.id, other.id],
      marks: [one.mark, other.mark],
      clear,
      asked: 21,
      length: 700,
      at,
    } as const
    for (const frame of [PHONE, DESK, PAPER]) {
      const shown = { ...pair, inContact: false, isFault: true }
      const picture = steelSection({ drawing, steel: cage, frame, along: 'x', pair: shown })
      if (picture === null) throw new Error('no section')
      expectClearLabels(picture)
      const rings = picture.shapes.filter((shape) => shape.role === 'defect')
      expect(rings).toHaveLength(2)
      const [left, right] = rings.map((shape) => (shape.kind === 'circle' ? shape.at[0] : Number.NaN))
      expect(((right ?? 0) - (left ?? 0)) / picture.scale).toBeCloseTo(clear + one.diameter, 6)
      expect(picture.title).toContain(`${one.mark} and ${other.mark}: `)
      expect(picture.title).toContain('mm clear, 21 mm asked')
    }
  })

  test('a tie is a dot at each tied crossing, a stroke at each end of a lap', () => {
    const picture = tiePicture({ drawing, steel: cage, ties: cage.ties, frame: DESK })
    expect(picture.shapes.filter((shape) => shape.kind === 'circle')).toHaveLength(cage.ties.tied)
    expect(picture.shapes.filter((shape) => shape.role === 'now')).toHaveLength(cage.ties.lapX.length)
  })

  test('a lap is as long as it is, to scale', () => {
    const [lap] = cage.laps
    if (lap === undefined) throw new Error('no lap')
    const picture = lapPicture({ lap, frame: DESK })
    const ties = picture.shapes.filter((shape) => shape.kind === 'line' && shape.role === 'now')
    expect(ties).toHaveLength(2)
    expect(picture.shapes.some((shape) => shape.kind === 'text' && shape.text === '500')).toBe(true)
  })

  test('all bars at once show each lap, whatever mat it belongs to', () => {
    const steel = { ...examplePlan(drawing).steel, placed: cage.placed, laps: cage.laps }
    const picture = steelPicture({ drawing, steel, frame: DESK })
    expect(picture.shapes.filter((shape) => shape.role === 'lap')).toHaveLength(cage.laps.length)
    const top = steelPicture({ drawing, steel, frame: DESK, layer: 'top' })
    expect(top.shapes.some((shape) => shape.role === 'lap')).toBe(false)
  })

  test('without heights there is no section', () => {
    const flat = cage.placed.map((bar) => ({ ...bar, height: null, centreline: null }))
    expect(steelSection({ drawing, steel: { placed: flat }, frame: DESK, along: 'x' })).toBeNull()
  })
})
