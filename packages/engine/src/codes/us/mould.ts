import type { MouldRules } from '../mould-rules.ts'
import { coverTolerance } from './aci117-10/cover-tolerance.ts'

export const mould: MouldRules = { coverTolerance, chairSpacing: null }
