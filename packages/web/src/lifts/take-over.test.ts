import { DRAWING_FORMAT, type Drawing, parseDrawing } from '@castwright/engine/panel'
import { describe, expect, it } from 'vitest'
import { keepDraft, readKeptDraft, type TextStorage } from '../drawing/kept-draft.ts'
import { takeOver } from './take-over.ts'

function storage(): TextStorage {
  const kept = new Map<string, string>()
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
    removeItem: (key) => void kept.delete(key),
  }
}

const drawing: Drawing = parseDrawing({
  format: DRAWING_FORMAT,
  mark: 'W1',
  outline: [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
  inserts: [{ mark: 'A', at: [500, 500], kind: 'face', type: 'F75' }],
})
const inserts = [{ mark: 'A', at: [820, 640] as [number, number], kind: 'face' as const, type: 'F75' }]

describe('taking a trial into a new revision', () => {
  it('fills the next revision with the drawing in force and the inserts as tried', () => {
    const kept = storage()
    takeOver({ storage: kept, drawing, job: 'J', mark: 'W1', revision: 'B', inserts })
    const draft = readKeptDraft(kept, 'J/W1')
    expect(draft).toMatchObject({ job: 'J', mark: 'W1', revision: 'C', length: '4000', thickness: '150' })
    expect(draft?.inserts).toEqual([{ mark: 'A', x: '820', y: '640', kind: 'face', type: 'F75' }])
  })

  it('keeps what was typed there before', () => {
    const kept = storage()
    takeOver({ storage: kept, drawing, job: 'J', mark: 'W1', revision: 'B', inserts })
    const before = readKeptDraft(kept, 'J/W1')
    if (before === null) throw new Error('no draft')
    keepDraft(kept, 'J/W1', { ...before, thickness: '160', inserts: [] })
    takeOver({ storage: kept, drawing, job: 'J', mark: 'W1', revision: 'B', inserts })
    expect(readKeptDraft(kept, 'J/W1')?.thickness).toBe('160')
    expect(readKeptDraft(kept, 'J/W1')?.inserts).toHaveLength(1)
  })
})
