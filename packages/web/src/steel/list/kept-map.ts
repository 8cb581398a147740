import {
  type BarListMap,
  findColumns,
  mapOf,
  readBarListMap,
  type Table,
} from '@castwright/documents/bar-list'
import type { TextStorage } from '../../drawing/kept-draft.ts'

const PREFIX = 'castwright.barlist-map/1:'

/** A map counts for lists with the same names of columns, in any order. */
function keyOf(table: Table): string | null {
  const { header, all } = findColumns(table)
  const names = all.map(({ name }) => name.trim().toLowerCase()).sort()
  return header === 0 || names.length === 0 ? null : PREFIX + JSON.stringify(names)
}

/** The map that was kept on this device for lists with these names; null where none was, or it cannot be read. */
export function readKeptMap(storage: TextStorage, table: Table): BarListMap | null {
  const key = keyOf(table)
  if (key === null) return null
  try {
    const text = storage.getItem(key)
    return text === null ? null : readBarListMap(text)
  } catch {
    return null // storage is shut, or the text is not ours
  }
}

/** Keeps the map by which a list was read. A full or shut storage loses only that. */
export function keepMap(storage: TextStorage, table: Table, map: BarListMap): void {
  const key = keyOf(table)
  if (key === null) return
  try {
    storage.setItem(key, JSON.stringify(mapOf(findColumns(table, map), map)))
  } catch {
    // nothing to be done: the list on the screen still has it
  }
}
