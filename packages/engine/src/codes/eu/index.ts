import type { CodeFamily } from '../family.ts'
import { cure } from './cure.ts'
import { lift } from './lift.ts'
import { mould } from './mould.ts'
import { pour } from './pour.ts'
import { quality } from './quality.ts'
import { steel } from './steel.ts'

export const eu: CodeFamily = {
  id: 'eu',
  name: 'Europe',
  editions: [
    'EN 1992-1-1:2004',
    'EN 1992-4:2018',
    'CEN/TR 15728:2016',
    'EN 206:2013+A2',
    'EN 13670:2009',
    'EN 13369:2013',
    'EN 14992:2007',
    'EN 10080:2005',
    'BS 8666:2020',
  ],
  lift,
  mould,
  pour,
  steel,
  cure,
  quality,
}
