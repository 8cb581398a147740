export { heatCases, type KnownCase } from './cases.ts'
export { type ExplicitRun, explicitDifferences } from './explicit.ts'
export { type LinesRun, methodOfLines } from './lines.ts'
export { biotRoot, erfc, halfSpaceReached, type Slab, slabLeft } from './slab.ts'
