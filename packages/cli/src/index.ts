export { run } from './run.ts'
