export { type ClearPlaceInput, clearPlace, LEAST_EDGE } from './clear-place.ts'
