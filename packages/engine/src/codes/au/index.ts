import type { CodeFamily } from '../family.ts'
import { cure } from './cure.ts'
import { lift } from './lift.ts'
import { mould } from './mould.ts'
import { pour } from './pour.ts'
import { quality } from './quality.ts'
import { steel } from './steel.ts'

export const au: CodeFamily = {
  id: 'au',
  name: 'Australia',
  editions: ['AS 3600:2018', 'AS 3850:2003', 'AS 1379:2007', 'AS/NZS 4671:2019'],
  lift,
  mould,
  pour,
  steel,
  cure,
  quality,
}
