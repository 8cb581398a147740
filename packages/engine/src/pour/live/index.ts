export { LEFT_TOO_LONG } from '../left-too-long.ts'
export { INSERTION_SECONDS, secondsAt, TOUCHES_ONLY } from '../seconds-in.ts'
export { type Reached, type ReachedInput, reachedOf } from './reached.ts'
export { type Stop, stopAt, stopsOf } from './stops.ts'
export type { Wait } from './waits.ts'
export { goTo, newWalk, type Place, pulledOut, takeBack, type Visit, type Walk } from './walk.ts'
export {
  goOn,
  type StopState,
  type WalkState,
  type WalkStateInput,
  walkState,
  type ZoneState,
} from './walk-state.ts'
export { mergedVisits, recordedVisits, tickedZones, type VisitRow, WALK_ROWS, zoneRows } from './zone-rows.ts'
