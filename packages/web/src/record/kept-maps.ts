export interface TextStorage {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

/** Mappings of one kind that are kept on a device. */
const MOST = 30

/** A file's source is known again by the words of its first rows. */
export function headOf(rows: readonly (readonly unknown[])[]): string {
  return JSON.stringify(
    rows.slice(0, 5).map((row) => row.map((cell) => (cell as { text?: string } | null)?.text ?? null)),
  ).replace(/\d/g, '0')
}

/** Column mappings of one kind of file, kept by the head of the file. */
export interface KeptMaps<T> {
  /** The mapping that was kept for files with this head; null where there is none, or none that can be read. */
  readonly kept: (storage: TextStorage, head: string) => T | null
  /** Keeps a mapping for files with this head; a full storage keeps it out, and the next file is asked again. */
  readonly keep: (storage: TextStorage, head: string, map: T) => void
}

/** @param parse throws where a kept value is no such mapping */
export function keptMaps<T>(key: string, parse: (value: unknown) => T): KeptMaps<T> {
  const readAll = (storage: TextStorage): [string, unknown][] => {
    try {
      const value: unknown = JSON.parse(storage.getItem(key) ?? '[]')
      return Array.isArray(value) ? (value as [string, unknown][]) : []
    } catch {
      return []
    }
  }
  return {
    kept: (storage, head) => {
      const found = readAll(storage).find(([known]) => known === head)
      if (found === undefined) return null
      try {
        return parse(found[1])
      } catch {
        return null
      }
    },
    keep: (storage, head, map) => {
      const others = readAll(storage).filter(([known]) => known !== head)
      try {
        storage.setItem(key, JSON.stringify([[head, map], ...others].slice(0, MOST)))
      } catch {
        // A convenience only.
      }
    },
  }
}
