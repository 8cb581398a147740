import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'
import { acceptanceEn206 } from './en206-2013/acceptance.ts'
import { meanWantedEn206 } from './en206-2013/mean-wanted.ts'
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
}
