import { ownCover } from '@castwright/engine/cure'
import { openPrior, outOfRange, outOfRangeText } from '@castwright/engine/cure/gain'
import { strengthLine } from './strength-line.ts'
import type { StrengthAnswer, StrengthWork } from './strength-work.ts'

/** Does a piece of work; in its worker, since the open tests are heavy and a fit takes a while. */
export function answerWork(work: StrengthWork): StrengthAnswer {
  if (work.kind === 'cover') return { kind: 'cover', found: ownCover({ mix: work.mix }) }
  const { proportions } = work.mix
  if (proportions === undefined) throw new Error('open tests: found a mix without proportions')
  const outside = outOfRange(proportions)
  const far = outside.some((each) => each.far)
  const line = far ? null : strengthLine({ ...work.line, open: openPrior(proportions) })
  return { kind: 'open', found: { line, warnings: outside.map(outOfRangeText), far } }
}
