import type { AnchorRules } from '../anchor-rules.ts'
import { BLOWOUT_ROW, blowout, blowoutAsked } from './en1992-4-2018/blow-out.ts'
import { breakout, narrowDepth } from './en1992-4-2018/cone.ts'
import { edge, narrowEdge } from './en1992-4-2018/edge.ts'
import { factor } from './en1992-4-2018/factor.ts'
import { clause, STANDARD } from './en1992-4-2018/fck.ts'
import { interaction } from './en1992-4-2018/interaction.ts'
import { pryout } from './en1992-4-2018/pry-out.ts'
import { pullout } from './en1992-4-2018/pull-out.ts'
import { SPLITTING_FAR, splitting } from './en1992-4-2018/splitting.ts'
import { steelShear } from './en1992-4-2018/steel.ts'

export const anchor: AnchorRules = {
  standard: STANDARD,
  sources: {
    steel: clause('7.2.1.3, 7.2.2.3'),
    breakout: clause('7.2.1.4'),
    pullout: clause('7.2.1.5'),
    blowout: clause('7.2.1.8'),
    splitting: clause('7.2.1.7'),
    edge: clause('7.2.2.5'),
    pryout: clause('7.2.2.4'),
  },
  narrowDepth,
  breakout,
  pullout,
  blowoutAsked,
  blowoutRow: BLOWOUT_ROW,
  blowout,
  splitting,
  splittingFar: SPLITTING_FAR,
  narrowEdge,
  edge,
  pryout,
  steelShear,
  factor,
  interaction,
}
