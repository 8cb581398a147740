// npm run test:e2e [name]: the end-to-end tests alone.
import { join } from 'node:path'
import { ensureChromium } from './chromium.mjs'
import { root, run, runTool } from './run.mjs'

const chromium = ensureChromium()
const built = await run(process.execPath, [join(root, 'scripts/build.mjs'), '--stale'])
if (built !== 0) process.exit(built)
process.exit(
  await runTool('vitest/vitest.mjs', ['run', '--config', 'e2e/vitest.config.ts', ...process.argv.slice(2)], {
    env: { CASTWRIGHT_CHROMIUM: chromium },
  }),
)
