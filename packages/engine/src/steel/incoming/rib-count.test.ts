import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countRibs, type Rib } from './rib-count.ts'

const ribs = (text: string): Rib[] => [...text].filter((each) => each === 't' || each === 'n') as Rib[]

/** One round of a mark: start pair, then each group of normal ribs closed by a thickened one; the last by the next start pair. */
function round(counts: readonly number[]): string {
  return `tt${counts.map((count) => 'n'.repeat(count)).join('t')}`
}

describe('ribs counted along the bar', () => {
  it('waits for the start pair: a single thickened rib starts nothing', () => {
    expect(countRibs(ribs('nntnnntnn')).state).toBe('start')
  })

  it('counts groups between thickened ribs and asks for a second round', () => {
    const read = countRibs(ribs(`nnn${round([5, 2, 1])}tt`))
    expect(read.state).toBe('once')
    expect(read.next).toContain('second round')
  })

  it('agrees with itself on a second round, or says that it does not', () => {
    const twice = countRibs(ribs(`${round([5, 2, 1])}${round([5, 2, 1])}tt`))
    expect(twice.state).toBe('twice')
    expect(countRibs(ribs(`${round([5, 2, 1])}${round([5, 3, 1])}tt`)).state).toBe('differs')
  })

  it('gives the same groups for any mark, wherever the count begins', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 5 }),
        fc.nat({ max: 8 }),
        (counts, before) => {
          const read = countRibs(ribs(`${'n'.repeat(before)}${round(counts)}${round(counts)}tt`))
          expect(read.state).toBe('twice')
          expect(read.counts).toEqual(counts)
          expect(read.otherWay).toEqual([...counts].reverse())
        },
      ),
    )
  })
})
