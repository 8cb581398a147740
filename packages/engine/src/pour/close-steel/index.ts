export { CLEAR_HEADS, CLOSE_STEEL, closeSteel } from './close-steel.ts'
export { overBars, type Tight } from './tight.ts'
