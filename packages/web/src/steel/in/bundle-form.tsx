import type { CodeFamily } from '@castwright/engine/codes'
import { type Bundle, bundleFindings, PROCESSES, SURFACES } from '@castwright/engine/steel/incoming'
import { type FormEvent, type ReactElement, useRef, useState } from 'react'
import { Button, CheckField, Field, NumberField, SelectField, Sheet, TextField } from '../../look/index.ts'
import { sizeName } from '../size-name.ts'
import { type BundleFaults, type BundleText, readBundle } from './bundle-draft.ts'
import { FindingsList } from './findings-list.tsx'
import { RibCounter } from './rib-counter.tsx'

export interface BundleFormProps {
  readonly family: CodeFamily
  readonly from: BundleText
  /** Names that other bundles have. */
  readonly taken: ReadonlySet<string>
  /** A correction asks why. */
  readonly correcting: boolean
  readonly busy: boolean
  readonly fault: string | null
  readonly onSave: (id: string, bundle: Bundle, reason: string) => void
  readonly onLeave: () => void
}

/** A bundle from the truck: what was ordered, what the papers say, what is on the bar and what it weighs. */
export function BundleForm(props: BundleFormProps): ReactElement {
  const { family, from, taken, correcting, busy, fault, onSave, onLeave } = props
  const [text, setText] = useState(from)
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  const read = readBundle(text)
  const put = (change: Partial<BundleText>): void => setText({ ...text, ...change })
  const shown: BundleFaults = { ...read.faults, ...(pressed ? missing(text, taken, correcting) : {}) }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    setPressed(true)
    const wrong = { ...read.faults, ...missing(text, taken, correcting) }
    if (Object.keys(wrong).length > 0 || read.bundle === null || (correcting && reason.trim() === '')) {
      // The field may be far above the button.
      setTimeout(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus(), 0)
      return
    }
    if (busy) return
    onSave(text.id.trim(), read.bundle, reason.trim())
  }
  return (
    <form ref={form} className="stack" onSubmit={submit} noValidate>
      <Ordered text={text} put={put} faults={shown} family={family} correcting={correcting} />
      <OnTheBar text={text} put={put} faults={shown} family={family} />
      <Papers text={text} put={put} faults={shown} family={family} />
      {read.bundle === null ? null : (
        <Sheet title="What is found so far" level={3}>
          <FindingsList found={bundleFindings({ bundle: read.bundle, rules: family.steel })} />
        </Sheet>
      )}
      {correcting ? (
        <TextField
          label="Why it is corrected"
          value={reason}
          fault={
            pressed && reason.trim() === ''
              ? 'Write the reason: it stands in the record with your name.'
              : null
          }
          onChange={(event) => setReason(event.currentTarget.value)}
        />
      ) : null}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
      <div className="row">
        <Button type="submit" look="main" disabled={busy}>
          {correcting ? 'Record the new readings' : 'Record the bundle'}
        </Button>
        <Button look="plain" onClick={onLeave}>
          leave it
        </Button>
      </div>
    </form>
  )
}

function missing(text: BundleText, taken: ReadonlySet<string>, correcting: boolean): BundleFaults {
  const id = text.id.trim()
  return {
    ...(id === '' ? { id: 'Give it a name and write it on its tag.' } : {}),
    ...(!correcting && taken.has(id) ? { id: 'This name is taken: each bundle has its own.' } : {}),
    ...(text.diameter.trim() === '' ? { diameter: 'The size that was ordered.' } : {}),
    ...(text.grade.trim() === '' ? { grade: 'The grade that was ordered.' } : {}),
  }
}

interface Part {
  readonly text: BundleText
  readonly put: (change: Partial<BundleText>) => void
  readonly faults: BundleFaults
  readonly family: CodeFamily
}

