import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { addInsert } from './acts/add-insert.ts'
import { removeInsert } from './acts/remove-insert.ts'
import { setInsert } from './acts/set-insert.ts'
import type { DraftInsert } from './draft.ts'
import { useDraft } from './draft-context.ts'
import { DraftField, TypedField } from './draft-field.tsx'
import { DraftSelect } from './draft-select.tsx'

/** Lifting inserts and the rigging that hangs on them. */
export function InsertPart(): ReactElement {
  const { draft, act } = useDraft()
  const { yard } = useYardState()
  return (
    <Sheet title="Lifting inserts" note="In the face, inside the concrete; or in an edge, on it.">
      <div className="stack">
        {draft.inserts.map((insert, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an insert is its place in the list while it is typed
          <fieldset className="part" key={index}>
            <legend>Insert {insert.mark}</legend>
            <InsertFields insert={insert} index={index} />
            <Button look="plain" onClick={() => act(removeInsert, { index })}>
              remove insert {insert.mark}
            </Button>
          </fieldset>
        ))}
        <div>
          <Button onClick={() => act(addInsert, null)}>{addInsert.label}</Button>
        </div>
        <div className="fields">
          <DraftField of="rigging" label="Rigging" words list="rigging" note="Its mark in the yard’s list." />
        </div>
        <Marks id="rigging" marks={yard.yard?.rigging} />
        <Marks id="insert-kinds" marks={yard.yard?.insertKinds} />
      </div>
    </Sheet>
  )
}

function InsertFields({
  insert,
  index,
}: {
  readonly insert: DraftInsert
  readonly index: number
}): ReactElement {
  const { act } = useDraft()
  const text = (field: keyof DraftInsert) => ({
    field: `inserts[${index}].${field}`,
    value: insert[field],
    onText: (typed: string) => act(setInsert, { index, field, text: typed }),
  })
  return (
    <div className="fields">
      <TypedField label="Mark" words {...text('mark')} />
      <DraftSelect
        label="Stands in"
        choices={[
          ['face', 'the face'],
          ['edge', 'an edge'],
        ]}
        {...text('kind')}
      />
      <TypedField label="From the left, x" unit="mm" {...text('x')} />
      <TypedField label="From below, y" unit="mm" {...text('y')} />
      <TypedField label="Kind of insert" words list="insert-kinds" {...text('type')} />
    </div>
  )
}

function Marks({
  id,
  marks,
}: {
  readonly id: string
  readonly marks: readonly { readonly mark: string }[] | undefined
}): ReactElement {
  return (
    <datalist id={id}>
      {(marks ?? []).map(({ mark }) => (
        <option key={mark} value={mark} />
      ))}
    </datalist>
  )
}
