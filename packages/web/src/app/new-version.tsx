import { type ReactElement, useSyncExternalStore } from 'react'
import { Button } from '../look/index.ts'

let waiting: ServiceWorker | null = null
const listeners = new Set<() => void>()

function tell(worker: ServiceWorker | null): void {
  waiting = worker
  for (const listener of listeners) listener()
}

/** Stores the app on the device, and notices a newer one. It never changes under a hand at work: the person says when. */
export function followVersions(): void {
  if (!('serviceWorker' in navigator)) return
  let wanted = false
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (wanted) window.location.reload()
  })
  listeners.add(() => {
    wanted = wanted || waiting !== null
  })
  navigator.serviceWorker
    .register('/sw.js')
    .then((registration) => {
      if (registration.waiting && navigator.serviceWorker.controller) tell(registration.waiting)
      registration.addEventListener('updatefound', () => {
        const next = registration.installing
        next?.addEventListener('statechange', () => {
          if (next.state === 'installed' && navigator.serviceWorker.controller) tell(next)
        })
      })
    })
    .catch(() => {
      // No service worker here (plain HTTP on another host, private window): the app works while there is a network.
    })
}

export function NewVersion(): ReactElement | null {
  const next = useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => waiting,
  )
  if (next === null) return null
  return (
    <div className="strip-note no-print" role="status">
      <span>A newer version of the app is on this device.</span>
      <Button onClick={() => next.postMessage({ type: 'SKIP_WAITING' })}>Use it now</Button>
    </div>
  )
}
