import type { MouldRules } from '../mould-rules.ts'
import { coverTolerance } from './aci117-10/cover-tolerance.ts'
import { depthTolerance } from './aci117-10/depth-tolerance.ts'

export const mould: MouldRules = { coverTolerance, chairSpacing: null, depthTolerance }
