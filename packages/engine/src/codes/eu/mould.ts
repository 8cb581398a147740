import type { MouldRules } from '../mould-rules.ts'
import { chairSpacing } from './bs7973-2-2001/chair-spacing.ts'
import { coverTolerance } from './en13670-2009/cover-tolerance.ts'

export const mould: MouldRules = { coverTolerance, chairSpacing, depthTolerance: null }
