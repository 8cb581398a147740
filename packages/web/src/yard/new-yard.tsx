import { type ReactElement, useState } from 'react'
import { Button, Field, Notice, SelectField, Sheet } from '../look/index.ts'
import { sentenceOf } from '../record/api.ts'
import { useStore } from '../record/index.ts'

const FAMILIES = [
  { id: 'nz', name: 'New Zealand' },
  { id: 'au', name: 'Australia' },
  { id: 'eu', name: 'Europe (EN)' },
  { id: 'us', name: 'United States' },
] as const

/** Name, code family and time zone: the least that a yard needs. */
export function NewYard(): ReactElement {
  const store = useStore()
  const [name, setName] = useState('')
  const [code, setCode] = useState('')
  const [timezone, setTimezone] = useState(() => Intl.DateTimeFormat().resolvedOptions().timeZone)
  const [fault, setFault] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const missing = [name.trim() === '' ? 'name' : null, code === '' ? 'code family' : null].filter(
    (part) => part !== null,
  )
  const begin = async (): Promise<void> => {
    setBusy(true)
    setFault(null)
    try {
      await store.api.bring({ format: 'castwright.yard/1', name: name.trim(), code, timezone })
      await store.sync.wake()
    } catch (error) {
      setFault(sentenceOf(error))
    } finally {
      setBusy(false)
    }
  }
  return (
    <Sheet
      title="Or begin with the least"
      note="Beds, mixes, stock and gear follow later with the yard’s file."
    >
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          if (missing.length === 0 && !busy) void begin()
        }}
      >
        <Field
          label="Name of the yard"
          value={name}
          maxLength={120}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <SelectField
          label="Code family"
          value={code}
          note="The family of standards that checks are made by; a drawing may name another."
          onChange={(event) => setCode(event.currentTarget.value)}
        >
          <option value="">choose</option>
          {FAMILIES.map((family) => (
            <option key={family.id} value={family.id}>
              {family.name}
            </option>
          ))}
        </SelectField>
        <Field
          label="Time zone"
          value={timezone}
          note="As in the tz database: Europe/Dublin. The yard’s day runs 05:00 to 05:00 in it."
          onChange={(event) => setTimezone(event.currentTarget.value)}
        />
        {fault === null ? null : (
          <div role="alert">
            <Notice kind="fail" title="Not recorded">
              {fault}
            </Notice>
          </div>
        )}
        <Button look="main" wide type="submit" shut={missing.length > 0 || busy}>
          {missing.length > 0 ? `Still missing: ${missing.join(', ')}` : 'Begin this yard'}
        </Button>
      </form>
    </Sheet>
  )
}
