import { InputError } from '@castwright/engine/working'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expectClearLabels } from '../picture/clear-labels.ts'
import { shapePicture } from '../picture/steel-layers-shape.ts'
import { type BarTag, barTagText, readBarTag } from './bar-tags-text.ts'

const TAG: BarTag = {
  job: 'Saltmarsh Library',
  panel: 'N 06/Ł',
  revision: 'C',
  mark: 'MX1',
  diameter: 12,
  grade: '500E',
  count: 14,
  cutLength: 5920,
}

describe('the line of a tag', () => {
  it('is one line that a person can read', () => {
    expect(barTagText({ ...TAG, panel: 'N06' })).toBe(
      'castwright.bar/1 Saltmarsh%20Library N06 C MX1 12 500E 14 5920',
    )
  })

  it('comes back as it went in, whatever the words', () => {
    const word = fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' })
    const above = fc.integer({ min: 1, max: 100_000 })
    fc.assert(
      fc.property(
        word,
        word,
        word,
        word,
        word,
        above,
        above,
        above,
        (job, panel, revision, mark, grade, a, b, c) => {
          const tag = { job, panel, revision, mark, grade, diameter: a, count: b, cutLength: c }
          const text = barTagText(tag)
          expect(text).not.toMatch(/[{}\n]/)
          expect(readBarTag(text)).toEqual(tag)
        },
      ),
    )
  })

  it.each([
    ['', 'format'],
    ['castwright.bar/2 a b c d 12 e 1 5', 'format'],
    ['castwright.bar/1 a b c d 12 e 1', 'tag'],
    ['castwright.bar/1 a b c d x e 1 5', 'diameter'],
    ['castwright.bar/1 a b c d 12 e 0 5', 'count'],
    ['castwright.bar/1 a b c d 12 e 1 -5', 'cutLength'],
    ['castwright.bar/1 a%ZZ b c d 12 e 1 5', 'job'],
    ['castwright.bar/1 a b  d 12 e 1 5', 'revision'],
  ])('%j is refused at %s', (text, path) => {
    expect(() => readBarTag(text)).toThrow(InputError)
    try {
      readBarTag(text)
    } catch (error) {
      expect((error as InputError).issues[0]?.path).toBe(path)
    }
  })
})

describe('shape of a bar', () => {
  const bar = (shape: string, legs: number[], turns: number[]) => ({
    mark: 'S1',
    shape,
    diameter: 10,
    legs,
    turns,
    inside: turns.length > 0 ? 40 : null,
  })
  it.each([
    bar('straight', [5920], []),
    bar('L', [600, 300], [90]),
    bar('U', [400, 110, 400], [90, 90]),
    bar('Z', [400, 110, 400], [90, 90]),
    bar('closed', [300, 500, 300, 500, 120], [90, 90, 90, 135]),
    bar('bent', [12000, 20], [45]),
  ])('$shape: no label meets another, each leg is told', (one) => {
    for (const frame of [
      { width: 120, height: 40, text: 8, paper: 1 },
      { width: 300, height: 160, text: 13 },
    ]) {
      const picture = shapePicture({ bar: one, frame })
      expectClearLabels(picture)
      const texts = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
      expect([...texts, ...picture.notes].sort()).toEqual(one.legs.map(String).sort())
      for (const shape of picture.shapes) {
        if (shape.kind !== 'line') continue
        for (const [x, y] of shape.points) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(frame.width)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(picture.height)
        }
      }
    }
  })
})
