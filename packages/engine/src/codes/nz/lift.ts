import { commonPractice } from '../../working/source.ts'
import { unknown } from '../../working/worked.ts'
import type { LiftRules } from '../lift-rules.ts'
import { liftTension } from './nzs3101-2006/lift-tension.ts'

const noFactor = () => unknown('load factor for suction and impact: no confirmed value')

export const lift: LiftRules = {
  factor: noFactor,
  bendingFactor: noFactor,
  largestAngle: { value: 60, source: commonPractice('legs not more than 120° apart') },
  leastStrength: null,
  insertMargin: null,
  tension: liftTension,
  anchor: null,
}
