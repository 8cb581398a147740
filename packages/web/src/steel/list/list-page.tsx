import './list.css'
import type { FamilyId } from '@castwright/engine/codes'
import { FAMILY_IDS } from '@castwright/engine/panel'
import { type ReactElement, useState } from 'react'
import { Caution, SelectField, Sheet } from '../../look/index.ts'
import { useYardState } from '../../record/index.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { ReadPart } from './read-part.tsx'
import { WritePart } from './write-part.tsx'

/** Bar lists in and out: a schedule as a file, a file as listed bars of a drawing. */
export function ListPage(): ReactElement {
  const { yard } = useYardState()
  const [code, setCode] = useState<FamilyId | null>(null)
  const family = code ?? yard.yard?.code ?? null
  const choice = (
    <div className="row steel-choice">
      <SelectField
        label="Grades of the family"
        value={family ?? ''}
        onChange={({ currentTarget: { value } }) =>
          setCode(FAMILY_IDS.find((each) => each === value) ?? null)
        }
      >
        {family === null ? <option value="">choose a family</option> : null}
        {FAMILY_IDS.map((each) => (
          <option key={each} value={each}>
            {each}
            {each === yard.yard?.code ? ', as the yard' : ''}
          </option>
        ))}
      </SelectField>
    </div>
  )
  return (
    <SteelFrame page="List">
      <WritePart />
      {family === null ? (
        <Sheet title="A list comes in">{choice}</Sheet>
      ) : (
        <ReadPart code={family}>{choice}</ReadPart>
      )}
      <Caution
        order="A list is not the drawing."
        text="What is read here was typed by somebody. Hold it against the engineer’s schedule before steel is cut; a stated length that is not the computed one is said at its row, never mended."
      />
    </SteelFrame>
  )
}
