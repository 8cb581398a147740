import { codeFamily, type FamilyId } from '../codes/index.ts'
import { steelAccepted } from '../steel/incoming/panel-steel.ts'
import { commonPractice } from '../working/source.ts'
import type { CardRow } from './card.ts'
import type { PanelFacts } from './facts.ts'
import { plainRow } from './rows.ts'

export const STEEL_ROW = 'steel-accepted'

/** Every bundle whose bars were cut for this panel stands accepted; no row where the record names no bundle. */
export function steelRows({ steel = [] }: PanelFacts, family: FamilyId): CardRow[] {
  if (steel.length === 0) return []
  const { verdict, accepted, against } = steelAccepted(steel, codeFamily(family).steel)
  return [
    plainRow({
      id: STEEL_ROW,
      what: 'Bundles cut for this panel stand accepted',
      verdict,
      demand: accepted,
      limit: steel.length,
      note: against.join(' '),
      source: commonPractice('nothing is built in from a bundle that is not accepted'),
      unknown: verdict === 'unknown' ? against : [],
      rests: [...new Set(steel.flatMap(({ entries }) => entries))],
    }),
  ]
}
