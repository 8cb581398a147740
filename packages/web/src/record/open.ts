// Loaded after the shell: the store brings the database, the fold and every value's schema with it.
import { createApi } from './api.ts'
import { DeviceDatabase } from './database.ts'
import type { RecordRoom } from './hooks.ts'
import { browserLock } from './lock.ts'
import { Nights, type NightWorker } from './nights.ts'
import { Planner, type PlanWorker } from './planner.ts'
import { RecordStore } from './record-store.ts'

/** Opens what this device holds and follows the record from now on. */
export async function openRecord(): Promise<RecordRoom> {
  const store = new RecordStore({ db: new DeviceDatabase(), api: createApi(), lock: browserLock })
  const planner = new Planner(
    () =>
      new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' }) as unknown as PlanWorker,
  )
  const nights = new Nights(
    () =>
      new Worker(new URL('./night-worker.ts', import.meta.url), { type: 'module' }) as unknown as NightWorker,
  )
  await store.start()
  listen(store)
  return { store, planner, nights }
}

/** Wakes the sync when the network is back, when the app comes to the front, and when the record has something new. */
function listen(store: RecordStore): void {
  const wake = (): void => void store.sync.wake()
  window.addEventListener('online', wake)
  window.addEventListener('offline', wake)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') wake()
  })
  let events: EventSource | null = null
  const follow = (): void => {
    const wanted = store.snapshot().session?.person != null && store.snapshot().sync.online === true
    if (wanted && events === null) {
      events = new EventSource('/api/events')
      events.addEventListener('entries', wake)
      events.onopen = wake // what came while the line was down was not told
      events.onerror = () => {
        // The browser tries again by itself unless the server said no; then the next wake decides.
        if (events?.readyState === EventSource.CLOSED) events = null
      }
    }
    if (!wanted && events !== null) {
      events.close()
      events = null
    }
  }
  store.subscribe(follow)
  follow()
}
