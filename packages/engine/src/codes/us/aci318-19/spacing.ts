import type { Source } from '../../../working/source.ts'
import type { ClearSpacingRule } from '../../clear-spacing.ts'

const CLAUSE: Source = { standard: 'ACI 318-19', clause: '25.2.1', status: 'from memory' }

/** Walls and slabs: 1 in, the bar, 4/3 of the aggregate. */
export const CLEAR_SPACING: ClearSpacingRule = {
  perDiameter: 1,
  perAggregate: 4 / 3,
  added: 0,
  least: 25.4,
  source: CLAUSE,
}
