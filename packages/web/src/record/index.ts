export { NoAnswer, Refused } from './api.ts'
export type { KeptEntry, KeptFile } from './database.ts'
export type { EntryDraft } from './device.ts'
export {
  type RecordHand,
  useDraftPlan,
  useInstant,
  useNow,
  usePanel,
  usePerson,
  usePlan,
  usePlans,
  useRecord,
  useSnapshot,
  useStore,
  useYardState,
} from './hooks.ts'
export type { NightState } from './nights.ts'
export type { PlanState } from './planner.ts'
export type { SignOutcome } from './record-store.ts'
export type { SyncState } from './sync.ts'
export { type PanelNight, useNight, useNights, useTriedNight } from './use-night.ts'
