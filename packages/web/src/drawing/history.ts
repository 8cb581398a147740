import type { DraftAct } from './acts/act.ts'
import type { Draft } from './draft.ts'

interface Past {
  readonly draft: Draft
  readonly label: string
  readonly merge: string | null
}

/** A draft with what led to it, so that every act can be taken back. */
export interface History {
  readonly draft: Draft
  readonly past: readonly Past[]
  readonly future: readonly Past[]
}

/** Steps kept for taking back. */
const MOST_STEPS = 200

export function startHistory(draft: Draft): History {
  return { draft, past: [], future: [] }
}

/** The history after an act. Letters typed one after the other into one field are one step. */
export function perform<Input>(history: History, act: DraftAct<Input>, input: Input): History {
  const draft = act.next(history.draft, input)
  if (draft === history.draft) return history
  const merge = act.merge === undefined ? null : `${act.name} ${act.merge(input)}`
  const last = history.past.at(-1)
  if (merge !== null && last?.merge === merge && history.future.length === 0) {
    return { draft, past: history.past, future: [] }
  }
  const past = [...history.past, { draft: history.draft, label: act.label, merge }].slice(-MOST_STEPS)
  return { draft, past, future: [] }
}

export function undo(history: History): History {
  const last = history.past.at(-1)
  if (last === undefined) return history
  return {
    draft: last.draft,
    past: history.past.slice(0, -1),
    future: [{ ...last, draft: history.draft }, ...history.future],
  }
}

export function redo(history: History): History {
  const [next, ...later] = history.future
  if (next === undefined) return history
  return { draft: next.draft, past: [...history.past, { ...next, draft: history.draft }], future: later }
}
