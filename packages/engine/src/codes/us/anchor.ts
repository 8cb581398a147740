import type { AnchorRules } from '../anchor-rules.ts'
import { BLOWOUT_ROW, blowout, blowoutAsked } from './aci318-19/anchor-blowout.ts'
import { breakout, narrowDepth } from './aci318-19/anchor-breakout.ts'
import { edge, narrowEdge } from './aci318-19/anchor-edge.ts'
import { factor } from './aci318-19/anchor-factor.ts'
import { interaction } from './aci318-19/anchor-interaction.ts'
import { pryout } from './aci318-19/anchor-pryout.ts'
import { pullout } from './aci318-19/anchor-pullout.ts'
import { steelShear } from './aci318-19/anchor-steel.ts'
import { clause, STANDARD } from './aci318-19/anchor-strength.ts'

export const anchor: AnchorRules = {
  standard: STANDARD,
  sources: {
    steel: clause('17.6.1, 17.7.1'),
    breakout: clause('17.6.2'),
    pullout: clause('17.6.3'),
    blowout: clause('17.6.4'),
    splitting: clause('17.9'),
    edge: clause('17.7.2'),
    pryout: clause('17.7.3'),
  },
  narrowDepth,
  breakout,
  pullout,
  blowoutAsked,
  blowoutRow: BLOWOUT_ROW,
  blowout,
  // The code keeps splitting off by distances; it gives no resistance.
  splitting: null,
  splittingFar: [1, 1],
  narrowEdge,
  edge,
  pryout,
  steelShear,
  factor,
  interaction,
}
