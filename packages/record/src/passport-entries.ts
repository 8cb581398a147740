import type { StoredEntry } from './entry.ts'
import { foldSteel, isSteel } from './fold-steel.ts'

/**
 * What goes into a panel's passport: its own entries, what they rest on or point at, the bundles whose steel it holds with what was decided
 * about them, and the yard's file in force when the panel was last spoken of. In order of the log.
 */
export function passportEntries(panel: string, log: readonly StoredEntry[]): StoredEntry[] {
  const byId = new Map(log.map((entry) => [entry.id, entry]))
  const taken = new Map<string, StoredEntry>()
  const waiting = log.filter(({ subject }) => subject.kind === 'panel' && subject.id === panel)
  const lastIndex = waiting.reduce((last, { index }) => Math.max(last, index), -1)
  const yardFile = log.filter(({ kind, index }) => kind === 'yard' && index <= lastIndex).at(-1)
  if (yardFile && waiting.length > 0) waiting.push(yardFile)
  const steel = foldSteel(log.filter(isSteel)).state.byPanel.get(panel) ?? []
  for (const id of steel.flatMap(({ entries }) => entries)) {
    const entry = byId.get(id)
    if (entry && waiting.length > 0) waiting.push(entry)
  }
  for (let entry = waiting.pop(); entry !== undefined; entry = waiting.pop()) {
    if (taken.has(entry.id)) continue
    taken.set(entry.id, entry)
    for (const id of [...(entry.rests ?? []), ...(entry.about === undefined ? [] : [entry.about])]) {
      const other = byId.get(id)
      if (other) waiting.push(other)
    }
  }
  return sortFor([...taken.values()])
}

export function sortFor(entries: readonly StoredEntry[]): StoredEntry[] {
  return [...entries].sort((a, b) => a.index - b.index)
}
