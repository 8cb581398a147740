/** What the browser says of the room that it gives us, asked anew each time. */
export interface StorageAnswer {
  /** `granted`: the browser will not clear it by itself; `refused`: it may; `cannot-say`: it has no such promise. */
  readonly persistence: 'granted' | 'refused' | 'cannot-say'
  /** Bytes; null where the browser does not tell. */
  readonly used: number | null
  readonly quota: number | null
}

/** Asks the browser to keep what is here, and how much room there is. */
export async function askStorage(): Promise<StorageAnswer> {
  if (!('storage' in navigator)) return { persistence: 'cannot-say', used: null, quota: null }
  let persistence: StorageAnswer['persistence'] = 'cannot-say'
  let [used, quota]: [number | null, number | null] = [null, null]
  try {
    if ('persist' in navigator.storage) {
      const granted = (await navigator.storage.persisted()) || (await navigator.storage.persist())
      persistence = granted ? 'granted' : 'refused'
    }
    const room = await navigator.storage.estimate()
    used = room.usage ?? null
    quota = room.quota ?? null
  } catch {
    // a browser that refuses to answer promises nothing
  }
  return { persistence, used, quota }
}
