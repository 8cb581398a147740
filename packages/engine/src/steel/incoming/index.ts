export { BARS_TO_READ } from './bar-findings.ts'
export {
  type Bundle,
  bundleSchema,
  heatKey,
  heatsOf,
  PROCESSES,
  type Process,
  parseBundle,
  SURFACES,
  type Surface,
  sameHeat,
} from './bundle.ts'
export { EXAMPLE_BUNDLE } from './example-bundle.ts'
export type { BundleFindings, Finding, Outcome } from './finding.ts'
export { bundleFindings } from './findings.ts'
export { type PanelSteel, type SteelAccepted, steelAccepted } from './panel-steel.ts'
export { countRibs, type Rib, type RibCount } from './rib-count.ts'
export { SHORTEST_SAMPLE, weighedDiameter } from './size-findings.ts'
export {
  type BundleDecision,
  type BundleStanding,
  bundleStanding,
  keptApart,
  mayAccept,
  mayAcceptNow,
} from './standing.ts'
