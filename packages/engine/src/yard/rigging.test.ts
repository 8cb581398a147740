import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { parseYard } from './yard.ts'

function yard(rigging: object): unknown {
  return {
    format: 'castwright.yard/1',
    name: 'Test Lane',
    code: 'eu',
    timezone: 'Europe/Dublin',
    rigging: [{ mark: 'R4', legs: 4, length: 4000, rated: 8000, ...rigging }],
  }
}

function issues(rigging: object): string[] {
  try {
    parseYard(yard(rigging))
    return []
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return error.issues.map(({ path, found }) => `${path}: ${found}`)
  }
}

describe('rigging of a yard', () => {
  it('takes pairs of legs, stiffness, length error and top slings', () => {
    const pairs = [
      [1, 3],
      [2, 4],
    ]
    expect(issues({ pairs, stiffness: 3, error: 0, top: 3000 })).toEqual([])
    expect(issues({ top: 'middle', spreader: 3000 })).toEqual([])
  })

  it.each([
    [{ pairs: [[1, 5]] }, 'rigging[0].pairs[0]: leg 5'],
    [{ pairs: [[1, 1]] }, 'rigging[0].pairs[0]: leg 1 again'],
    [
      {
        pairs: [
          [1, 2],
          [2, 3],
        ],
      },
      'rigging[0].pairs[1]: leg 2 again',
    ],
    [{ stiffness: 0 }, 'rigging[0].stiffness: 0'],
    [{ error: -1 }, 'rigging[0].error: -1'],
  ])('refuses %j', (rigging, expected) => {
    expect(issues(rigging)).toEqual([expected])
  })

  it('refuses a top sling of another word', () => {
    expect(issues({ top: 'end' }).length).toBeGreaterThan(0)
  })
})
