import type { MouldRules } from '../mould-rules.ts'
import { coverTolerance } from './as3600-2018/cover-tolerance.ts'

export const mould: MouldRules = { coverTolerance, chairSpacing: null, depthTolerance: null }
