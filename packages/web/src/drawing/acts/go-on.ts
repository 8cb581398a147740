import type { Draft } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** What was typed on this device before comes back; undo leads to the start. */
export const goOn: DraftAct<Draft> = {
  name: 'go-on',
  label: 'what was typed before',
  next: (_, kept) => kept,
}
