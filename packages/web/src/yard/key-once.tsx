import { type ReactElement, useEffect, useRef, useState } from 'react'
import { Button, Notice, TextField } from '../look/index.ts'

/** The key of a logger, shown until it is put away and never again: the server keeps its hash alone. */
export function KeyOnce({
  name,
  value,
  onDone,
}: {
  readonly name: string
  readonly value: string
  readonly onDone: () => void
}): ReactElement {
  const place = useRef<HTMLElement>(null)
  const [said, setSaid] = useState('')
  // biome-ignore lint/correctness/useExhaustiveDependencies: another key is another thing to look at
  useEffect(() => {
    setSaid('')
    place.current?.focus()
    place.current?.scrollIntoView({ block: 'nearest' })
  }, [value])
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(value)
      setSaid('Copied.')
    } catch {
      // Without TLS a browser lends no clipboard.
      place.current?.querySelector('textarea')?.select()
      setSaid('This browser does not let it be copied by a button: it is marked, copy it by hand.')
    }
  }
  return (
    <section ref={place} tabIndex={-1} aria-label={`Key of ${name}`}>
      <Notice title={`The key of ${name}`}>
        <div className="stack">
          <p>
            It is shown now and never again. Put it into the logger, which sends to{' '}
            <code className="logger-address">{`${location.origin}/api/readings`}</code> with the header{' '}
            <code>Authorization: Bearer</code> and the key. Whoever has it can send readings as {name}.
          </p>
          <TextField
            label="Key"
            className="logger-key"
            rows={2}
            readOnly
            value={value}
            spellCheck={false}
            autoComplete="off"
            onFocus={(event) => event.currentTarget.select()}
          />
          <div className="row">
            <Button look="main" onClick={() => void copy()}>
              Copy the key
            </Button>
            <Button onClick={onDone}>It is in the logger: put it away</Button>
          </div>
          <p role="status">{said}</p>
        </div>
      </Notice>
    </section>
  )
}
