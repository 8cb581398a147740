import {
  type InputHTMLAttributes,
  type ReactElement,
  type ReactNode,
  type SelectHTMLAttributes,
  type TextareaHTMLAttributes,
  useId,
} from 'react'
import { VerdictMark } from './verdict-mark.tsx'

export interface FieldFrameProps {
  readonly label: ReactNode
  /** Stands beside the box: `mm`, `MPa`. */
  readonly unit?: string | undefined
  /** What to look at, or the limit that counts. */
  readonly note?: ReactNode
  /** What is wrong, where, and what to do; empty or absent where nothing is. */
  readonly fault?: string | null | undefined
}

/** Label above, unit beside, note and fault below, tied together for screen readers. */
export function Field({
  label,
  unit,
  note,
  fault,
  className,
  ...input
}: FieldFrameProps & InputHTMLAttributes<HTMLInputElement>): ReactElement {
  const id = useId()
  return (
    <FieldFrame id={id} label={label} unit={unit} note={note} fault={fault} className={className}>
      <input id={id} {...input} {...described(id, unit, note, fault)} />
    </FieldFrame>
  )
}

export interface NumberFieldProps extends FieldFrameProps {
  /** Text as typed: it stays what the person wrote until it is a number. */
  readonly value: string
  readonly onText: (text: string) => void
  readonly required?: boolean
  readonly disabled?: boolean
  readonly autoFocus?: boolean
}

/** A number as typed, with a numeric keyboard. `readNumber` turns its text into a number. */
export function NumberField({ onText, ...rest }: NumberFieldProps): ReactElement {
  return (
    <Field
      {...rest}
      inputMode="decimal"
      autoComplete="off"
      onChange={(event) => onText(event.currentTarget.value)}
    />
  )
}

/** The number that somebody typed, comma or point; null where it is none. */
export function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null
  const value = Number(plain)
  return Number.isFinite(value) ? value : null
}

export function SelectField({
  label,
  unit,
  note,
  fault,
  className,
  children,
  ...select
}: FieldFrameProps & SelectHTMLAttributes<HTMLSelectElement>): ReactElement {
  const id = useId()
  return (
    <FieldFrame id={id} label={label} unit={unit} note={note} fault={fault} className={className}>
      <select id={id} {...select} {...described(id, unit, note, fault)}>
        {children}
      </select>
    </FieldFrame>
  )
}

export function TextField({
  label,
  unit,
  note,
  fault,
  className,
  ...area
}: FieldFrameProps & TextareaHTMLAttributes<HTMLTextAreaElement>): ReactElement {
  const id = useId()
  return (
    <FieldFrame id={id} label={label} unit={unit} note={note} fault={fault} className={className}>
      <textarea id={id} {...area} {...described(id, unit, note, fault)} />
    </FieldFrame>
  )
}

export function CheckField({
  label,
  ...input
}: { readonly label: ReactNode } & InputHTMLAttributes<HTMLInputElement>): ReactElement {
  return (
    <label className="check-field">
      <input type="checkbox" {...input} />
      <span>{label}</span>
    </label>
  )
}

/** The button that opens the device's files or camera; keyboard and screen readers reach the input itself. */
export function FileField({
  label,
  note,
  fault,
  onFiles,
  ...input
}: FieldFrameProps & { readonly onFiles: (files: readonly File[]) => void } & Omit<
    InputHTMLAttributes<HTMLInputElement>,
    'onChange' | 'type' | 'value'
  >): ReactElement {
  return (
    <Field
      {...input}
      label={label}
      note={note}
      fault={fault}
      type="file"
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])]
        event.currentTarget.value = '' // the same file can be chosen again after it was mended
        if (files.length > 0) onFiles(files)
      }}
    />
  )
}

function FieldFrame({
  id,
  label,
  unit,
  note,
  fault,
  className,
  children,
}: FieldFrameProps & {
  readonly id: string
  readonly className: string | undefined
  readonly children: ReactNode
}): ReactElement {
  return (
    <div className={className === undefined ? 'field' : `field ${className}`}>
      <label htmlFor={id}>{label}</label>
      <div className="field-box">
        {children}
        {unit ? (
          <span className="field-unit" id={`${id}-unit`}>
            {unit}
          </span>
        ) : null}
      </div>
      {note ? (
        <div className="field-note" id={`${id}-note`}>
          {note}
        </div>
      ) : null}
      {fault ? (
        <div className="field-fault" id={`${id}-fault`} role="alert">
          <VerdictMark verdict="fail" size={20} silent />
          <span>{fault}</span>
        </div>
      ) : null}
    </div>
  )
}

function described(
  id: string,
  unit: string | undefined,
  note: ReactNode,
  fault: string | null | undefined,
): { readonly 'aria-describedby'?: string; readonly 'aria-invalid'?: true } {
  const parts = [unit ? `${id}-unit` : '', note ? `${id}-note` : '', fault ? `${id}-fault` : ''].filter(
    (part) => part !== '',
  )
  return {
    ...(parts.length > 0 ? { 'aria-describedby': parts.join(' ') } : {}),
    ...(fault ? { 'aria-invalid': true as const } : {}),
  }
}
