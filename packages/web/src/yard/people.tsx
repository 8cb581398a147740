import type { Role } from '@castwright/record'
import { type ReactElement, useCallback, useEffect, useState } from 'react'
import { Button, Field, Notice, SelectField, Sheet } from '../look/index.ts'
import { type ListedPerson, sentenceOf } from '../record/api.ts'
import { usePerson, useStore } from '../record/index.ts'

const ROLE_NOTES: Readonly<Record<Role, string>> = {
  lead: 'signs holds, decides, adds people',
  engineer: 'limits, lifting designs, decides',
  floor: 'checks, values, photos',
  viewer: 'reads',
}

/** People of the yard: added and closed here; each changes their own PIN. */
export function People(): ReactElement {
  const store = useStore()
  const me = usePerson()
  const [people, setPeople] = useState<readonly ListedPerson[] | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const read = useCallback(() => {
    store.api.people().then(setPeople, (error: unknown) => setFault(sentenceOf(error)))
  }, [store])
  useEffect(read, [read])
  const may = me.role === 'lead' || me.role === 'engineer'
  const act = async (work: () => Promise<void>): Promise<boolean> => {
    setFault(null)
    try {
      await work()
      read()
      return true
    } catch (error) {
      setFault(sentenceOf(error))
      return false
    }
  }
  return (
    <Sheet title="People" note="Accounts, not part of the yard’s file. A closed account keeps its entries.">
      <div className="stack">
        {people === null && fault === null ? <p role="status">Asking …</p> : null}
        {people === null ? null : (
          <div className="scroll-x">
            <table>
              <thead>
                <tr>
                  <th scope="col">Name</th>
                  <th scope="col">Role</th>
                  {me.role === 'lead' ? <th scope="col">Account</th> : null}
                </tr>
              </thead>
              <tbody>
                {people.map((person) => (
                  <tr key={person.id}>
                    <td>{person.name}</td>
                    <td>
                      {person.role}
                      {person.active ? '' : ', closed'}
                    </td>
                    {me.role === 'lead' ? (
                      <td>
                        {person.id === me.id ? (
                          'you'
                        ) : (
                          <Button
                            onClick={() =>
                              void act(() => store.api.changePerson(person.id, { active: !person.active }))
                            }
                          >
                            {person.active ? 'Close' : 'Open again'}
                            <span className="only-read"> the account of {person.name}</span>
                          </Button>
                        )}
                      </td>
                    ) : null}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
        {fault === null ? null : (
          <div role="alert">
            <Notice kind="fail" title="Not done">
              {fault}
            </Notice>
          </div>
        )}
        {may ? <AddPerson by={me.role} onAdd={(person) => act(() => store.api.addPerson(person))} /> : null}
        <OwnPin onChange={(pin, current) => act(() => store.api.changePerson(me.id, { pin, current }))} />
      </div>
    </Sheet>
  )
}

function AddPerson({
  by,
  onAdd,
}: {
  readonly by: Role
  readonly onAdd: (person: { name: string; role: Role; pin: string }) => Promise<boolean>
}): ReactElement {
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('floor')
  const [pin, setPin] = useState('')
  const roles: readonly Role[] = by === 'lead' ? ['floor', 'lead', 'engineer', 'viewer'] : ['floor', 'viewer']
  const missing = [name.trim() === '' ? 'name' : null, isPin(pin) ? null : 'PIN'].filter(
    (part) => part !== null,
  )
  return (
    <details className="explain">
      <summary>Add a person</summary>
      <form
        className="stack explain-body"
        onSubmit={(event) => {
          event.preventDefault()
          if (missing.length > 0) return
          void onAdd({ name: name.trim(), role, pin }).then((done) => {
            if (!done) return
            setName('')
            setPin('')
          })
        }}
      >
        <Field
          label="Name"
          value={name}
          maxLength={120}
          autoComplete="off"
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <SelectField
          label="Role"
          value={role}
          onChange={(event) => setRole(event.currentTarget.value as Role)}
        >
          {roles.map((one) => (
            <option key={one} value={one}>
              {one}: {ROLE_NOTES[one]}
            </option>
          ))}
        </SelectField>
        <PinField label="First PIN" value={pin} onPin={setPin} />
        <Button look="main" type="submit" shut={missing.length > 0}>
          {missing.length > 0 ? `Still missing: ${missing.join(', ')}` : 'Add'}
        </Button>
      </form>
    </details>
  )
}

function OwnPin({
  onChange,
}: {
  readonly onChange: (pin: string, current: string) => Promise<boolean>
}): ReactElement {
  const [current, setCurrent] = useState('')
  const [pin, setPin] = useState('')
  const [done, setDone] = useState(false)
  const shut = !isPin(pin) || current === ''
  return (
    <details className="explain">
      <summary>Change your own PIN</summary>
      <form
        className="stack explain-body"
        onSubmit={(event) => {
          event.preventDefault()
          if (shut) return
          void onChange(pin, current).then((changed) => {
            setDone(changed)
            setPin('')
            setCurrent('')
          })
        }}
      >
        <PinField label="PIN now" value={current} onPin={setCurrent} />
        <PinField label="New PIN" value={pin} onPin={setPin} />
        <Button look="main" type="submit" shut={shut}>
          {shut ? 'Still missing: both PINs' : 'Change'}
        </Button>
        {done ? <p role="status">Changed. Your other devices are signed out.</p> : null}
      </form>
    </details>
  )
}

function PinField({
  label,
  value,
  onPin,
}: {
  readonly label: string
  readonly value: string
  readonly onPin: (pin: string) => void
}): ReactElement {
  return (
    <Field
      label={label}
      type="password"
      inputMode="numeric"
      autoComplete="off"
      value={value}
      note="6 to 12 digits"
      onChange={(event) => onPin(event.currentTarget.value.replace(/\D/g, '').slice(0, 12))}
    />
  )
}

function isPin(text: string): boolean {
  return /^\d{6,12}$/.test(text)
}
