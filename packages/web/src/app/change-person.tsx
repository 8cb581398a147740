import { type ReactElement, useRef } from 'react'
import { Button } from '../look/index.ts'
import { usePerson, useRecord, useStore } from '../record/hooks.ts'

/** Who is signed in; one tap and a word hand the device to somebody else. */
export function ChangePerson(): ReactElement {
  const store = useStore()
  const person = usePerson()
  const { online, waiting } = useRecord()
  const box = useRef<HTMLDialogElement>(null)
  return (
    <>
      <button className="head-button" type="button" onClick={() => box.current?.showModal()}>
        <span className="head-label">{person.name}</span>
        {person.role} · change
      </button>
      <dialog ref={box} aria-labelledby="change-person">
        <div className="stack">
          <h2 id="change-person">Sign {person.name} out?</h2>
          {online === false ? (
            <p>
              <strong>There is no network.</strong> Nobody can sign in on this device until it is back.
            </p>
          ) : null}
          {waiting > 0 ? (
            <p>
              {waiting} kept here: what {person.name} made goes out when {person.name} signs in here again.
            </p>
          ) : null}
          <Button look="main" wide onClick={() => void store.signOut()}>
            Sign out
          </Button>
          <Button wide onClick={() => box.current?.close()}>
            Stay signed in
          </Button>
        </div>
      </dialog>
    </>
  )
}
