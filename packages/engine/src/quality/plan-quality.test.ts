import { describe, expect, it } from 'vitest'
import { codeFamily, FAMILIES } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import { judge } from '../working/asked.ts'
import { planQuality } from './plan-quality.ts'

function panel(outline: number[][]) {
  return panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'P1',
      outline,
      thickness: 160,
      concrete: { strength: 40 },
    }),
  )
}
const RECTANGLE = panel([
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [0, 3000],
])
const GABLE = panel([
  [0, 0],
  [6000, 0],
  [6000, 2000],
  [3000, 3000],
  [0, 2000],
])

describe('the quality plan', () => {
  const plan = planQuality({ panel: RECTANGLE, yard: null, family: codeFamily('eu') })
  const asked = (id: string) => plan.toRecord.find((item) => item.id === id)

  it('asks for sizes between what the family allows, both ends included', () => {
    expect(asked('built-length')).toMatchObject({ low: 5984, high: 6016, unit: 'mm' })
    const length = asked('built-length')
    if (length === undefined) throw new Error('no length asked')
    expect([5983.9, 5984, 6016, 6016.1].map((value) => judge(length, value))).toEqual([
      'fail',
      'pass',
      'pass',
      'fail',
    ])
  })

  it('asks for bow and warp, not known until a limit is entered', () => {
    for (const id of ['built-bow', 'built-warp']) {
      const item = asked(id)
      if (item === undefined) throw new Error(`no ${id}`)
      expect(judge(item, 0)).toBe('unknown')
      expect(item.unknown?.[0]).toMatch(/no confirmed value/)
    }
    expect(plan.unknown).toHaveLength(2)
  })

  it('asks for no diagonals where the outline has none, and says so', () => {
    const gable = planQuality({ panel: GABLE, yard: null, family: codeFamily('eu') })
    expect(gable.toRecord.some(({ id }) => id === 'built-squareness')).toBe(false)
    expect(gable.unknown.join()).toMatch(/squareness/)
  })

  it.each(Object.keys(FAMILIES) as (keyof typeof FAMILIES)[])(
    'names each item once in %s, in the order of the steps',
    (id) => {
      const { toRecord } = planQuality({ panel: RECTANGLE, yard: null, family: codeFamily(id) })
      const ids = toRecord.map((item) => item.id)
      expect(new Set(ids).size).toBe(ids.length)
      expect([...new Set(toRecord.map(({ step }) => step))]).toEqual([
        'as-built',
        'store',
        'load',
        'hand-over',
      ])
    },
  )

  it('takes a limit that an engineer entered', () => {
    const limits = {
      'quality.warp': {
        entry: 'e1',
        value: 9,
        unit: 'mm',
        standard: 'yard standard',
        edition: '2026',
        by: { id: 'i', name: 'I. Engineer', role: 'engineer' },
      },
    } as const
    const entered = planQuality({ panel: RECTANGLE, yard: null, family: codeFamily('eu'), limits })
    expect(entered.tolerances.find(({ what }) => what === 'warp')).toMatchObject({
      high: 9,
      source: { status: 'entered' },
    })
  })
})
