import type { LiftRules } from '../lift-rules.ts'
import { anchor } from './anchor.ts'
import { liftFactor } from './cen-tr15728-2016/lift-factor.ts'
import { liftTension } from './en1992-1-1-2004/lift-tension.ts'

export const lift: LiftRules = {
  factor: liftFactor,
  bendingFactor: liftFactor,
  largestAngle: {
    value: 60,
    source: {
      standard: 'EN 818-4:1996+A1:2008',
      clause: 'rating of multi-leg slings',
      status: 'from memory',
    },
  },
  leastStrength: {
    value: 15,
    source: {
      standard: 'VDI/BV-BS 6205-1:2012',
      clause: 'concrete at the first lift',
      status: 'from memory',
    },
  },
  insertMargin: null,
  tension: liftTension,
  anchor,
}
