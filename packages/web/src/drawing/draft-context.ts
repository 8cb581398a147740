import { createContext, useContext } from 'react'
import type { DraftAct } from './acts/act.ts'
import type { Draft } from './draft.ts'

/** What every part of the form needs. */
export interface DraftRoom {
  readonly draft: Draft
  readonly act: <Input>(act: DraftAct<Input>, input: Input) => void
  /** What is wrong at a field; null where nothing is, or while it is not to be shown yet. */
  readonly fault: (field: string) => string | null
  /** A field was left: from now on what is wrong at it is shown. */
  readonly left: (field: string) => void
}

export const DraftContext = createContext<DraftRoom | null>(null)

export function useDraft(): DraftRoom {
  const room = useContext(DraftContext)
  if (room === null) throw new Error('a part of the drawing form stands outside <DraftContext>')
  return room
}
