// npm run bench [-- --short]: what is measured, beside its peer in the same run.
import { join } from 'node:path'
import { root, run, runTool } from './run.mjs'

const built = await run(process.execPath, [join(root, 'scripts/build.mjs'), '--stale'])
if (built !== 0) process.exit(built)
process.exit(await runTool('tsx/dist/cli.mjs', ['bench/main.ts', ...process.argv.slice(2)]))
