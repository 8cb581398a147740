import type { ReactElement } from 'react'
import { setLaid } from './acts/set-laid.ts'
import { useDraft } from './draft-context.ts'
import { TypedField } from './draft-field.tsx'
import { DraftSelect } from './draft-select.tsx'
import { type DraftLaid, LAID_FORMS, type LaidField } from './laid-draft.ts'

/** The fields of edge bars, trimmers, starters or ties. */
export function LaidFields({
  laid,
  index,
}: {
  readonly laid: DraftLaid
  readonly index: number
}): ReactElement {
  const { act } = useDraft()
  const one = (field: LaidField): ReactElement => {
    const { name, label, unit, note, choices, as } = field
    const shared = {
      label,
      field: `steel[${index}].${name}`,
      value: laid.texts[name] ?? '',
      onText: (text: string) => act(setLaid, { index, field: name, text }),
      ...(note === undefined ? {} : { note }),
    }
    return choices === undefined ? (
      <TypedField key={name} {...shared} words={as !== 'number'} {...(unit === undefined ? {} : { unit })} />
    ) : (
      <DraftSelect key={name} {...shared} choices={choices} />
    )
  }
  return <div className="fields">{LAID_FORMS[laid.form].fields.map(one)}</div>
}
