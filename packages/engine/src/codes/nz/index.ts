import type { CodeFamily } from '../family.ts'
import { cure } from './cure.ts'
import { lift } from './lift.ts'
import { mould } from './mould.ts'
import { pour } from './pour.ts'
import { quality } from './quality.ts'
import { steel } from './steel.ts'

export const nz: CodeFamily = {
  id: 'nz',
  name: 'New Zealand',
  editions: ['NZS 3101.1:2006', 'NZS 3104, edition not noted', 'NZS 3109:1997', 'AS/NZS 4671:2019'],
  lift,
  mould,
  pour,
  steel,
  cure,
  quality,
}
