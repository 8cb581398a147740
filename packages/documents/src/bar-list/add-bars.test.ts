import { type DrawnBar, parseDrawing } from '@castwright/engine/panel'
import { describe, expect, it } from 'vitest'
import { addBars } from './add-bars.ts'

const PLACED: DrawnBar = {
  bar: 'P1',
  diameter: 12,
  grade: '500E',
  layer: 'mould',
  path: [
    [100, 100],
    [900, 100],
  ],
}
const LISTED: DrawnBar = { bar: 'B1', diameter: 12, grade: '500E', role: 'main', legs: [600], count: 2 }
const DRAWING = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W1',
  code: 'nz',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40, aggregate: 19 },
  cover: { mould: 30, top: 30, edge: 40 },
  steel: [{ layer: 'mould', direction: 'x', diameter: 12, grade: '500E', spacing: 200 }, PLACED, LISTED],
})
const bar = (mark: string): DrawnBar => ({ ...LISTED, bar: mark, legs: [900] })
const add = (marks: readonly string[], existing?: 'refuse' | 'replace' | 'keep') =>
  addBars({
    drawing: DRAWING,
    bars: marks.map(bar),
    family: 'nz',
    ...(existing === undefined ? {} : { existing }),
  })

describe('bars of a list into a drawing', () => {
  it('stand behind what is drawn', () => {
    expect(add(['N1', 'N2']).drawing.steel).toEqual([...(DRAWING.steel ?? []), bar('N1'), bar('N2')])
  })

  it('a mark that is drawn is refused', () => {
    expect(() => add(['B1'])).toThrow('steel[2].bar: found "B1", which is in the list too')
  })

  it('it is replaced where that is said, but never a bar drawn in its place', () => {
    expect(add(['B1'], 'replace').drawing.steel).toEqual([...(DRAWING.steel ?? []).slice(0, 2), bar('B1')])
    expect(() => add(['P1'], 'replace')).toThrow('this one is drawn where it lies')
  })

  it('a mark of the mats is never added a second time: a panel’s own list holds its mats too', () => {
    expect(() => add(['MX1'])).toThrow('laid out by the drawing itself')
    // With a yard of short stock there are more of them.
    expect(() => add(['MX2'])).toThrow('laid out by the drawing itself')
    expect(() => add(['B1/2'])).toThrow('laid out by the drawing itself')
    expect(add(['MY1']).kept).toEqual([])
    expect(() => add(['MX1'], 'replace')).toThrow('laid out by the drawing itself')
  })

  it('what is drawn may stay, then the list’s bars of its marks are left out and named', () => {
    const { drawing, kept } = add(['MX1', 'B1', 'P1', 'N1'], 'keep')
    expect(kept).toEqual(['MX1', 'B1', 'P1'])
    expect(drawing.steel).toEqual([...(DRAWING.steel ?? []), bar('N1')])
    expect(() => add(['MX1'], 'keep')).toThrow('no bar that the drawing has not')
  })
})
