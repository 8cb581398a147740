import type { CodeFamily } from '../family.ts'
import { cure } from './cure.ts'
import { lift } from './lift.ts'
import { mould } from './mould.ts'
import { pour } from './pour.ts'
import { quality } from './quality.ts'
import { steel } from './steel.ts'

export const us: CodeFamily = {
  id: 'us',
  name: 'United States',
  editions: [
    'ACI 318-19',
    'PCI MNL-135-00',
    'PCI Design Handbook, 7th edition',
    'ASTM C94/C94M-21',
    'ACI 117-10',
    'ASTM A615/A706, edition not noted',
  ],
  lift,
  mould,
  pour,
  steel,
  cure,
  quality,
}
