import type { PanelFacts } from '@castwright/engine/steps'
import type { YardState } from '@castwright/record'
import { createContext, useContext } from 'react'
import type { PanelPlace } from './acts/act.ts'

/** What every part of a panel's screen needs. */
export interface PanelRoom {
  readonly facts: PanelFacts
  readonly place: PanelPlace
  readonly state: YardState
  readonly zone: string
  readonly now: Date
}

export const PanelContext = createContext<PanelRoom | null>(null)

export function usePanelRoom(): PanelRoom {
  const room = useContext(PanelContext)
  if (room === null) throw new Error('a part of the panel screen stands outside <PanelContext>')
  return room
}
