import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'
import { meanWantedAci301 } from './aci301-16/mean-wanted.ts'
import { acceptanceAci318 } from './aci318-19/acceptance.ts'
import { samplingAci318 } from './aci318-19/sampling.ts'
import { testAgeC39 } from './astm/test-age.ts'
import {
  bowTolerance,
  overallTolerance,
  smoothnessTolerance,
  thicknessTolerance,
  warpTolerance,
} from './pci-mnl135-00/panel-tolerance.ts'

export const quality: QualityRules = {
  tolerance: ({ what, size }) => {
    switch (what) {
      case 'length':
      case 'width':
        return overallTolerance(size)
      case 'thickness':
        return thicknessTolerance(size)
      case 'bow':
        return bowTolerance(size)
      case 'warp':
        return warpTolerance(size)
      case 'flatness':
        return smoothnessTolerance(size)
      case 'squareness':
        return unknown('squareness: no confirmed value in us')
    }
  },
  acceptance: acceptanceAci318,
  meanWanted: meanWantedAci301,
  testAge: testAgeC39,
  sampling: samplingAci318,
  samplingWords:
    'ACI 318-19, 26.12.2.1(a): at least one test a day and class, one for each 115 m³ and 465 m²; a test is two 150 × 300 cylinders or three 100 × 200 at 28 days.',
}
