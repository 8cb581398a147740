// For measurements beside the engine: the rooms of the tool take `compact` from the pour room.
export { Cover } from './cover.ts'
export { Ground } from './ground.ts'
export { randomFrom } from './pattern.ts'
export type { Site } from './spread.ts'
export { squeeze } from './squeeze.ts'
export { rowStarts, shrunk } from './start.ts'
export { Terrain } from './terrain.ts'
