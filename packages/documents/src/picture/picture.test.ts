import { type Drawing, parseDrawing } from '@castwright/engine/panel'
import { STEP_IDS } from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expectClearLabels } from './clear-labels.ts'
import { EXAMPLE_DRAWINGS } from './example-drawings.ts'
import { examplePlan } from './example-plan.ts'
import { panelPicture } from './panel-picture.ts'
import { type Frame, panelPoint, picturePoint } from './picture.ts'
import { stepPicture, withDefects } from './step-picture.ts'
import { svgText, toSvgElements } from './svg.ts'

const PHONE: Frame = { width: 328, height: 420, text: 13 }
const DESK: Frame = { width: 860, height: 560, text: 14 }
const PAPER: Frame = { width: 500, height: 300, text: 8, paper: 72 / 25.4 }

describe('pictures of each step', () => {
  for (const drawing of EXAMPLE_DRAWINGS) {
    for (const step of STEP_IDS) {
      test(`${drawing.mark}, ${step}: no label meets another or is cut, on phone, desk and paper`, () => {
        for (const frame of [PHONE, DESK, PAPER]) {
          const picture = stepPicture({ step, drawing, plan: examplePlan(drawing), frame })
          expectClearLabels(picture)
          expect(picture.width).toBe(frame.width)
          expect(picture.height).toBeLessThanOrEqual(frame.height + 1e-6)
        }
      })
    }
  }
})

describe('golden pictures', () => {
  for (const drawing of EXAMPLE_DRAWINGS) {
    for (const step of ['finish', 'cage', 'mould', 'set', 'place', 'strip', 'store', 'as-built'] as const) {
      test(`${drawing.mark}, ${step}`, async () => {
        const picture = stepPicture({ step, drawing, plan: examplePlan(drawing), frame: PHONE })
        await expect(svgText(toSvgElements(picture))).toMatchFileSnapshot(
          `golden/${drawing.mark}-${step}.golden.svg`,
        )
      })
    }
  }
})

describe('any panel', () => {
  /** A panel with openings anywhere; drawings that cannot be built are skipped. */
  const drawn = fc
    .record({
      length: fc.integer({ min: 300, max: 15_000 }),
      width: fc.integer({ min: 300, max: 6000 }),
      gable: fc.integer({ min: 0, max: 2000 }),
      holes: fc.array(
        fc.record({
          x: fc.double({ min: 0, max: 1, noNaN: true }),
          y: fc.double({ min: 0, max: 1, noNaN: true }),
          w: fc.integer({ min: 10, max: 2500 }),
          h: fc.integer({ min: 10, max: 2500 }),
        }),
        { maxLength: 6 },
      ),
      inserts: fc.array(
        fc.record({
          x: fc.double({ min: 0, max: 1, noNaN: true }),
          y: fc.double({ min: 0, max: 1, noNaN: true }),
          mark: fc.string({ minLength: 1, maxLength: 9 }),
        }),
        { maxLength: 8 },
      ),
    })
    .map(({ length, width, gable, holes, inserts }): Drawing | null => {
      try {
        return parseDrawing({
          format: 'castwright.drawing/1',
          mark: 'P',
          thickness: 150,
          concrete: { strength: 40 },
          outline: [
            [0, 0],
            [length, 0],
            [length, width],
            [length / 2, width + gable + 1],
            [0, width],
          ],
          openings: holes.map(({ x, y, w, h }, index) => {
            const [left, low] = [x * length, y * width]
            return {
              mark: `O${index}`,
              outline: [
                [left, low],
                [left + w, low],
                [left + w, low + h],
                [left, low + h],
              ],
            }
          }),
          inserts: inserts.map(({ x, y, mark }, index) => ({
            mark: `${index}${mark}`,
            at: [x * length, y * width],
            kind: 'face',
          })),
        })
      } catch (error) {
        if (error instanceof InputError) return null
        throw error
      }
    })
    .filter((drawing) => drawing !== null)

  test('no label meets another or is cut, at any width', () => {
    fc.assert(
      fc.property(
        drawn,
        fc.integer({ min: 280, max: 1200 }),
        fc.constantFrom(...STEP_IDS),
        (drawing, width, step) => {
          const frame = { width, height: 460, text: 13 }
          expectClearLabels(stepPicture({ step, drawing, plan: examplePlan(drawing), frame }))
        },
      ),
      { seed: 20261125, numRuns: 150 },
    )
  })

  test('a place on the picture leads back to the same place on the panel', () => {
    fc.assert(
      fc.property(
        drawn,
        fc.integer({ min: -5000, max: 20_000 }),
        fc.integer({ min: -5000, max: 9000 }),
        (drawing, x, y) => {
          const picture = panelPicture({ drawing, frame: PHONE })
          const [backX, backY] = panelPoint(picture, picturePoint(picture, [x, y]))
          expect(backX).toBeCloseTo(x, 6)
          expect(backY).toBeCloseTo(y, 6)
        },
      ),
      { seed: 7, numRuns: 100 },
    )
  })

  test('lengths are true to scale in both directions', () => {
    const [drawing] = EXAMPLE_DRAWINGS
    const picture = panelPicture({ drawing: drawing as Drawing, frame: PHONE })
    const outline = picture.shapes.find((shape) => shape.kind === 'polygon' && shape.role === 'outline')
    const points = outline?.kind === 'polygon' ? outline.rings.flat() : []
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(6000 * picture.scale, 6)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(3000 * picture.scale, 6)
  })
})

test('text on a screen is never below 12 px, whatever is asked', () => {
  const [drawing] = EXAMPLE_DRAWINGS
  const picture = panelPicture({ drawing: drawing as Drawing, frame: { width: 300, height: 300, text: 5 } })
  const sizes = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.size] : []))
  expect(Math.min(...sizes)).toBe(12)
})

test('on paper the scale is a round one', () => {
  const [drawing] = EXAMPLE_DRAWINGS
  const picture = panelPicture({ drawing: drawing as Drawing, frame: PAPER })
  expect(picture.ratio).toBe(40)
  expect(picture.scale).toBeCloseTo(72 / 25.4 / 40, 9)
})

test('a defect is shown where it was found', () => {
  const [drawing] = EXAMPLE_DRAWINGS
  const picture = withDefects(panelPicture({ drawing: drawing as Drawing, frame: PHONE }), [
    { at: [3000, 1500], number: 1 },
  ])
  const mark = picture.shapes.at(-1)
  expect(mark?.kind === 'circle' ? panelPoint(picture, mark.at) : null).toEqual([
    expect.closeTo(3000, 6),
    expect.closeTo(1500, 6),
  ])
})
