import type { CodeFamily } from '../family.ts'
import { lift } from './lift.ts'

export const us: CodeFamily = {
  id: 'us',
  name: 'United States',
  editions: ['ACI 318-19', 'PCI Design Handbook, 7th edition'],
  lift,
}
