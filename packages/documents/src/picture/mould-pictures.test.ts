import { codeFamily } from '@castwright/engine/codes'
import { measuredMould, mouldSurvey } from '@castwright/engine/mould'
import type { Point, Ring } from '@castwright/engine/panel'
import { describe, expect, test } from 'vitest'
import { expectClearLabels } from './clear-labels.ts'
import { timesLarger } from './enlarged.ts'
import { EXAMPLE_DRAWINGS } from './example-drawings.ts'
import { examplePlan } from './example-plan.ts'
import { formSectionPicture } from './form-section-picture.ts'
import { mouldMeasuredPicture } from './mould-measured-picture.ts'
import type { Frame, Picture } from './picture.ts'
import { railBowPicture } from './rail-bow-picture.ts'

const FRAMES: readonly Frame[] = [
  { width: 328, height: 420, text: 13 },
  { width: 860, height: 560, text: 14 },
  { width: 500, height: 260, text: 8, paper: 72 / 25.4 },
]

const fits = (picture: Picture | null, frame: Frame): void => {
  expect(picture).not.toBeNull()
  if (picture === null) return
  expectClearLabels(picture)
  expect(picture.width).toBe(frame.width)
  expect(picture.height).toBeLessThanOrEqual(frame.height + 1e-6)
}

describe('pictures of the mould', () => {
  for (const drawing of EXAMPLE_DRAWINGS) {
    const outline = drawing.outline as unknown as Ring
    const survey = mouldSurvey(outline)
    const moved = outline.map(([x, y], k): Point => (k === 1 ? [x + 7, y - 6] : [x, y]))
    const taped = Object.fromEntries(
      survey.lengths.map(({ id, from, to }) => {
        const [a, b] = [moved[from] as Point, moved[to] as Point]
        return [id, Math.hypot(a[0] - b[0], a[1] - b[1])]
      }),
    )
    const { shape } = measuredMould({ drawing, taped, heights: [], family: codeFamily('eu') })
    const { mould } = examplePlan(drawing)

    test(`${drawing.mark}: what is to be taped, and the mould as it was set up, read on phone, desk and paper`, () => {
      for (const frame of FRAMES) {
        const part = new Set(survey.lengths.slice(0, 2).map(({ id }) => id))
        fits(mouldMeasuredPicture({ drawing, survey, taped: part, shape: null, frame }), frame)
        const picture = mouldMeasuredPicture({ drawing, survey, taped: part, shape, frame })
        fits(picture, frame)
        expect(picture.title).toContain('corner 2 out by 9 mm')
        expect(picture.key.map(({ text }) => text).join()).toMatch(/times larger|to scale/)
      }
    })

    test(`${drawing.mark}: section of the form and bow of the rail read on phone, desk and paper`, () => {
      for (const frame of FRAMES) {
        for (const height of [null, drawing.thickness + 20])
          fits(
            formSectionPicture({ mark: drawing.mark, thickness: drawing.thickness, height, mould, frame }),
            frame,
          )
        fits(railBowPicture({ mark: drawing.mark, mould, frame }), frame)
      }
    })
  }

  test('without a thrust or a form there is nothing to draw', () => {
    const [drawing] = EXAMPLE_DRAWINGS
    if (drawing === undefined) throw new Error('expected an example')
    const frame = FRAMES[0] as Frame
    const mould = { ...examplePlan(drawing).mould, thrust: null, sides: [] }
    expect(formSectionPicture({ mark: 'P', thickness: 150, height: null, mould, frame })).toBeNull()
    expect(railBowPicture({ mark: 'P', mould, frame })).toBeNull()
  })

  test('a deviation is enlarged by a round number that keeps it in its room', () => {
    expect([timesLarger(7, 270), timesLarger(0.015, 30), timesLarger(0, 30), timesLarger(90, 30)]).toEqual([
      20, 2000, 1, 1,
    ])
  })
})
