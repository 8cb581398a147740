import type { Card, Signer } from '@castwright/engine/steps'
import { type ReactElement, useEffect, useState } from 'react'
import { PinPad } from '../app/pin-pad.tsx'
import { Button, Notice, Sheet } from '../look/index.ts'
import { type SignOutcome, usePerson, useRecord, useStore } from '../record/index.ts'
import { useActing } from './acting.ts'
import { askToOpen } from './acts/ask-to-open.ts'
import { usePanelRoom } from './panel-context.ts'

export interface SignHoldProps {
  readonly card: Card
  readonly onLeave: () => void
}

/** Somebody entitled signs with their own PIN, on whatever device this is. */
export function SignHold({ card, onLeave }: SignHoldProps): ReactElement {
  const { place } = usePanelRoom()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const people = useEntitled(card.entitled)
  const [chosen, setChosen] = useState<Signer | null>(null)
  const [outcome, setOutcome] = useState<SignOutcome | null>(null)
  const sign = (pin: string): void => {
    if (chosen === null) return
    setOutcome(null)
    void run(async () =>
      setOutcome(await record.sign(askToOpen.draft(place, { step: card.step }), chosen, pin)),
    )
  }
  const refused = outcome?.kind === 'refused' ? outcome.why : fault
  if (outcome !== null && outcome.kind !== 'refused')
    return <SignedNotice outcome={outcome} onLeave={onLeave} />
  return (
    <Sheet title="Who signs?" note={`Signs for what stands on this card: ${card.answer}`}>
      <div className="stack">
        {people.length === 0 ? (
          <Notice kind="unknown" title="Nobody to choose">
            Only {card.entitled.join(' or ')} may sign here. Without a network the list holds who is signed
            in.
          </Notice>
        ) : (
          <ul className="people">
            {people.map((person) => (
              <li key={person.id}>
                <Button
                  className="person"
                  aria-pressed={chosen?.id === person.id}
                  onClick={() => setChosen(person)}
                >
                  <span>{person.name}</span>
                  <span>{person.role}</span>
                </Button>
              </li>
            ))}
          </ul>
        )}
        {chosen === null ? null : (
          <PinPad key={chosen.id} busy={busy} fault={refused} word={`Sign as ${chosen.name}`} onPin={sign} />
        )}
        <Button look="plain" onClick={onLeave}>
          leave it
        </Button>
      </div>
    </Sheet>
  )
}

function SignedNotice({
  outcome,
  onLeave,
}: {
  readonly outcome: Exclude<SignOutcome, { kind: 'refused' }>
  readonly onLeave: () => void
}): ReactElement {
  return (
    <div className="stack" role="status">
      {outcome.kind === 'opened' ? (
        <Notice title="Signed, in the record">The hold is open.</Notice>
      ) : outcome.kind === 'kept' ? (
        <Notice kind="unknown" title="Kept here">
          Signed here, opens when it is in the record.
        </Notice>
      ) : (
        <Notice kind="fail" title="Signed, and still shut">
          The record judged again and found missing: {outcome.missing.join('; ')}.
        </Notice>
      )}
      <Button onClick={onLeave}>Back to the card</Button>
    </div>
  )
}

/** Who may sign: from the server, or whoever is signed in where it does not answer. */
function useEntitled(roles: readonly Signer['role'][]): readonly Signer[] {
  const person = usePerson()
  const store = useStore()
  const [listed, setListed] = useState<readonly Signer[]>([])
  useEffect(() => {
    let left = false
    store.api.people().then(
      (people) => {
        if (!left)
          setListed(people.filter(({ active }) => active).map(({ id, name, role }) => ({ id, name, role })))
      },
      () => {
        // no network: the person signed in is all that this device may show
      },
    )
    return () => {
      left = true
    }
  }, [store])
  return (listed.length > 0 ? listed : [person]).filter(({ role }) => roles.includes(role))
}
