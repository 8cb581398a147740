import type { CodeFamily } from '../family.ts'
import { lift } from './lift.ts'

export const nz: CodeFamily = {
  id: 'nz',
  name: 'New Zealand',
  editions: ['NZS 3101.1:2006'],
  lift,
}
