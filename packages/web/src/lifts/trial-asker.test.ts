import type { TrialAsk, TrialView } from '@castwright/engine/lift/trial'
import { describe, expect, it } from 'vitest'
import { TrialAsker } from './trial-asker.ts'
import type { TrialAnswer, TrialCase, TrialQuestion, TrialWorker } from './trial-messages.ts'

function start() {
  const asked: TrialQuestion[] = []
  const taken: TrialAnswer[] = []
  const broken: string[] = []
  let ended = 0
  const worker: TrialWorker = {
    postMessage: (question) => asked.push(question),
    terminate: () => {
      ended += 1
    },
    onmessage: null,
    onerror: null,
  }
  const asker = new TrialAsker(
    { start: () => worker, take: (answer) => taken.push(answer), broke: (why) => broken.push(why) },
    { family: 'us' } as TrialCase,
  )
  const answer = (): void => {
    const last = asked.at(-1)
    if (last === undefined) throw new Error('nothing asked')
    const data: TrialAnswer =
      last.kind === 'open'
        ? { kind: 'opened', id: last.id, inserts: [], proposed: false }
        : { kind: 'view', id: last.id, view: last.ask as TrialView, stages: null }
    worker.onmessage?.({ data })
  }
  return { asker, worker, asked, taken, broken, answer, ended: () => ended }
}

function at(x: number): TrialAsk {
  return { stage: 'release', places: [[x, 0]], angle: 0 }
}

describe('moves of a finger', () => {
  it('wait until the panel is open', () => {
    const { asker, asked, answer } = start()
    asker.ask({ kind: 'move', ask: at(1) })
    expect(asked.map(({ kind }) => kind)).toEqual(['open'])
    answer()
    expect(asked.map(({ kind }) => kind)).toEqual(['open', 'move'])
  })

  it('of a row only the first and the newest are asked', () => {
    const { asker, asked, answer, taken } = start()
    answer()
    for (let x = 1; x <= 9; x += 1) asker.ask({ kind: 'move', ask: at(x) })
    answer()
    answer()
    answer()
    const places = asked.flatMap((question) =>
      question.kind === 'open' ? [] : question.ask.places.map(([x]) => x),
    )
    expect(places).toEqual([1, 9])
    expect(taken.filter(({ kind }) => kind === 'view')).toHaveLength(2)
  })

  it('post the places and nothing of the panel', () => {
    const { asker, asked, answer } = start()
    answer()
    asker.ask({ kind: 'move', ask: at(5) })
    expect(asked[1]).toEqual({ kind: 'move', id: 1, ask: at(5) })
  })

  it('are overtaken by letting go', () => {
    const { asker, asked, answer } = start()
    answer()
    asker.ask({ kind: 'move', ask: at(1) })
    asker.ask({ kind: 'move', ask: at(2) })
    asker.ask({ kind: 'settle', ask: at(3) })
    answer()
    expect(asked.map(({ kind }) => kind)).toEqual(['open', 'move', 'settle'])
  })

  it('are answered no more once the panel is left', () => {
    const { asker, asked, answer, taken, ended } = start()
    answer()
    asker.ask({ kind: 'move', ask: at(1) })
    asker.stop()
    answer()
    asker.ask({ kind: 'move', ask: at(2) })
    expect(taken).toHaveLength(1)
    expect(asked).toHaveLength(2)
    expect(ended()).toBe(1)
  })

  it('an answer to another question is not taken', () => {
    const { worker, taken } = start()
    worker.onmessage?.({ data: { kind: 'opened', id: 7, inserts: [], proposed: false } })
    expect(taken).toEqual([])
  })

  it('a worker that breaks says so once', () => {
    const { asker, worker, broken, ended } = start()
    worker.onerror?.({ message: '' })
    worker.onerror?.({ message: 'again' })
    asker.ask({ kind: 'move', ask: at(1) })
    expect(broken).toEqual(['its part of the app did not load'])
    expect(ended()).toBe(1)
  })
})
