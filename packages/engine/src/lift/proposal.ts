import type { Panel } from '../panel/panel.ts'
import { type ProposedInserts, proposedInserts } from './picks/index.ts'

/** The proposed inserts of a drawing that has none; empty where no places hold the panel. */
export function proposal({ panel }: { readonly panel: Panel }): ProposedInserts['inserts'] {
  const found = proposedInserts({ panel })
  return found.known ? found.value.inserts : []
}
