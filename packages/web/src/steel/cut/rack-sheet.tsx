import { codeFamily } from '@castwright/engine/codes'
import type { RackPiece } from '@castwright/record'
import { type FormEvent, type ReactElement, useMemo, useState } from 'react'
import { Button, Field, NumberField, readNumber, SelectField, Sheet } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { sizeName } from '../size-name.ts'
import { countRack } from './acts/count-rack.ts'

const EMPTY = { diameter: '', grade: '', length: '', count: '', bundle: '' }

interface Alike {
  readonly diameter: number
  readonly grade: string
  readonly length: number
  readonly count: number
  /** Bundles that they came from. */
  readonly from: readonly string[]
}

/** Offcuts of one steel and one length, to the millimetre, are one line; thickest and longest first. */
function alike(rack: readonly RackPiece[]): Alike[] {
  const lines = new Map<string, Alike>()
  for (const { diameter, grade, length: exact, count, bundle } of rack) {
    const length = Math.round(exact)
    const key = `${diameter}/${grade}/${length}`
    const before = lines.get(key)
    const from = new Set([...(before?.from ?? []), bundle ?? 'an unknown bundle'])
    lines.set(key, { diameter, grade, length, count: (before?.count ?? 0) + count, from: [...from].sort() })
  }
  return [...lines.values()].sort(
    (a, b) => b.diameter - a.diameter || a.grade.localeCompare(b.grade, 'en') || b.length - a.length,
  )
}

/** Offcuts in the rack: what the shear put there, and what was counted by hand. */
export function RackSheet(): ReactElement {
  const { steel, yard } = useYardState()
  const code = yard.yard?.code
  const nameOf = (mm: number): string => (code === undefined ? `${mm} mm` : sizeName(codeFamily(code), mm))
  const [adding, setAdding] = useState(false)
  const person = usePerson()
  const sorted = useMemo(() => alike(steel.rack), [steel.rack])
  return (
    <Sheet
      title="In the rack"
      note={`${sorted.reduce((sum, { count }) => sum + count, 0)} offcuts by the record`}
    >
      <div className="stack">
        {sorted.length === 0 ? (
          <p>None on record. What the shear leaves and is worth keeping comes here by itself.</p>
        ) : (
          <ul className="plain-list">
            {sorted.map(({ diameter, grade, length, count, from }) => (
              <li key={`${diameter} ${grade} ${length}`}>
                <strong className="number">
                  {count} × {Math.round(length)} mm
                </strong>
                , {nameOf(diameter)} {grade}, from {from.join(', ')}
              </li>
            ))}
          </ul>
        )}
        {adding ? (
          <RackForm onDone={() => setAdding(false)} />
        ) : mayDo(person.role, 'rack') ? (
          <div>
            <Button onClick={() => setAdding(true)}>Count offcuts into the rack</Button>
          </div>
        ) : null}
      </div>
    </Sheet>
  )
}

function RackForm({ onDone }: { readonly onDone: () => void }): ReactElement | null {
  const { yard, steel } = useYardState()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [text, setText] = useState(EMPTY)
  const [pressed, setPressed] = useState(false)
  const code = yard.yard?.code
  if (code === undefined) return null
  const rules = codeFamily(code).steel
  const put = (change: Partial<typeof EMPTY>): void => setText({ ...text, ...change })
  const [length, count] = [readNumber(text.length), readNumber(text.count)]
  const faults = {
    diameter: text.diameter === '' ? 'Choose the size.' : null,
    grade: text.grade === '' ? 'Choose the grade.' : null,
    length: length === null || length <= 0 ? 'A length above 0.' : null,
    count: count === null || !Number.isInteger(count) || count < 1 ? 'A whole number from 1.' : null,
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    setPressed(true)
    if (Object.values(faults).some((each) => each !== null) || length === null || count === null || busy)
      return
    const bundle = text.bundle.trim() === '' ? null : text.bundle.trim()
    void run(() =>
      record.add(
        countRack.draft({ diameter: Number(text.diameter), grade: text.grade, length, count, bundle }),
      ),
    ).then((done) => done && onDone())
  }
  const fault1 = (field: keyof typeof faults): string | null => (pressed ? faults[field] : null)
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="field-grid">
        <SelectField
          label="Size"
          value={text.diameter}
          fault={fault1('diameter')}
          onChange={(event) => put({ diameter: event.currentTarget.value })}
        >
          <option value="">choose</option>
          {rules.delivered.sizes.map((size) => (
            <option key={size} value={String(size)}>
              {sizeName(codeFamily(code), size)}
            </option>
          ))}
        </SelectField>
        <SelectField
          label="Grade"
          value={text.grade}
          fault={fault1('grade')}
          onChange={(event) => put({ grade: event.currentTarget.value })}
        >
          <option value="">choose</option>
          {rules.grades.map(({ grade }) => (
            <option key={grade}>{grade}</option>
          ))}
        </SelectField>
        <NumberField
          label="Length"
          unit="mm"
          value={text.length}
          fault={fault1('length')}
          onText={(next) => put({ length: next })}
        />
        <NumberField
          label="How many"
          value={text.count}
          fault={fault1('count')}
          onText={(next) => put({ count: next })}
        />
        <Field
          label="Bundle they came from"
          note="Empty where nobody knows: their steel is then not traced."
          list="bundle-names"
          value={text.bundle}
          autoComplete="off"
          onChange={(event) => put({ bundle: event.currentTarget.value })}
        />
        <datalist id="bundle-names">
          {[...steel.bundles.keys()].map((id) => (
            <option key={id} value={id} />
          ))}
        </datalist>
      </div>
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
      <div className="row">
        <Button type="submit" disabled={busy}>
          {countRack.label}
        </Button>
        <Button look="plain" onClick={onDone}>
          leave it
        </Button>
      </div>
    </form>
  )
}
