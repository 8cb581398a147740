// Builds what runs: the command line with the server, and the app. `--web` or `--cli` builds one of them; `--stale` only what is older
// than its sources.
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import * as commandLine from '../packages/cli/bin/build.mjs'
import { root, runTool } from './run.mjs'

const only = process.argv.slice(2).filter((word) => word === '--web' || word === '--cli')
const stale = process.argv.includes('--stale')
const wants = (word) => only.length === 0 || only.includes(word)

if (wants('--cli') && !(stale && commandLine.isFresh())) {
  const started = Date.now()
  await commandLine.build()
  console.log(`command line built in ${((Date.now() - started) / 1000).toFixed(1)} s`)
}
if (wants('--web') && !(stale && webIsFresh())) {
  const code = await runTool('vite/bin/vite.js', ['build', '--logLevel', 'warn'], {
    cwd: join(root, 'packages/web'),
  })
  if (code !== 0) process.exit(code)
  console.log('app built')
}

function webIsFresh() {
  const built = statSync(join(root, 'packages/web/dist/app/index.html'), { throwIfNoEntry: false })
  if (built === undefined) return false
  const newest = Math.max(
    ...['engine/src', 'record/src', 'documents/src', 'web'].map((name) =>
      newestIn(join(root, 'packages', name)),
    ),
  )
  return built.mtimeMs >= newest
}

function newestIn(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path)
    .filter((name) => !['dist', 'node_modules', 'dev-dist'].includes(name))
    .reduce((newest, name) => Math.max(newest, newestIn(join(path, name))), 0)
}
