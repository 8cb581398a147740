import { type ReactElement, type ReactNode, useId } from 'react'

export interface SheetProps {
  readonly title?: ReactNode
  readonly note?: ReactNode
  readonly children?: ReactNode
  readonly className?: string
  /** Children run to the edge: rows bring their own padding. */
  readonly bare?: boolean
  readonly level?: 2 | 3
}

/** A piece of paper on the desk: a hairline around, a heading, no shadow. */
export function Sheet({
  title,
  note,
  children,
  className,
  bare = false,
  level = 2,
}: SheetProps): ReactElement {
  const id = useId()
  const Heading = `h${level}` as const
  return (
    <section
      className={className === undefined ? 'sheet' : `sheet ${className}`}
      {...(title === undefined ? {} : { 'aria-labelledby': id })}
    >
      {title === undefined ? null : (
        <header className="sheet-head">
          <Heading id={id}>{title}</Heading>
          {note === undefined ? null : <p className="sheet-note">{note}</p>}
        </header>
      )}
      {children === undefined ? null : bare ? children : <div className="sheet-body">{children}</div>}
    </section>
  )
}

export interface NoticeProps {
  readonly kind?: 'accent' | 'fail' | 'unknown'
  readonly title?: ReactNode
  readonly children?: ReactNode
}

/** A word at the side: what to do now, what failed, what is not known. */
export function Notice({ kind = 'accent', title, children }: NoticeProps): ReactElement {
  return (
    <div className={`notice notice-${kind}`}>
      {title === undefined ? null : <strong>{title}</strong>}
      {children === undefined ? null : <div>{children}</div>}
    </div>
  )
}

/** The caution of a step: a short order, then the reason. */
export function Caution({ order, text }: { readonly order: string; readonly text: string }): ReactElement {
  return (
    <div className="caution" role="note">
      <strong>{order}</strong>
      {text}
    </div>
  )
}
