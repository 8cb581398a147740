export { type DocketRow, type ReadDockets, type ReadDocketsInput, readDockets } from './read-dockets.ts'
