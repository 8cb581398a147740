import type { MouldRules } from '../mould-rules.ts'
import { coverTolerance } from './en13670-2009/cover-tolerance.ts'

export const mould: MouldRules = { coverTolerance }
