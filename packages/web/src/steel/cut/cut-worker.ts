import { cutPlan, parseCutList } from '@castwright/engine/steel'
import { InputError } from '@castwright/engine/working'
import type { CutAnswer, CutQuestion } from './cut-messages.ts'

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<CutQuestion>) => void) | null
  postMessage(answer: CutAnswer): void
}

scope.onmessage = ({ data: { list, within } }) => {
  void search(list, within)
}

/** Each better plan goes out at once: whoever stops the search keeps the last of them. */
async function search(list: CutQuestion['list'], within: number): Promise<void> {
  try {
    const plan = await cutPlan({
      list: parseCutList(list),
      within,
      better: (so) => {
        scope.postMessage({ ...so, proven: null })
        return true
      },
    })
    const { bars, stockLength, lowerBound, proven, tooManyWays } = plan
    scope.postMessage({ bars, stockLength, lowerBound, proven, ...(tooManyWays ? { tooManyWays } : {}) })
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
