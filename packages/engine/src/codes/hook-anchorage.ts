import { belowZero } from '../working/guard.ts'
import { type LapRange, lapGaps } from './lap-limits.ts'
import type { LapInput } from './steel-rules.ts'

export interface HookAnchorageInput
  extends Pick<LapInput, 'diameter' | 'yield' | 'concrete' | 'cover' | 'gap' | 'below' | 'bond'> {
  /** Concrete beside the plane of the hook, mm. */
  readonly sideCover: number
  /** Concrete behind the tail of the hook, mm. */
  readonly tailCover: number
}

/** What is missing, impossible or outside the range of a rule for hooks, by field. */
export function hookGaps(input: HookAnchorageInput, range: LapRange): string[] {
  const { sideCover, tailCover } = input
  return [...lapGaps({ ...input, share: 100, apart: 0 }, range), ...belowZero({ sideCover, tailCover })]
}
