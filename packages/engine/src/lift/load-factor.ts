import type { CodeFamily } from '../codes/family.ts'
import type { LoadCaseId } from '../codes/lift-rules.ts'
import type { Panel } from '../panel/panel.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { fittingBeds, mouldFace } from './mould-face.ts'

export interface LoadFactorInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** For inserts and gear, or for bending of the panel. */
  readonly of: 'inserts' | 'bending'
}

export interface LoadFactor {
  readonly factor: number
  readonly stage: LoadCaseId
}

/**
 * Factor on own weight for the first lift: the greater of release from the mould and hanging free. Both must be known.
 *
 * The bed is not chosen yet, so release is taken for the worst of the yard's beds that the panel fits on.
 */
export function loadFactor({ panel, yard, family, of }: LoadFactorInput): Worked<LoadFactor> {
  const rule = of === 'inserts' ? family.lift.factor : family.lift.bendingFactor
  const size = { weight: panel.weight, faceArea: panel.faceArea }
  const handling = rule({ stage: 'handling', face: null, ...size })
  const faces = new Set(fittingBeds(yard?.beds ?? [], panel).map((bed) => mouldFace(bed.face)))
  const releases = [...(faces.size > 0 ? faces : [null])].map((face) =>
    rule({ stage: 'release', face, ...size }),
  )
  const gaps = [handling, ...releases].flatMap((found) => (found.known ? [] : found.gaps))
  if (gaps.length > 0) return unknown(...new Set(gaps))
  let worst: LoadFactor | null = null
  const working = []
  for (const [index, found] of [handling, ...releases].entries()) {
    if (!found.known) continue
    working.push(...found.working)
    if (worst === null || found.value > worst.factor) {
      worst = { factor: found.value, stage: index === 0 ? 'handling' : 'release' }
    }
  }
  return worst === null ? unknown('load factor of the first lift') : known(worst, working)
}
