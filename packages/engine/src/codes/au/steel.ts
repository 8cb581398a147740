import { commonPractice, type Source } from '../../working/source.ts'
import { BAR_MASS, G250N, G500L, G500N, massTolerance } from '../asnzs4671-2019/bars.ts'
import { delivered } from '../asnzs4671-2019/delivered.ts'
import { identify } from '../asnzs4671-2019/identify.ts'
import { clearSpacing } from '../clear-spacing.ts'
import { metricBar } from '../metric-bar.ts'
import type { SteelRules } from '../steel-rules.ts'
import { acts } from './acts.ts'
import { leastBend } from './as3600-2018/bend.ts'
import { hookAnchorage } from './as3600-2018/bend-anchorage.ts'
import { hookTail } from './as3600-2018/bend-tail.ts'
import { bondCover } from './as3600-2018/bond-cover.ts'
import { compressionLap } from './as3600-2018/compression-lap.ts'
import { lap } from './as3600-2018/lap.ts'

const FABRICATION: Source = { standard: 'AS 3600:2018', clause: '17.2.2', status: 'seen' }
const PLACING: Source = { standard: 'AS 3600:2018', clause: '17.5.3', status: 'seen' }

export const steel: SteelRules = {
  acts,
  grades: [G250N, G500N, G500L],
  barSize: ({ diameter }) => metricBar({ diameter, source: BAR_MASS }),
  leastBend,
  hookTail,
  endLeg: null,
  coldest: null,
  lap,
  compressionLap,
  hookAnchorage,
  hookMeasured: 'outside',
  // As far as laps overlap.
  lapSection: 1,
  transportBox: null,
  delivered: delivered([6, 10, 12, 16, 20, 24, 28, 32, 36, 40, 50]),
  identify: ({ seen }) => identify({ seen, family: ['250N', '500N', '500L'] }),
  clearSpacing: (bar) =>
    clearSpacing(bar, {
      perDiameter: 1,
      perAggregate: 1.5,
      added: 0,
      least: 25,
      source: commonPractice('AS 3600 gives no single number for clear spacing'),
    }),
  bondCover,
  spacingTolerance: ({ spacing }) => {
    const either = Math.max(0.1 * spacing, 15)
    return { minus: either, plus: either, source: PLACING }
  },
  massTolerance,
  cutTolerance: ({ length }) => ({ minus: length <= 600 ? 25 : 40, plus: 0, source: FABRICATION }),
  legTolerance: ({ leg, role, plain }) => ({
    minus: role === 'stirrup' ? (plain ? 10 : 15) : leg <= 600 ? 25 : 40,
    plus: 0,
    source: FABRICATION,
  }),
}
