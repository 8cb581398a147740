import { type ReactElement, useEffect, useState } from 'react'
import { Button } from '../look/button.tsx'
import { Notice, Sheet, useTitle } from '../look/index.ts'
import { type ListedPerson, sentenceOf } from '../record/api.ts'
import { useSnapshot, useStore } from '../record/hooks.ts'
import { PinPad } from './pin-pad.tsx'

/** A list of people, then the PIN. A shared device changes hands here. */
export function SignIn(): ReactElement {
  useTitle('Sign in')
  const store = useStore()
  const { sync, kept, session } = useSnapshot()
  const [people, setPeople] = useState<readonly ListedPerson[] | null>(null)
  const [chosen, setChosen] = useState<ListedPerson | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const [asked, setAsked] = useState(0)

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again on demand and when the network is back
  useEffect(() => {
    let left = false
    store.api.people().then(
      (list) => {
        if (!left) setPeople(list.filter(({ active }) => active))
      },
      (error: unknown) => {
        if (!left) setFault(sentenceOf(error))
      },
    )
    return () => {
      left = true
    }
  }, [store, asked, sync.online])

  const enter = async (pin: string): Promise<void> => {
    if (chosen === null) return
    setBusy(true)
    setFault(null)
    try {
      await store.signIn(chosen.id, pin)
    } catch (error) {
      setFault(sentenceOf(error))
    } finally {
      setBusy(false)
    }
  }

  return (
    <main className="narrow" id="main">
      <h1>Castwright</h1>
      {session?.demo ? <p className="quiet">This is the invented yard: nothing in it is real.</p> : null}
      {kept.length > 0 ? (
        <Notice title={`${kept.length} kept here`}>
          Entries made on this device wait for the person who made them to sign in; then they go to the
          record.
        </Notice>
      ) : null}
      {chosen === null ? (
        <Sheet title="Who are you?" note="Each person signs with their own PIN.">
          {people === null ? (
            fault === null ? (
              <p role="status">Asking for the list of people …</p>
            ) : (
              <div className="stack">
                <Notice kind="unknown" title="No list of people">
                  {fault} Signing in needs the network once; after that the app works without it.
                </Notice>
                <Button
                  onClick={() => {
                    setFault(null)
                    setAsked(asked + 1)
                  }}
                >
                  Ask again
                </Button>
              </div>
            )
          ) : (
            <ul className="people">
              {people.map((person) => (
                <li key={person.id}>
                  <Button className="person" onClick={() => setChosen(person)}>
                    <span>{person.name}</span>
                    <span>{person.role}</span>
                  </Button>
                </li>
              ))}
            </ul>
          )}
        </Sheet>
      ) : (
        <Sheet title={chosen.name} note={`${chosen.role}: type your PIN.`}>
          <div className="stack">
            <PinPad busy={busy} fault={fault} word="Sign in" onPin={(pin) => void enter(pin)} />
            <Button
              look="plain"
              onClick={() => {
                setChosen(null)
                setFault(null)
              }}
            >
              Somebody else
            </Button>
          </div>
        </Sheet>
      )}
      <p>
        <a href="/verify">Check a passport</a> without signing in.
      </p>
    </main>
  )
}
