import type { Source } from '../../working/source.ts'
import { clearSpacing } from '../clear-spacing.ts'
import type { SteelGrade, SteelRules } from '../steel-rules.ts'
import { cutTolerance, legTolerance } from './aci315-99/tolerances.ts'
import { leastBend } from './aci318-19/bend.ts'
import { hookAnchorage } from './aci318-19/bend-anchorage.ts'
import { hookTail } from './aci318-19/bend-tail.ts'
import { compressionLap } from './aci318-19/compression-lap.ts'
import { lap } from './aci318-19/lap.ts'
import { CLEAR_SPACING } from './aci318-19/spacing.ts'
import { acts } from './acts.ts'
import { delivered } from './astm/delivered.ts'
import { barSize, massTolerance } from './astm/mass.ts'
import { identify } from './crsi/identify.ts'

const TENSILE: Source = {
  standard: 'ASTM A615/A706, edition not noted',
  clause: 'tensile requirements',
  status: 'seen',
}
const PLACING: Source = { standard: 'ACI 117-10', clause: '2.2', status: 'seen' }
const KSI = 6.894757293168

const grade = (ksi: number, status: Source['status']): SteelGrade => ({
  grade: String(ksi),
  yield: ksi * KSI,
  source: { ...TENSILE, status },
})

export const steel: SteelRules = {
  acts,
  grades: [grade(40, 'from memory'), grade(60, 'seen'), grade(80, 'seen'), grade(100, 'from memory')],
  barSize,
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
  identify,
  delivered,
  clearSpacing: (bar) => clearSpacing(bar, CLEAR_SPACING),
  bondCover: null,
  spacingTolerance: () => ({ minus: 76.2, plus: 76.2, source: PLACING }),
  massTolerance,
  cutTolerance,
  legTolerance,
}
