import { unknown } from '../../working/worked.ts'
import type { LiftRules } from '../lift-rules.ts'
import { anchor } from './anchor.ts'
import { INSERT_MARGIN } from './osha-1926-704/insert-margin.ts'
import { bendingFactor } from './pci-handbook-7/bending-factor.ts'
import { liftTension } from './pci-handbook-7/lift-tension.ts'

export const lift: LiftRules = {
  // The handbook's multipliers are for bending of the panel, not for inserts.
  factor: () => unknown('factor for suction and impact at inserts: no confirmed value'),
  bendingFactor,
  largestAngle: {
    value: 60,
    source: {
      standard: 'ASME B30.9, edition not noted',
      clause: 'sling angles, 30° to the horizontal',
      status: 'from memory',
    },
  },
  leastStrength: null,
  insertMargin: INSERT_MARGIN,
  tension: liftTension,
  anchor,
}
