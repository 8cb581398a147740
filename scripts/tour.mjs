// npm run tour: every screen and every sheet of the invented job as pictures in docs/tour.
import { join } from 'node:path'
import { ensureChromium } from './chromium.mjs'
import { root, run, runTool } from './run.mjs'

const chromium = ensureChromium()
const built = await run(process.execPath, [join(root, 'scripts/build.mjs'), '--stale'])
if (built !== 0) process.exit(built)
process.exit(
  await runTool('tsx/dist/cli.mjs', ['e2e/tour.ts', ...process.argv.slice(2)], {
    env: { CASTWRIGHT_CHROMIUM: chromium },
  }),
)
