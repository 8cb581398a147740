import { type ReactElement, useState } from 'react'
import { Field } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { handOver } from './acts/hand-over.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { usePanelRoom } from './panel-context.ts'
import { passportAddress } from './sheet-links.tsx'
import { WhereKept } from './where-kept.tsx'

/** Saves the passport file and records which bytes were handed over. */
export function HandOverForm(): ReactElement {
  const { facts, place, state } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [to, setTo] = useState('')
  const handed = state.passports.get(`${facts.job}/${facts.mark}`) ?? []
  const save = async (): Promise<void> => {
    const bytes = await fetchPassport(place)
    const sha256 = await hashOf(bytes)
    await record.add(handOver.draft(place, { sha256, to }))
    saveFile(bytes, `${facts.mark}.passport.json`)
  }
  return (
    <Extra
      title="Passport"
      open="Hand over the passport"
      button={handOver.label}
      busy={busy}
      fault={fault}
      onSubmit={() => run(save)}
      fields={
        mayDo(person.role, 'passport') ? (
          <Field
            label="To whom"
            value={to}
            autoComplete="off"
            note="The file is saved here; its hash goes into the record."
            onChange={(event) => setTo(event.currentTarget.value)}
          />
        ) : null
      }
    >
      {handed.length === 0 ? (
        <p>Not handed over yet.</p>
      ) : (
        <ul className="plain-list">
          {handed.map((passport) => (
            <li key={passport.entry}>
              Handed over: <WhereKept by={passport.by.name} seen={passport.seen} stored={passport.stored} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}

async function fetchPassport(place: { readonly job: string; readonly mark: string }): Promise<Blob> {
  let response: Response
  try {
    response = await fetch(passportAddress(place), { credentials: 'same-origin', cache: 'no-store' })
  } catch {
    throw new Error('The passport is made by the server: it needs the network. Try again when it is back.')
  }
  if (response.ok) return response.blob()
  const problem = (await response.json().catch(() => null)) as { readonly detail?: string } | null
  throw new Error(problem?.detail ?? `The server answered ${response.status}: no passport was made.`)
}

async function hashOf(bytes: Blob): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', await bytes.arrayBuffer())
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

function saveFile(bytes: Blob, name: string): void {
  const address = URL.createObjectURL(bytes)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
