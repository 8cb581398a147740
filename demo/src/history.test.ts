import { it } from 'vitest'
import { tellHistory } from './history.ts'

it('x', () => {
  const t = performance.now()
  const { told, state } = tellHistory()
  console.log(told.length, performance.now() - t, JSON.stringify(state.flags).slice(0, 1500))
})
