// npm test: every test there is. Unit, property and reference tests first, then the app in a real browser. Closes with one line
// `N passed, N failed`.
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ensureChromium } from './chromium.mjs'
import { root, run, runTool } from './run.mjs'

const folder = mkdtempSync(join(tmpdir(), 'castwright-test-'))
let passed = 0
let failed = 0
let broken = false

async function suite(name, args, env) {
  const report = join(folder, `${name}.json`)
  const code = await runTool(
    'vitest/vitest.mjs',
    ['run', ...args, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    { env },
  )
  if (code !== 0) broken = true
  if (!existsSync(report)) {
    failed += 1
    return
  }
  const result = JSON.parse(readFileSync(report, 'utf8'))
  passed += result.numPassedTests
  failed += result.numFailedTests
  // A file that could not be loaded fails no test of its own, yet it must count.
  failed += result.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length
}

await suite('unit', process.argv.slice(2))
if (process.argv.length <= 2) {
  const chromium = ensureChromium()
  const built = await run(process.execPath, [join(root, 'scripts/build.mjs'), '--stale'])
  if (built === 0) await suite('e2e', ['--config', 'e2e/vitest.config.ts'], { CASTWRIGHT_CHROMIUM: chromium })
  else failed += 1
}
rmSync(folder, { recursive: true, force: true })
if (broken && failed === 0) failed += 1
console.log(`\n${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)
