import { commonPractice, type Source } from '../../working/source.ts'
import { BAR_MASS, G300E, G500E, massTolerance } from '../asnzs4671-2019/bars.ts'
import { delivered } from '../asnzs4671-2019/delivered.ts'
import { identify } from '../asnzs4671-2019/identify.ts'
import { clearSpacing } from '../clear-spacing.ts'
import { metricBar } from '../metric-bar.ts'
import type { SteelRules } from '../steel-rules.ts'
import { acts } from './acts.ts'
import { hookAnchorage } from './nzs3101-2006/bend-anchorage.ts'
import { hookTail } from './nzs3101-2006/bend-tail.ts'
import { compressionLap } from './nzs3101-2006/compression-lap.ts'
import { lap } from './nzs3101-2006/lap.ts'
import { COLDEST, leastBend } from './nzs3109-1997/bend.ts'

const CLEAR: Source = { standard: 'NZS 3101:2006', clause: '8.3.1', status: 'from memory' }
const PLACING: Source = { standard: 'NZS 3109:1997', clause: '3.9', status: 'seen' }

export const steel: SteelRules = {
  acts,
  grades: [G300E, G500E],
  barSize: ({ diameter }) => metricBar({ diameter, source: BAR_MASS }),
  leastBend,
  hookTail,
  endLeg: null,
  coldest: COLDEST,
  lap,
  compressionLap,
  hookAnchorage,
  hookMeasured: 'outside',
  // As far as laps overlap.
  lapSection: 1,
  transportBox: null,
  delivered: delivered([6, 10, 12, 16, 20, 25, 32, 40]),
  identify: ({ seen }) => identify({ seen, family: ['300E', '500E'] }),
  // Aggregate at most three quarters of the gap is a rule on the mix: here it asks for 4/3 of the aggregate.
  clearSpacing: (bar) =>
    clearSpacing(bar, { perDiameter: 1, perAggregate: 4 / 3, added: 0, least: 25, source: CLEAR }),
  bondCover: null,
  spacingTolerance: () => ({ minus: 20, plus: 20, source: PLACING }),
  massTolerance,
  // The numbers of NZS 3109 for cut lengths are not confirmed.
  cutTolerance: () => ({ minus: 25, plus: 0, source: commonPractice('cut length of a bar') }),
  legTolerance: () => null,
}
