import type { MouldRules } from '../mould-rules.ts'
import { coverTolerance } from './nzs3109-1997/cover-tolerance.ts'

export const mould: MouldRules = { coverTolerance, chairSpacing: null, depthTolerance: null }
