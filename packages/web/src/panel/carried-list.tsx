import { type Card, panelStep } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { WhereKept } from './where-kept.tsx'

const WORDS = { decision: 'decided', difference: 'difference signed', load: 'decided' } as const

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
              {panelStep(step).name} · {WORDS[kind]}
              {'decision' in signed && signed.decision === 'send-back' ? ' to go back' : ''}: {signed.reason}{' '}
              <WhereKept by={signed.by.name} seen={signed.seen} stored={signed.stored} />
            </p>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
