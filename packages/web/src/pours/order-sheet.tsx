import { type ReactElement, useState } from 'react'
import { announce, Button } from '../look/index.ts'

/** The order as text: to read out, copy, share or print. */
export function OrderSheet({ text }: { readonly text: string }): ReactElement {
  const [copied, setCopied] = useState<'not' | 'copied' | 'failed'>('not')
  const copy = (): void => {
    // Where the page may not write to the clipboard the text can still be marked by hand.
    const written = navigator.clipboard?.writeText(text) ?? Promise.reject(new Error('no clipboard'))
    written.then(
      () => {
        setCopied('copied')
        announce('The order is copied')
      },
      () => setCopied('failed'),
    )
  }
  return (
    <div className="order-sheet">
      <h3>The order</h3>
      <pre>{text}</pre>
      <div className="row no-print">
        <Button onClick={copy}>{copied === 'copied' ? 'Copied' : 'Copy'}</Button>
        {'share' in navigator ? (
          <Button onClick={() => void navigator.share({ text }).catch(() => undefined)}>Share</Button>
        ) : null}
        <Button onClick={() => window.print()}>Print</Button>
      </div>
      {copied === 'failed' ? (
        <p role="alert" className="check-fault">
          This device does not let the page copy: mark the text and copy it.
        </p>
      ) : null}
    </div>
  )
}
