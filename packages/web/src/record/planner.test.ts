import type { Drawing } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { emptyPanelFacts } from '@castwright/engine/steps'
import type { Yard } from '@castwright/engine/yard'
import { describe, expect, it } from 'vitest'
import { type PlannedFacts, Planner, type PlanQuestion, type PlanWorker } from './planner.ts'

const yard = { yard: { code: 'eu' } as Yard, limits: {} }

function drawing(mark: string): PlannedFacts {
  return { ...emptyPanelFacts({ job: 'J', mark }), drawing: { mark } as Drawing }
}

function start() {
  const asked: PlanQuestion[] = []
  const workers: PlanWorker[] = []
  const planner = new Planner(() => {
    const worker: PlanWorker = {
      postMessage: (question) => asked.push(question),
      onmessage: null,
      onerror: null,
    }
    workers.push(worker)
    return worker
  })
  const answer = (plan: Plan = {} as Plan): void => {
    const last = asked.at(-1)
    workers.at(-1)?.onmessage?.({ data: { id: last?.id ?? -1, plan } })
  }
  return { planner, asked, workers, answer }
}

describe('plans', () => {
  it('are asked for once and remembered', () => {
    const { planner, asked, answer } = start()
    const w1 = drawing('W1')
    expect(planner.plan(w1, yard).status).toBe('computing')
    planner.plan(w1, yard)
    planner.plan({ ...w1, drawing: { mark: 'W1' } as Drawing }, yard) // the same drawing, read again
    expect(asked).toHaveLength(1)
    answer()
    expect(planner.plan(w1, yard).status).toBe('ready')
    expect(planner.version()).toBe(1)
  })

  it('are made anew when the yard or a limit changes', () => {
    const { planner, asked, answer } = start()
    const w1 = drawing('W1')
    planner.plan(w1, yard)
    answer()
    planner.plan(w1, { ...yard, yard: { code: 'eu', name: 'other' } as Yard })
    answer()
    planner.plan(w1, { ...yard, limits: { tilt: { value: 1 } as never } })
    expect(asked).toHaveLength(3)
  })

  it('are made anew when the chute stands elsewhere', () => {
    const { planner, asked, answer } = start()
    const w1 = drawing('W1')
    planner.plan(w1, yard)
    answer()
    const stand = { value: { x: 6000, y: 0 }, revision: null }
    const place = { ...w1.steps.place, values: { stand } as never }
    planner.plan({ ...w1, steps: { ...w1.steps, place } }, yard)
    expect(asked.map(({ placing }) => placing?.stand)).toEqual([null, [6000, 0]])
  })

  it('come one at a time, what was opened last first', () => {
    const { planner, asked, answer } = start()
    for (const mark of ['A', 'B', 'C']) planner.plan(drawing(mark), yard)
    expect(asked.map((one) => one.drawing.mark)).toEqual(['A'])
    answer()
    answer()
    expect(asked.map((one) => one.drawing.mark)).toEqual(['A', 'C', 'B'])
  })

  it('that break say so, and the next one gets a new worker', () => {
    const { planner, asked, workers, answer } = start()
    const [a, b] = [drawing('A'), drawing('B')]
    planner.plan(a, yard)
    planner.plan(b, yard)
    workers[0]?.onerror?.({ message: 'out of memory' })
    expect(planner.plan(a, yard)).toEqual({
      status: 'none',
      why: 'The plan could not be computed: out of memory',
    })
    expect(workers).toHaveLength(2)
    answer()
    expect(planner.plan(b, yard).status).toBe('ready')
    expect(asked).toHaveLength(2)
  })

  it('are not made without a drawing or a code family', () => {
    const { planner, asked } = start()
    expect(planner.plan(null, yard)).toMatchObject({ status: 'none' })
    expect(planner.plan(drawing('W1'), { yard: null, limits: {} })).toMatchObject({ status: 'none' })
    expect(asked).toEqual([])
  })
})
