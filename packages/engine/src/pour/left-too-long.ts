import { commonPractice, type Source } from '../working/source.ts'

/** Minutes that fresh concrete may wait before what joins it is worked: half of the 30 min of warm weather, for thin visible work. */
export const LEFT_TOO_LONG = 15

export const LEFT_SOURCE: Source = commonPractice(
  'half of the 30 min of warm weather, for thin visible work; concrete that a head no longer sinks into by itself is a joint',
)
