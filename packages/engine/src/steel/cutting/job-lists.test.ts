import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ScheduledBar } from '../steel-plan.ts'
import { jobCutLists } from './job-lists.ts'
import { parseCutList } from './list.ts'
import { cutPlan } from './plan.ts'

function bar(mark: string, more: Partial<ScheduledBar> = {}): ScheduledBar {
  return {
    mark,
    shape: 'straight',
    diameter: 12,
    grade: '500E',
    role: 'main',
    count: 4,
    cutLength: 2500.4,
    legs: [2500.4],
    turns: [],
    inside: null,
    mass: 9,
    ...more,
  }
}

const STOCK = [
  { diameter: 12, grade: '500E', lengths: [6000, 9000] },
  { diameter: 16, grade: '500E', lengths: [12_000] },
]

describe('cutting lists of a job', () => {
  it('one for each diameter and grade, thickest first, with panel, order and machine', () => {
    const { lists, notCut } = jobCutLists({
      panels: [
        { panel: 'W1', order: 2, bars: [bar('A'), bar('B', { turns: [90], legs: [2000, 500] })] },
        { panel: 'W2', order: 1, bars: [bar('A', { diameter: 16, cutLength: 11_999.6 })] },
      ],
      stock: STOCK,
      offcuts: [{ diameter: 12, grade: '500E', length: 2600, count: 2 }],
      kerf: 2,
      keep: 800,
      machineOf: ({ diameter }) => `bender ${diameter}`,
    })
    expect(notCut).toEqual([])
    expect(lists).toEqual([
      {
        diameter: 16,
        grade: '500E',
        list: {
          stock: [{ length: 12_000 }],
          kerf: 2,
          keep: 800,
          pieces: [{ length: 12_000, count: 4, mark: 'A', panel: 'W2', order: 1 }],
        },
      },
      {
        diameter: 12,
        grade: '500E',
        list: {
          stock: [{ length: 6000 }, { length: 9000 }],
          offcuts: [{ length: 2600, count: 2 }],
          kerf: 2,
          keep: 800,
          pieces: [
            { length: 2500, count: 4, mark: 'A', panel: 'W1', order: 2 },
            { length: 2500, count: 4, mark: 'B', panel: 'W1', machine: 'bender 12', order: 2 },
          ],
        },
      },
    ])
  })

  it.each([
    [bar('A', { cutLength: Number.NaN }), 'length not known', 9000],
    [bar('A', { cutLength: 0.2 }), 'length not known', 9000],
    [bar('A', { grade: '300E' }), 'no stock of this diameter and grade', null],
    [bar('A', { cutLength: 9000.6 }), 'longer than every bar', 9000],
  ])('%# a bar that cannot be cut is told, not dropped', (one, reason, longest) => {
    const { lists, notCut } = jobCutLists({ panels: [{ panel: 'W1', bars: [one] }], stock: STOCK })
    expect(lists).toEqual([])
    expect(notCut).toEqual([{ panel: 'W1', mark: 'A', reason, longest }])
  })

  it('property (seed 812): every bar is in a list that can be read, or told; none twice', async () => {
    const bars = fc.array(
      fc.record({
        diameter: fc.constantFrom(12, 16, 20),
        cutLength: fc.integer({ min: 100, max: 13_000 }),
        count: fc.integer({ min: 1, max: 30 }),
      }),
      { minLength: 1, maxLength: 12 },
    )
    await fc.assert(
      fc.asyncProperty(bars, async (made) => {
        const panels = [{ panel: 'W1', bars: made.map((each, index) => bar(`B${index}`, each)) }]
        const { lists, notCut } = jobCutLists({ panels, stock: STOCK })
        const told = new Set(notCut.map(({ mark }) => mark))
        for (const { list } of lists) {
          const plan = await cutPlan({ list: parseCutList(list), within: 3 })
          for (const { pieces, count } of plan.bars) {
            for (const piece of pieces) expect(told.has(piece.mark ?? '') || count < 1).toBe(false)
          }
        }
        const listed = lists.flatMap(({ list }) => list.pieces.map(({ mark }) => mark))
        expect([...listed, ...told].sort()).toEqual(made.map((_, index) => `B${index}`).sort())
      }),
      { seed: 812, numRuns: 15 },
    )
  })
})

describe('cutting from what is there', () => {
  it('takes counted bars alone for the steel that they are of, and the yard’s list for the rest', () => {
    const { lists } = jobCutLists({
      panels: [{ panel: 'W1', bars: [bar('A'), bar('B', { diameter: 16 })] }],
      stock: STOCK,
      counted: [{ diameter: 12, grade: '500E', length: 5990, count: 3 }],
    })
    expect(lists.map(({ diameter, list }) => [diameter, list.stock])).toEqual([
      [16, [{ length: 12_000 }]],
      [12, [{ length: 5990, count: 3 }]],
    ])
  })

  it('says so where no counted bar is long enough', () => {
    const { notCut } = jobCutLists({
      panels: [{ panel: 'W1', bars: [bar('A')] }],
      stock: STOCK,
      counted: [{ diameter: 12, grade: '500E', length: 2000, count: 30 }],
    })
    expect(notCut).toEqual([{ panel: 'W1', mark: 'A', reason: 'longer than every bar', longest: 2000 }])
  })
})
