import { type PanelFacts, STEPS, type StepId } from '@castwright/engine/steps'

export interface Rung {
  readonly step: StepId
  readonly name: string
  /** 1 to 14. */
  readonly number: number
  readonly hold: boolean
  /** `done`: finished; `open`: the first that is not; `ahead`: still to come. */
  readonly state: 'done' | 'open' | 'ahead'
  /** Its card is the one shown. */
  readonly shown: boolean
}

export interface RungsInput {
  readonly facts: PanelFacts
  /** Step whose card is shown. */
  readonly shown: StepId
  readonly isDone: (step: StepId, facts: PanelFacts) => boolean
}

/** The fourteen rungs of a panel's ladder. */
export function rungsOf({ facts, shown, isDone }: RungsInput): Rung[] {
  const done = STEPS.map(({ id }) => isDone(id, facts))
  const open = done.indexOf(false)
  return STEPS.map(({ id, name, hold }, index) => ({
    step: id,
    name,
    number: index + 1,
    hold,
    state: done[index] === true ? 'done' : index === open ? 'open' : 'ahead',
    shown: id === shown,
  }))
}

/** The first step that is not done; the last where all are. */
export function openStep(facts: PanelFacts, isDone: RungsInput['isDone']): StepId {
  return STEPS.find(({ id }) => !isDone(id, facts))?.id ?? 'hand-over'
}

export const RUNG_WORD: Readonly<Record<Rung['state'], string>> = {
  done: 'done',
  open: 'open',
  ahead: 'to come',
}
