import type { Source } from '../../working/source.ts'
import type { ActRule } from '../bar-acts.ts'

const WELDING: Source = { standard: 'AS/NZS 1554.3, edition not noted', clause: '', status: 'seen' }

/** Tack welds between bars that carry load or stand in a building that must outlast an earthquake. */
export const NO_TACK_WELD: ActRule = {
  acts: ['tack weld'],
  answer: 'no',
  conditions: ['No tack welds on structural bars, in any grade: tie them with wire.'],
  source: { ...WELDING, clause: '3.3.1' },
}

/** Plain rolled bar of 250 and 300 MPa. */
export const WELD_MILD: ActRule = {
  acts: ['weld'],
  grades: ['300E', '250N'],
  answer: 'yes',
  conditions: ['To AS/NZS 1554.3, by a procedure and a welder qualified for it.'],
  source: WELDING,
}
