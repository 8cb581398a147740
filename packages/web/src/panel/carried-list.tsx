import { type Card, type Carried, panelStep } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { WhereKept } from './where-kept.tsx'

/** What was done with it, in a word. */
function actWord(kind: Carried['kind'], signed: Carried['signed']): string {
  if (kind === 'difference') return 'difference signed'
  if (!('decision' in signed)) return 'decided'
  return signed.decision === 'send-back' ? 'sent back' : 'accepted'
}

/** What was decided or signed at earlier steps in spite of a fail or a not-known: it stays in sight. */
export function CarriedList({ card }: { readonly card: Card }): ReactElement | null {
  if (card.carried.length === 0) return null
  return (
    <Sheet title="Decided at earlier steps">
      <ul className="stack carried">
        {card.carried.map(({ step, kind, check, what, signed }) => (
          <li key={`${step} ${kind} ${check}`}>
            <h3>{what}</h3>
            <p className="check-note">
              {panelStep(step).name} · {actWord(kind, signed)}: {signed.reason}{' '}
              <WhereKept by={signed.by.name} seen={signed.seen} stored={signed.stored} />
            </p>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
