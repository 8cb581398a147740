import { type ReactElement, useSyncExternalStore } from 'react'
import { Button } from '../look/index.ts'

/** `waiting`: a newer app is on this device; `taken`: another window took it, and this one still runs the older. */
type Newer = { readonly kind: 'waiting'; readonly worker: ServiceWorker } | { readonly kind: 'taken' } | null

let newer: Newer = null
let pressed = false
const listeners = new Set<() => void>()

function tell(next: Newer): void {
  newer = next
  for (const listener of listeners) listener()
}

/** Stores the app on the device, and notices a newer one. It never changes under a hand at work: the person says when. */
export function followVersions(): void {
  if (!('serviceWorker' in navigator)) return
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (pressed) window.location.reload()
    else if (newer !== null) tell({ kind: 'taken' })
  })
  navigator.serviceWorker
    .register('/sw.js')
    .then((registration) => {
      const { waiting } = registration
      if (waiting && navigator.serviceWorker.controller) tell({ kind: 'waiting', worker: waiting })
      registration.addEventListener('updatefound', () => {
        const next = registration.installing
        next?.addEventListener('statechange', () => {
          if (next.state === 'installed' && navigator.serviceWorker.controller) {
            tell({ kind: 'waiting', worker: next })
          }
        })
      })
    })
    .catch(() => {
      // No service worker here (plain HTTP on another host, private window): the app works while there is a network.
    })
}

function take(): void {
  if (newer?.kind !== 'waiting') {
    window.location.reload()
    return
  }
  pressed = true
  newer.worker.postMessage({ type: 'SKIP_WAITING' })
}

export function NewVersion(): ReactElement | null {
  const next = useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => newer,
  )
  if (next === null) return null
  return (
    <div className="strip-note no-print" role="status">
      <span>
        {next.kind === 'waiting'
          ? 'A newer version of the app is on this device.'
          : 'Another window took the newer version; this one still runs the older.'}
      </span>
      <Button onClick={take}>Use it now</Button>
    </div>
  )
}
