import type { NightCase } from '@castwright/engine/cure/night'
import { describe, expect, it } from 'vitest'
import { type NightQuestion, Nights, type NightWorker } from './nights.ts'
import { WorkerAnswers } from './worker-answers.ts'

function start() {
  const asked: NightQuestion[] = []
  const worker: NightWorker = {
    postMessage: (question) => asked.push(question),
    onmessage: null,
    onerror: null,
  }
  const nights = new Nights(() => worker)
  const answer = (gap: string): void => {
    const night = { known: false, gaps: [gap] } as const
    worker.onmessage?.({ data: { id: asked.at(-1)?.id ?? -1, night } })
  }
  return { nights, asked, worker, answer }
}

const caseOf = (wanted: number): NightCase => ({ wanted }) as NightCase

describe('nights', () => {
  it('are computed once for a case, also read again, and anew for what is tried on it', () => {
    const { nights, asked, answer } = start()
    expect(nights.night(caseOf(15)).status).toBe('computing')
    nights.night(caseOf(15))
    expect(asked).toHaveLength(1)
    answer('weather.air')
    expect(nights.night(caseOf(15))).toEqual({ status: 'none', gaps: ['weather.air'] })
    nights.night(caseOf(15), { coverOff: 20 })
    expect(asked.map(({ change }) => change)).toEqual([null, { coverOff: 20 }])
  })

  it('that break say so', () => {
    const { nights, worker } = start()
    nights.night(caseOf(15))
    worker.onerror?.({ message: '' })
    expect(nights.night(caseOf(15))).toMatchObject({
      status: 'none',
      gaps: [expect.stringContaining('did not load')],
    })
  })
})

describe('answers of a worker', () => {
  it('are forgotten from the oldest on, what is still asked last', () => {
    const asked: string[] = []
    const answers = new WorkerAnswers<{ id: number; key: string }, { id: number }, string>({
      start: () => {
        const worker = {
          postMessage: ({ id, key }: { id: number; key: string }) => {
            asked.push(key)
            worker.onmessage?.({ data: { id } })
          },
          onmessage: null as ((event: { data: { id: number } }) => void) | null,
          onerror: null,
        }
        return worker
      },
      computing: 'computing',
      ready: () => 'ready',
      broke: (message) => message,
      most: 2,
    })
    const ask = (key: string): string => answers.ask(key, (id) => ({ id, key }))
    for (const key of ['a', 'b', 'c', 'c', 'a']) ask(key)
    expect(asked).toEqual(['a', 'b', 'c', 'a'])
    expect(ask('c')).toBe('ready')
  })
})
