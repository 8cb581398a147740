import type { CodeFamily } from '../family.ts'
import { lift } from './lift.ts'

export const au: CodeFamily = {
  id: 'au',
  name: 'Australia',
  editions: ['AS 3600:2018', 'AS 3850:2003'],
  lift,
}
