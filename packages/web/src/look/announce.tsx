import { type ReactElement, useSyncExternalStore } from 'react'

let said = ''
const listeners = new Set<() => void>()

/** Says a sentence to screen readers: a verdict that changed, an entry that came into the record. */
export function announce(sentence: string): void {
  // The same sentence twice must be read twice: a no-break space at the end makes it another one.
  said = said === sentence ? `${sentence}\u00a0` : sentence
  for (const listener of listeners) listener()
}

/** Stands once in the shell. */
export function Announcer(): ReactElement {
  const sentence = useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => said,
  )
  return (
    <div className="only-read" aria-live="polite" role="status">
      {sentence}
    </div>
  )
}