function Ordered({
  text,
  put,
  faults,
  family,
  correcting,
}: Part & { readonly correcting: boolean }): ReactElement {
  const { steel } = family
  return (
    <fieldset className="steel-part">
      <legend>Ordered, by the yard’s own order</legend>
      <div className="field-grid">
        <Field
          label="Name of the bundle"
          note="As on the tag that the yard puts on it."
          value={text.id}
          fault={faults.id}
          disabled={correcting}
          maxLength={80}
          autoComplete="off"
          onChange={(event) => put({ id: event.currentTarget.value })}
        />
        <SelectField
          label="Size"
          value={text.diameter}
          fault={faults.diameter}
          onChange={(event) => put({ diameter: event.currentTarget.value })}
        >
          <option value="">choose</option>
          {sizesWith(steel.delivered.sizes, text.diameter).map((size) => (
            <option key={size} value={String(size)}>
              {sizeName(family, size)}
            </option>
          ))}
        </SelectField>
        <SelectField
          label="Grade"
          value={text.grade}
          fault={faults.grade}
          onChange={(event) => put({ grade: event.currentTarget.value })}
        >
          <option value="">choose</option>
          {steel.grades.map(({ grade }) => (
            <option key={grade}>{grade}</option>
          ))}
        </SelectField>
        <NumberField
          label="Length"
          unit="mm"
          value={text.length}
          fault={faults.length}
          onText={(length) => put({ length })}
        />
        <NumberField
          label="Bars ordered"
          value={text.count}
          fault={faults.count}
          onText={(count) => put({ count })}
        />
        <Field
          label="Order number"
          value={text.reference}
          maxLength={80}
          autoComplete="off"
          onChange={(event) => put({ reference: event.currentTarget.value })}
        />
      </div>
    </fieldset>
  )
}

/** The sizes of the place, and the one of a bundle that was recorded elsewhere: it is shown as it is, and judged. */
function sizesWith(sizes: readonly number[], chosen: string): readonly number[] {
  const own = Number(chosen)
  return chosen === '' || sizes.includes(own) ? sizes : [...sizes, own]
}

function OnTheBar({ text, put, faults, family }: Part): ReactElement {
  return (
    <fieldset className="steel-part">
      <legend>On the bar: this decides</legend>
      {family.id === 'eu' ? <RibCounter onCounts={(counts) => put({ seen: counts.join(' ') })} /> : null}
      <div className="field-grid">
        <Field
          label="Marks read, in their order"
          note={MARK_NOTE[family.id]}
          value={text.seen}
          fault={faults.seen}
          autoComplete="off"
          onChange={(event) => put({ seen: event.currentTarget.value })}
        />
        <NumberField
          label="Bars on which they were read"
          note="Three or more, from different places of the bundle."
          value={text.barsRead}
          fault={faults.barsRead}
          onText={(barsRead) => put({ barsRead })}
        />
        <TextField
          label="Pieces weighed: length in mm, mass in kg"
          note="A line a piece, at least 500 mm long and straight. Example: 1000 0.89"
          rows={2}
          value={text.weighed}
          fault={faults.weighed}
          onChange={(event) => put({ weighed: event.currentTarget.value })}
        />
        <Field
          label="Lengths measured, mm"
          value={text.lengths}
          fault={faults.lengths}
          inputMode="decimal"
          autoComplete="off"
          onChange={(event) => put({ lengths: event.currentTarget.value })}
        />
        <NumberField
          label="Bars counted"
          value={text.counted}
          fault={faults.counted}
          onText={(counted) => put({ counted })}
        />
        <SelectField
          label="Galvanised"
          value={text.galvanised}
          onChange={(event) => put({ galvanised: event.currentTarget.value as BundleText['galvanised'] })}
        >
          <option value="">not said</option>
          <option value="no">no</option>
          <option value="yes">yes</option>
        </SelectField>
      </div>
      <fieldset className="steel-part">
        <legend>How the bars look</legend>
        <div className="row">
          {SURFACES.map((surface) => (
            <CheckField
              key={surface}
              label={surface}
              checked={text.surface.includes(surface)}
              onChange={(event) =>
                put({
                  surface: event.currentTarget.checked
                    ? [...text.surface, surface]
                    : text.surface.filter((each) => each !== surface),
                })
              }
            />
          ))}
        </div>
      </fieldset>
    </fieldset>
  )
}

