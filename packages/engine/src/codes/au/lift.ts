import { commonPractice } from '../../working/source.ts'
import { unknown } from '../../working/worked.ts'
import type { LiftRules } from '../lift-rules.ts'
import { liftFactor } from './as3850-2003/lift-factor.ts'

export const lift: LiftRules = {
  factor: liftFactor,
  bendingFactor: liftFactor,
  largestAngle: { value: 60, source: commonPractice('legs not more than 120° apart') },
  leastStrength: null,
  insertMargin: null,
  tension: () => unknown('tension at handling: no confirmed limit'),
  anchor: null,
}
