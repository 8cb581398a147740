export { canonicalBytes, canonicalText } from './canonical.ts'
export {
  checkChain,
  type DeviceState,
  type Draft,
  type MakeEntryInput,
  makeEntry,
  newDevice,
} from './device.ts'
export { differenceValue } from './difference-value.ts'
export {
  type Attachment,
  attachmentSchema,
  ENTRY_FORMAT,
  ENTRY_KINDS,
  type Entry,
  type EntryKind,
  entrySchema,
  type Person,
  panelSubject,
  ROLES,
  type Role,
  type StoredEntry,
  SUBJECT_KINDS,
  type Subject,
  storedEntrySchema,
} from './entry.ts'
export { CLOCK_TOLERANCE, type Flag } from './flags.ts'
export { createFold, type Fold, fold, type PersonSeen, type YardState } from './fold.ts'
export { type Docket, type FoldedPanel, foldPanel, type Photo } from './fold-panel.ts'
export {
  type BundleFacts,
  type CutFacts,
  type CutPlanFacts,
  panelsOfHeat,
  type RackPiece,
  type SteelState,
} from './fold-steel.ts'
export type { JobFacts, WeatherReading } from './fold-yard.ts'
export { entryHash, factOf, fromHex, type Hash, sameBytes, sha256Hex, sha256Of, toHex } from './hash.ts'
export {
  type Sign,
  type SignedHead,
  signedHeadSchema,
  signHead,
  type TreeHead,
  verifyHead,
  verifySignature,
} from './head.ts'
export {
  appendLeaf,
  type ConsistencyClaim,
  consistencyNodes,
  consistencyProof,
  emptyRoot,
  frontierOf,
  type InclusionClaim,
  inclusionNodes,
  inclusionProof,
  leafHash,
  type NodeId,
  type NodeReader,
  nodeHash,
  rootFromInclusion,
  rootOfFrontier,
  rootOfLeaves,
  type TreeNode,
  verifyConsistency,
  verifyInclusion,
} from './merkle.ts'
export { type AnyEntry, arrivedAfter, compareEntries, isStored } from './order.ts'
export {
  attachmentsOf,
  type MakePassportInput,
  makePassport,
  PASSPORT_FORMAT,
  type Passport,
  type PassportPlan,
  passportSchema,
} from './passport.ts'
export { passportEntries } from './passport-entries.ts'
export { entitledTo, mayMake, mayOpen } from './roles.ts'
export {
  barLength,
  barsLeft,
  barsPromised,
  isOpenPlan,
  isSameSteel,
  leftAfterCut,
  type PromisedBars,
  piecesTaken,
  restOfPlan,
  takenKey,
} from './shear.ts'
export { isValueOf, panelOfSubject, parseEntry, type ValueOf, valueSchemas } from './values.ts'
export {
  type PassportProblem,
  type PassportVerdict,
  problemText,
  verifyPassport,
  WHOSE_KEY,
} from './verify-passport.ts'
