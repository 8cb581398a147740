import { type Card, panelStep } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button, Notice } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { closeStep } from './acts/close-step.ts'
import { mayDo } from './entitled.ts'
import { usePanelRoom } from './panel-context.ts'
import { SignHold } from './sign-hold.tsx'
import { WhereKept } from './where-kept.tsx'

/** One wide button: shut, it says what is still missing; open, what it will record. */
export function FinishStep({ card }: { readonly card: Card }): ReactElement {
  const { place, facts } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [signing, setSigning] = useState(false)
  const { hold, name } = panelStep(card.step)
  const found = facts.steps[card.step]
  const finished = hold ? found.opening : found.closed
  if (card.state === 'done' && finished !== null) {
    return (
      <Notice title={hold ? 'The hold is open' : 'This step is closed'}>
        <WhereKept by={finished.by.name} seen={finished.seen} stored={finished.stored} />
      </Notice>
    )
  }
  if (signing) return <SignHold card={card} onLeave={() => setSigning(false)} />
  const asked = hold ? found.requests.findLast(({ stored }) => stored === null) : undefined
  return (
    <div className="stack">
      {asked === undefined ? null : (
        <Notice kind="unknown" title="Signed here, opens when it is in the record">
          <WhereKept by={asked.by.name} seen={asked.seen} stored={asked.stored} />
        </Notice>
      )}
      {!card.ready ? (
        <>
          <Button wide shut aria-describedby="still-missing">
            {shutWord(card)}
          </Button>
          <details className="missing" id="still-missing">
            <summary>
              {card.missing.length === 1
                ? 'The one thing missing'
                : `The ${card.missing.length} things missing`}
            </summary>
            <ul>
              {card.missing.map((what) => (
                <li key={what}>{what}</li>
              ))}
            </ul>
          </details>
        </>
      ) : hold ? (
        <Button look="main" wide onClick={() => setSigning(true)}>
          Sign: opens {name.toLowerCase()} for this panel
        </Button>
      ) : mayDo(person.role, 'close') ? (
        <Button
          look="main"
          wide
          disabled={busy}
          onClick={() => void run(() => record.add(closeStep.draft(place, { step: card.step })))}
        >
          Close {name.toLowerCase()} as {person.name}
        </Button>
      ) : (
        <Button wide shut>
          Ready: {card.entitled.join(', ')} may close it
        </Button>
      )}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
    </div>
  )
}

function shutWord(card: Card): string {
  const [first] = card.missing
  if (card.missing.length === 1 && first !== undefined) return `Shut: ${first}`
  if (card.missing.length === 0) return 'Shut'
  return `Shut: ${card.missing.length} things are missing`
}
