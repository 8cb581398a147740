import { commonPractice, type Source } from '../../working/source.ts'
import { clearSpacing } from '../clear-spacing.ts'
import { metricBar } from '../metric-bar.ts'
import type { SteelGrade, SteelRules } from '../steel-rules.ts'
import { acts } from './acts.ts'
import { delivered } from './bs4449-2005/delivered.ts'
import { leastEndLeg } from './bs8666-2005/bend-table.ts'
import { cutTolerance, legTolerance } from './bs8666-2020/tolerances.ts'
import { TRANSPORT_BOX } from './bs8666-2020/transport-box.ts'
import { COLDEST, leastBend } from './en1992-1-1-2004/bend.ts'
import { hookAnchorage } from './en1992-1-1-2004/bend-anchorage.ts'
import { hookTail } from './en1992-1-1-2004/bend-tail.ts'
import { bondCover } from './en1992-1-1-2004/bond-cover.ts'
import { compressionLap } from './en1992-1-1-2004/compression-lap.ts'
import { lap } from './en1992-1-1-2004/lap.ts'
import { identify } from './en10080-2005/identify.ts'

const TENSILE: Source = { standard: 'BS 4449:2005+A3:2016', clause: '7.2.3', status: 'seen' }
const MASS: Source = { standard: 'EN 10080:2005', clause: 'Table 6', status: 'from memory' }
const CLEAR: Source = { standard: 'EN 1992-1-1:2004', clause: '8.2(2)', status: 'from memory' }
const WEIGHED: Source = { standard: 'BS 4449:2005+A3:2016', clause: 'mass per metre', status: 'seen' }

const grade = (name: string): SteelGrade => ({ grade: name, yield: 500, source: TENSILE })

export const steel: SteelRules = {
  acts,
  grades: [grade('B500A'), grade('B500B'), grade('B500C')],
  barSize: ({ diameter }) => metricBar({ diameter, source: MASS }),
  leastBend,
  hookTail,
  endLeg: leastEndLeg,
  coldest: COLDEST,
  lap,
  compressionLap,
  hookAnchorage,
  hookMeasured: 'centreline',
  // EN 1992-1-1:2004 8.7.3(1).
  lapSection: 0.65,
  transportBox: TRANSPORT_BOX,
  identify,
  delivered,
  clearSpacing: (bar) =>
    clearSpacing(bar, { perDiameter: 1, perAggregate: 1, added: 5, least: 20, source: CLEAR }),
  bondCover,
  spacingTolerance: () => ({ minus: 20, plus: 20, source: commonPractice('spacing of bars in a panel') }),
  massTolerance: ({ diameter }) => {
    const either = diameter <= 8 ? 0.06 : 0.045
    return { minus: either, plus: either, source: WEIGHED }
  },
  cutTolerance,
  legTolerance,
}
