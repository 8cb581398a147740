import type { CodeFamily } from '../family.ts'
import { lift } from './lift.ts'

export const eu: CodeFamily = {
  id: 'eu',
  name: 'Europe',
  editions: ['EN 1992-1-1:2004', 'CEN/TR 15728:2016'],
  lift,
}
