import { describe, expect, it } from 'vitest'
import { Tries } from './tries.ts'

function setting() {
  let now = 1_000_000
  const tries = new Tries(() => now, { free: 3, first: 1000, most: 8000, forget: 60_000, kept: 3 })
  return { tries, pass: (ms: number) => (now += ms) }
}

describe('tries', () => {
  it('lets the free ones through and then makes each further one wait twice as long', () => {
    const { tries, pass } = setting()
    tries.count('a')
    tries.count('a')
    expect(tries.wait('a')).toBe(0)
    tries.count('a')
    expect(tries.wait('a')).toBe(1000)
    pass(999)
    expect(tries.wait('a')).toBe(1)
    pass(1)
    expect(tries.wait('a')).toBe(0)
    tries.count('a')
    expect(tries.wait('a')).toBe(2000)
  })

  it('never waits longer than the longest wait', () => {
    const { tries } = setting()
    for (let i = 0; i < 2000; i++) tries.count('a')
    expect(tries.wait('a')).toBe(8000)
  })

  it('counts each name for itself', () => {
    const { tries } = setting()
    for (let i = 0; i < 5; i++) tries.count('a')
    expect(tries.wait('b')).toBe(0)
  })

  it('forgets after a while, counted from the end of the wait', () => {
    const { tries, pass } = setting()
    for (let i = 0; i < 4; i++) tries.count('a')
    pass(2000 + 60_001)
    tries.count('a')
    expect(tries.wait('a')).toBe(0)
  })

  it('takes a right try back without wiping the wrong ones', () => {
    const { tries } = setting()
    tries.count('a')
    tries.count('a')
    tries.count('a')
    tries.takeBack('a')
    expect(tries.wait('a')).toBe(0)
    tries.count('a')
    expect(tries.wait('a')).toBe(1000)
    tries.clear('a')
    tries.count('a')
    expect(tries.wait('a')).toBe(0)
  })

  it('keeps no more names than it may', () => {
    const { tries } = setting()
    for (let i = 0; i < 5; i++) tries.count('old')
    for (const name of ['b', 'c', 'd']) tries.count(name)
    expect(tries.wait('old')).toBe(0)
  })
})
