// npm start: builds what is older than its sources, then runs the server with the invented job until it is stopped.
import { join } from 'node:path'
import { root, run } from './run.mjs'

const built = await run(process.execPath, [join(root, 'scripts/build.mjs'), '--stale'])
if (built !== 0) process.exit(built)
process.argv = [process.execPath, 'castwright', 'demo', ...process.argv.slice(2)]
await import('../packages/cli/dist/main.js')
