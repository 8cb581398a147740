import type { TrialView } from '@castwright/engine/lift/trial'
import type { DrawnInsert } from '@castwright/engine/panel'
import { describe, expect, it } from 'vitest'
import { isMoved, nextTrial, startTrial, type TrialState } from './trial-state.ts'

const inserts: DrawnInsert[] = [
  { mark: 'A', at: [500, 500], kind: 'face' },
  { mark: 'B', at: [900, 500], kind: 'face' },
]

function opened(): TrialState {
  const answer = { kind: 'opened', id: 0, inserts, proposed: false } as const
  return nextTrial(startTrial('release'), { kind: 'answer', answer })
}

function viewed(state: TrialState, change: Partial<TrialView> = {}): TrialState {
  const { stage, places, angle } = state
  const view = { stage, places, angle, quality: 'full', ...change } as TrialView
  return nextTrial(state, { kind: 'answer', answer: { kind: 'view', id: 1, view, stages: null } })
}

describe('a trial', () => {
  it('begins where the drawing has its inserts', () => {
    const state = opened()
    expect(state.places).toEqual([
      [500, 500],
      [900, 500],
    ])
    expect(isMoved(state)).toBe(false)
    expect(state.waits).toBe(true)
  })

  it('keeps the first full view of each stage as the drawn one', () => {
    const drawn = viewed(opened())
    const moved = viewed(nextTrial(drawn, { kind: 'place', index: 0, at: [510, 500] }))
    expect(isMoved(moved)).toBe(true)
    expect(moved.drawn.release).toBe(drawn.view)
    expect(moved.view).not.toBe(drawn.view)
  })

  it('never takes a moved view for the drawn one', () => {
    const moved = viewed(nextTrial(opened(), { kind: 'place', index: 0, at: [510, 500] }))
    expect(moved.drawn.release).toBeUndefined()
  })

  it('waits while the view is of other places than the finger', () => {
    const moved = nextTrial(viewed(opened()), { kind: 'place', index: 0, at: [510, 500] })
    expect(
      viewed(moved, {
        places: [
          [505, 500],
          [900, 500],
        ],
      }).waits,
    ).toBe(true)
    expect(viewed(moved).waits).toBe(false)
  })

  it('does not show the view of a stage that was left', () => {
    const left = nextTrial(opened(), { kind: 'stage', stage: 'store' })
    expect(viewed(left, { stage: 'release' }).view).toBeNull()
  })

  it('says why there is no view', () => {
    const answer = { kind: 'refused', id: 1, why: ['off the concrete'], ask: null, stages: null } as const
    expect(nextTrial(opened(), { kind: 'answer', answer })).toMatchObject({
      view: null,
      why: ['off the concrete'],
      waits: false,
    })
  })
})
