import { codeFamily } from '@castwright/engine/codes'
import type { ReactElement, ReactNode } from 'react'
import { Button, Field, NumberField, SelectField } from '../look/index.ts'
import { useInstant } from '../record/index.ts'
import { Marks } from './cast-form.tsx'
import { type DocketFaults, type DocketText, type DocketTime, nextMarks } from './docket-text.ts'
import { usePanelRoom } from './panel-context.ts'
import { fieldTime } from './when.ts'

export interface DocketFieldsProps {
  readonly text: DocketText
  readonly faults: DocketFaults
  readonly onText: (text: DocketText) => void
  /** The number stands: it is a load on record. */
  readonly fixed: boolean
}

/** A docket in the order of the ticket, then what is measured at the truck, then its discharge. */
export function DocketFields({ text, faults, onText, fixed }: DocketFieldsProps): ReactElement {
  const { state } = usePanelRoom()
  const set = (field: keyof DocketText) => (value: string) => onText({ ...text, [field]: value })
  const number = (field: keyof DocketText, label: string, unit: string, note?: string): ReactNode => (
    <NumberField
      label={label}
      unit={unit}
      value={text[field]}
      fault={faults[field]}
      note={note}
      onText={set(field)}
    />
  )
  const words = (field: keyof DocketText, label: string, mode?: 'numeric'): ReactNode => (
    <Field
      label={label}
      value={text[field]}
      fault={faults[field]}
      autoComplete="off"
      inputMode={mode}
      readOnly={fixed && field === 'number'}
      onChange={(event) => set(field)(event.currentTarget.value)}
    />
  )
  const time = (field: DocketTime, label: string): ReactNode => (
    <TimeField label={label} value={text[field]} fault={faults[field]} onText={set(field)} />
  )
  return (
    <>
      <fieldset className="docket-part">
        <legend>On the ticket</legend>
        {words('number', 'Number', 'numeric')}
        {words('supplier', 'Supplier')}
        {words('truck', 'Truck')}
        <Marks label="Mix" value={text.mix} marks={state.yard.yard?.mixes} onMark={set('mix')} />
        {number('volume', 'Volume of this load', 'm³')}
        {number('ordered', 'Ordered for this load', 'm³', 'Only where the ticket says it.')}
        {number('slumpTarget', 'Slump ordered', 'mm', 'Counts where the mix has no slump of its own.')}
        {time('batched', 'Batched')}
        {number('waterAllowed', 'Water that may be added', 'L')}
      </fieldset>
      <fieldset className="docket-part">
        <legend>At the truck</legend>
        {time('arrived', 'Arrived')}
        {number('slump', 'Slump measured', 'mm')}
        <SelectField
          label="Sample"
          value={text.slumpSample}
          onChange={(event) => set('slumpSample')(event.currentTarget.value)}
        >
          <option value="">not said</option>
          <option value="spot">spot, from the first discharge</option>
          <option value="composite">from several places of the load</option>
        </SelectField>
        {number('temperature', 'Concrete temperature', '°C')}
        {number('waterAdded', 'Water added here', 'L', '0 where none was.')}
        {number('admixtureAdded', 'Admixture added here', 'L', 'Empty where none was.')}
        <Additions text={text} faults={faults} onText={onText} />
      </fieldset>
      <fieldset className="docket-part">
        <legend>Discharge</legend>
        {time('began', 'Discharge begins')}
        {time('discharged', 'Discharge finished')}
        {number('used', 'Of it into this panel', 'm³', 'Empty: all of it.')}
        <Specimens text={text} onText={onText} />
      </fieldset>
    </>
  )
}

/** Day and time, set to now by one tap. */
function TimeField({
  label,
  value,
  fault,
  onText,
}: {
  readonly label: string
  readonly value: string
  readonly fault: string | undefined
  readonly onText: (text: string) => void
}): ReactElement {
  const { zone } = usePanelRoom()
  const instant = useInstant()
  return (
    <div className="docket-time">
      <Field
        label={label}
        type="datetime-local"
        value={value}
        fault={fault}
        onChange={(event) => onText(event.currentTarget.value)}
      />
      <Button onClick={() => onText(fieldTime(instant(), zone))}>
        Now<span className="only-read">: {label}</span>
      </Button>
    </div>
  )
}

/** Asked only where water or admixture went in: when, and how it was mixed again. */
function Additions({ text, faults, onText }: Omit<DocketFieldsProps, 'fixed'>): ReactElement | null {
  const { state } = usePanelRoom()
  const some = (typed: string): boolean => typed.trim() !== '' && Number(typed.replace(',', '.')) !== 0
  const water = some(text.waterAdded)
  if (!water && !some(text.admixtureAdded)) return null
  const family = state.yard.yard?.code
  const rule = family === undefined ? null : codeFamily(family).pour.remix
  const either = rule === null || (rule.turns === null && rule.minutes === null)
  return (
    <>
      {water ? (
        <SelectField
          label="Had discharge begun when water was added"
          value={text.waterAfterDischarge}
          onChange={(event) => onText({ ...text, waterAfterDischarge: event.currentTarget.value })}
        >
          <option value="">not said</option>
          <option value="no">no</option>
          <option value="yes">yes</option>
        </SelectField>
      ) : null}
      {either || rule.turns !== null ? (
        <NumberField
          label="Mixed again, turns at mixing speed"
          unit="turns"
          value={text.remixTurns}
          fault={faults.remixTurns}
          onText={(typed) => onText({ ...text, remixTurns: typed })}
        />
      ) : null}
      {either || rule.minutes !== null ? (
        <NumberField
          label="Mixed again, at mixing speed"
          unit="min"
          value={text.remixMinutes}
          fault={faults.remixMinutes}
          onText={(typed) => onText({ ...text, remixMinutes: typed })}
        />
      ) : null}
    </>
  )
}

/** Marks of what was made from this load; one tap adds the next free one of the panel. */
function Specimens({
  text,
  onText,
}: {
  readonly text: DocketText
  readonly onText: (text: DocketText) => void
}): ReactElement {
  const { facts } = usePanelRoom()
  const typed = text.specimens.split(/[\s,;]+/).filter((mark) => mark !== '')
  const taken = [
    ...facts.specimens.map(({ specimen }) => specimen),
    ...facts.dockets.flatMap(({ specimens }) => specimens ?? []),
    ...typed,
  ]
  return (
    <div className="docket-time">
      <Field
        label="Cylinders or cubes made of it"
        value={text.specimens}
        autoComplete="off"
        note={
          typed.length === 0
            ? 'Their marks; the strength room leads back to this load.'
            : `${typed.length} made.`
        }
        onChange={(event) => onText({ ...text, specimens: event.currentTarget.value })}
      />
      <Button
        onClick={() =>
          onText({ ...text, specimens: [...typed, ...nextMarks(facts.mark, taken, 1)].join(' ') })
        }
      >
        One more
      </Button>
    </div>
  )
}
