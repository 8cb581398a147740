import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'
import { acceptanceEn206 } from './en206-2013/acceptance.ts'
import { meanWantedEn206 } from './en206-2013/mean-wanted.ts'
import { samplingEn206 } from './en206-2013/sampling.ts'
import { lengthTolerance, sectionTolerance } from './en13369-2013/size-tolerance.ts'
import { diagonalTolerance, surfaceTolerance } from './en14992-2007/panel-tolerance.ts'

export const quality: QualityRules = {
  tolerance: ({ what, size }) => {
    switch (what) {
      case 'length':
      case 'width':
        return lengthTolerance(size)
      case 'thickness':
        return sectionTolerance(size)
      case 'squareness':
        return diagonalTolerance(size)
      case 'flatness':
        return surfaceTolerance(size)
      case 'bow':
      case 'warp':
        return unknown(`${what}: no confirmed value for wall panels in eu`)
    }
  },
  acceptance: acceptanceEn206,
  meanWanted: meanWantedEn206,
  testAge: () => unknown('tolerance on the test age: no confirmed value in eu'),
  sampling: samplingEn206,
  samplingWords:
    'EN 206, Table 17 (from memory): without certified control of production one sample a day and for each 150 m³; three in the first 50 m³ of a new concrete.',
}
