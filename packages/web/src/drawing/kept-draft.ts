import { type Draft, EMPTY_DRAFT } from './draft.ts'

/** The part of the browser's storage that is used: tests put a plain map in its place. */
export interface TextStorage {
  getItem(key: string): string | null
  setItem(key: string, text: string): void
  removeItem(key: string): void
}

const FORMAT = 'castwright.draft/1'

function keyOf(panel: string): string {
  return `${FORMAT}:${panel}`
}

/** What was typed here before and not recorded; null where there is nothing, or nothing that can be read. */
export function readKeptDraft(storage: TextStorage, panel: string): Draft | null {
  try {
    const kept: unknown = JSON.parse(storage.getItem(keyOf(panel)) ?? 'null')
    const whole = withLater(kept)
    return isDraft(whole) ? whole : null
  } catch {
    return null // storage is shut, or the text is not ours
  }
}

/** Keeps what is being typed on this device, so that a reload or a call does not lose it. A full or shut storage loses only that. */
export function keepDraft(storage: TextStorage, panel: string, draft: Draft): void {
  try {
    storage.setItem(keyOf(panel), JSON.stringify(draft))
  } catch {
    // nothing to be done: the form itself still has it
  }
}

export function forgetDraft(storage: TextStorage, panel: string): void {
  try {
    storage.removeItem(keyOf(panel))
  } catch {
    // as above
  }
}

/** A draft that was kept before the form asked for these has said nothing about them. */
function withLater(kept: unknown): unknown {
  const { handling, voids, ducts, congested } = EMPTY_DRAFT
  return typeof kept === 'object' && kept !== null ? { handling, voids, ducts, congested, ...kept } : kept
}

/** Every field is there with the kind that the form expects; lists hold objects. */
function isDraft(value: unknown): value is Draft {
  return hasFieldsOf(EMPTY_DRAFT, value)
}

function hasFieldsOf(pattern: object, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  return Object.entries(pattern).every(([name, empty]: [string, unknown]) => {
    const found = (value as Record<string, unknown>)[name]
    if (Array.isArray(empty))
      return Array.isArray(found) && found.every((item) => typeof item === 'object' && item !== null)
    return typeof empty === 'object' && empty !== null ? hasFieldsOf(empty, found) : typeof found === 'string'
  })
}
