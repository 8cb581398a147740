import { type ReactElement, useEffect, useId, useRef, useState } from 'react'
import { Button, Notice } from '../look/index.ts'

export interface PinPadProps {
  readonly busy: boolean
  readonly fault: string | null
  /** On the button that sends it: `Sign in`, `Sign`. */
  readonly word: string
  readonly onPin: (pin: string) => void
}

const LEAST = 6
const MOST = 12

/** Twelve big keys for gloves; a keyboard types into the same field. The PIN is forgotten as soon as it was sent. */
export function PinPad({ busy, fault, word, onPin }: PinPadProps): ReactElement {
  const id = useId()
  const [pin, setPin] = useState('')
  const box = useRef<HTMLInputElement>(null)
  useEffect(() => box.current?.focus({ preventScroll: true }), [])
  const short = pin.length < LEAST
  const send = (): void => {
    if (short || busy) return
    setPin('')
    onPin(pin)
  }
  const type = (digit: string): void => setPin((before) => (before.length < MOST ? before + digit : before))
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        send()
      }}
    >
      <div className="field">
        <label htmlFor={id}>PIN</label>
        <input
          id={id}
          ref={box}
          type="password"
          inputMode="none"
          autoComplete="off"
          value={pin}
          aria-describedby={`${id}-note`}
          onChange={(event) => setPin(event.currentTarget.value.replace(/\D/g, '').slice(0, MOST))}
        />
        <div className="field-note" id={`${id}-note`}>
          {pin.length} of {LEAST} to {MOST} digits
        </div>
      </div>
      <div className="pin-pad">
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((digit) => (
          <Button key={digit} onClick={() => type(digit)}>
            {digit}
          </Button>
        ))}
        <Button className="pin-word" onClick={() => setPin('')}>
          Clear
        </Button>
        <Button onClick={() => type('0')}>0</Button>
        <Button className="pin-word" onClick={() => setPin(pin.slice(0, -1))}>
          Back
        </Button>
      </div>
      {fault === null ? null : (
        <div role="alert">
          <Notice kind="fail" title="Not signed">
            {fault}
          </Notice>
        </div>
      )}
      <Button look="main" wide type="submit" shut={short || busy}>
        {busy ? 'Asking …' : short ? `${word}: at least ${LEAST} digits` : word}
      </Button>
    </form>
  )
}
