import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import { parseYard } from '../yard/yard.ts'
import { planPour } from './plan-pour.ts'
import { insideReach } from './void-reach.ts'

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: box(0, 0, 6000, 3000),
  thickness: 200,
  concrete: { strength: 40 },
}
const FOAM = { mark: 'V1', outline: box(2500, 1000, 1000, 300), depth: 100, above: 50 }
const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'eu',
  timezone: 'Pacific/Fiji',
  vibrators: [{ mark: 'V56', head: 56, radius: 250 }],
})
const planned = (change: object, of: typeof yard | null = yard) =>
  planPour({ panel: panelOf(parseDrawing({ ...DRAWING, ...change })), yard: of, family: codeFamily('eu') })
const reachOf = (change: object, of: typeof yard | null = yard) =>
  planned(change, of).checks.filter(({ id }) => id.startsWith('void-reach:'))

describe('vibrating round void formers', () => {
  // Computed, second method: half the narrower side; of a right triangle its incircle.
  it('the farthest point inside a former', () => {
    expect(insideReach(box(0, 0, 1000, 300))).toBeCloseTo(150, 0)
    expect(
      insideReach([
        [0, 0],
        [300, 0],
        [0, 400],
      ]),
    ).toBeCloseTo(100, 0)
  })

  it('is reached under a narrow former, and not under a wide one', () => {
    expect(reachOf({ voids: [FOAM] })[0]).toMatchObject({
      id: 'void-reach:V1',
      step: 'place',
      verdict: 'pass',
    })
    expect(reachOf({ voids: [{ ...FOAM, outline: box(2500, 1000, 1000, 600) }] })[0]?.verdict).toBe('fail')
  })

  it('is not asked of a recess on the bed, and not known without a vibrator', () => {
    expect(reachOf({ voids: [{ ...FOAM, above: 0 }] })).toEqual([])
    expect(reachOf({ voids: [FOAM] }, null)[0]).toMatchObject({
      verdict: 'unknown',
      unknown: ['yard.vibrators: a vibrator'],
    })
  })

  it('zones hold the concrete of the panel, void formers and ducts taken off', () => {
    const duct = {
      mark: 'P1',
      line: [
        [0, 2500],
        [3000, 2500],
        [5000, 500],
      ],
      diameter: 80,
      height: 100,
    }
    const plan = planned({ voids: [FOAM], ducts: [duct] })
    const sum = (plan.compaction?.zones ?? []).reduce((all, { volume }) => all + volume, 0)
    expect(plan.netVolume).toBeLessThan(3.6 - 0.03)
    expect(sum).toBeCloseTo(plan.netVolume, 6)
  })
})
