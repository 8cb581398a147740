import type { ButtonHTMLAttributes, ReactElement } from 'react'

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** `main`: the one that matters; `plain`: a word that leads on. */
  readonly look?: 'main' | 'frame' | 'plain'
  /** Over the whole width and 56 px high. */
  readonly wide?: boolean
  /** Shut: stays reachable and readable, and does nothing. The text says what is still missing. */
  readonly shut?: boolean
}

/** A button of at least 48 px. A shut one keeps its place in the tab order so that its reason can be read. */
export function Button({
  look = 'frame',
  wide = false,
  shut = false,
  className,
  onClick,
  ...rest
}: ButtonProps): ReactElement {
  const names = ['button', `button-${look}`, wide ? 'button-wide' : '', className ?? ''].filter(
    (name) => name !== '',
  )
  return (
    <button
      type="button"
      {...rest}
      className={names.join(' ')}
      aria-disabled={shut || undefined}
      onClick={shut ? (event) => event.preventDefault() : onClick}
    />
  )
}
