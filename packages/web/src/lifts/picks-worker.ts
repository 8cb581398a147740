import { type PicksInput, picks } from '@castwright/engine/lift/picks'
import { type Drawing, panelOf } from '@castwright/engine/panel'
import { InputError } from '@castwright/engine/working'
import type { PicksAnswer } from './best-places.tsx'

export interface PicksQuestion extends Pick<PicksInput, 'count' | 'kind'> {
  readonly drawing: Drawing
  readonly factor: number
}

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<PicksQuestion>) => void) | null
  postMessage(answer: PicksAnswer): void
}

scope.onmessage = ({ data: { drawing, ...asked } }) => {
  try {
    const { inserts, peak, before, classical, gain } = picks({ panel: panelOf(drawing), ...asked })
    scope.postMessage({
      inserts: inserts.map(({ mark, at, kind }) => ({ mark, at: [at[0], at[1]], kind })),
      peak: peak.stress,
      before,
      classical: classical?.peak ?? null,
      gain,
    })
  } catch (error) {
    const why =
      error instanceof InputError
        ? error.issues
            .map(({ path, found, expected }) => `${path}: found ${found}, expected ${expected}`)
            .join('; ')
        : error instanceof Error
          ? error.message
          : String(error)
    scope.postMessage({ why })
  }
}
