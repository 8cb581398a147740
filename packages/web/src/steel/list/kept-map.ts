import { type BarListMap, type Columns, mapOf, readBarListMap } from '@castwright/documents/bar-list'
import type { TextStorage } from '../../drawing/kept-draft.ts'

const PREFIX = 'castwright.barlist-map/1:'

/** A map counts for lists with the same names of columns, in any order. */
function keyOf(columns: Columns): string | null {
  const names = columns.all.map(({ name }) => name.trim().toLowerCase()).sort()
  return columns.header === 0 || names.length === 0 ? null : PREFIX + JSON.stringify(names)
}

/** The map that was kept on this device for lists with these names; null where none was, or it cannot be read. */
export function readKeptMap(storage: TextStorage, columns: Columns): BarListMap | null {
  const key = keyOf(columns)
  if (key === null) return null
  try {
    const text = storage.getItem(key)
    return text === null ? null : readBarListMap(text)
  } catch {
    return null // storage is shut, or the text is not ours
  }
}

/** Keeps the map by which a list was read. A full or shut storage loses only that. */
export function keepMap(storage: TextStorage, columns: Columns, map: BarListMap): void {
  const key = keyOf(columns)
  if (key === null) return
  try {
    storage.setItem(key, JSON.stringify(mapOf(columns, map)))
  } catch {
    // nothing to be done: the list on the screen still has it
  }
}