const MARK_NOTE: Readonly<Record<CodeFamily['id'], string>> = {
  nz: 'Letters and figures, such as 500E. A pattern of dots or ribs is read from the mill’s own sheet. Write none where nothing is rolled on it.',
  au: 'Letters and figures, such as 500N. A pattern of dots or ribs is read from the mill’s own sheet. Write none where nothing is rolled on it.',
  eu: 'The groups of normal ribs, country first. Write none where nothing is rolled on it.',
  us: 'Read down the bar: mill, bar number, type, then the grade’s number or “two lines”. Write none where nothing is rolled on it.',
}

function Papers({ text, put, faults, family }: Part): ReactElement {
  const field = (label: string, name: keyof BundleText): ReactElement => (
    <Field
      key={name}
      label={label}
      value={text[name] as string}
      fault={faults[name]}
      maxLength={80}
      autoComplete="off"
      onChange={(event) => put({ [name]: event.currentTarget.value })}
    />
  )
  return (
    <fieldset className="steel-part">
      <legend>Papers and tag</legend>
      <div className="field-grid">
        <SelectField
          label="Docket"
          note="A bundle without one is no fault of its own: the bar, the certificate or a test decide."
          value={text.docket}
          onChange={(event) => put({ docket: event.currentTarget.value as BundleText['docket'] })}
        >
          <option>not said</option>
          <option value="none">none came</option>
          <option value="came">came with it</option>
        </SelectField>
        {text.docket === 'came'
          ? [
              field('Docket number', 'docketNumber'),
              field('Supplier', 'docketSupplier'),
              field('Size on the docket, mm', 'docketDiameter'),
              field('Grade on the docket', 'docketGrade'),
              field('Length on the docket, mm', 'docketLength'),
              field('Bars on the docket', 'docketCount'),
              field('Heat on the docket', 'docketHeat'),
            ]
          : null}
        <SelectField
          label="The mill’s tag"
          value={text.tag}
          onChange={(event) => put({ tag: event.currentTarget.value as BundleText['tag'] })}
        >
          <option>not said</option>
          <option value="none">there is none</option>
          <option value="there">is there</option>
        </SelectField>
        {text.tag === 'there'
          ? [field('Mill on the tag', 'tagMill'), field('Heat on the tag', 'tagHeat')]
          : null}
        <SelectField
          label="Mill certificate"
          value={text.certificate}
          onChange={(event) => put({ certificate: event.currentTarget.value as BundleText['certificate'] })}
        >
          <option>not said</option>
          <option value="none">there is none</option>
          <option value="there">is there</option>
        </SelectField>
        {text.certificate === 'there' ? (
          <>
            {field('Certificate number', 'certificateNumber')}
            {field('Heat on the certificate', 'certificateHeat')}
            <SelectField
              label="Grade on the certificate"
              value={text.certificateGrade}
              onChange={(event) => put({ certificateGrade: event.currentTarget.value })}
            >
              <option value="">not said</option>
              {family.steel.grades.map(({ grade }) => (
                <option key={grade}>{grade}</option>
              ))}
            </SelectField>
            {field('Size on the certificate, mm', 'certificateDiameter')}
            <SelectField
              label="How the steel was made"
              note="What may be done with the bar hangs on it."
              value={text.certificateProcess}
              onChange={(event) =>
                put({ certificateProcess: event.currentTarget.value as BundleText['certificateProcess'] })
              }
            >
              <option value="">not said</option>
              {PROCESSES.filter((process) => process !== 'unknown').map((process) => (
                <option key={process}>{process}</option>
              ))}
            </SelectField>
          </>
        ) : null}
        <TextField
          label="Tests of samples of this bundle"
          note="A line a test: reference, yield and strength in MPa, elongation at greatest force in %, elongation after fracture in %; a dash for one that was not measured. Example: L-7 540 650 11"
          rows={2}
          value={text.tests}
          fault={faults.tests}
          onChange={(event) => put({ tests: event.currentTarget.value })}
        />
      </div>
    </fieldset>
  )
}
