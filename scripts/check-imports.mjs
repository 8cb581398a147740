// Holds the direction of imports: cli, web, server → documents → record → engine; demo beside them. Nothing imports upward, and no
// package reaches into another's inside: only the entry points that its package.json exports.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')

/** What each package may import. */
const ALLOWED = {
  'packages/engine': [],
  'packages/record': ['engine'],
  'packages/documents': ['engine', 'record'],
  'packages/server': ['engine', 'record', 'documents'],
  'packages/web': ['engine', 'record', 'documents'],
  'packages/cli': ['engine', 'record', 'documents', 'server', 'demo'],
  demo: ['engine', 'record'],
  bench: ['engine', 'record', 'documents', 'server', 'demo'],
  e2e: ['engine', 'record', 'documents', 'server', 'demo'],
}

const IMPORT = /(?:from\s+|import\s*\(\s*|import\s+)['"]([^'"]+)['"]/g

function sources(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((item) => {
    if (['node_modules', 'dist', 'build'].includes(item.name)) return []
    const path = join(folder, item.name)
    if (item.isDirectory()) return sources(path)
    return /\.(ts|tsx|mjs|js)$/.test(item.name) ? [path] : []
  })
}

const faults = []
for (const [home, allowed] of Object.entries(ALLOWED)) {
  for (const file of sources(join(root, home))) {
    for (const [, target] of readFileSync(file, 'utf8').matchAll(IMPORT)) {
      const place = relative(root, file)
      if (target.startsWith('.')) {
        const reached = relative(root, resolve(dirname(file), target))
        // The npm scripts are no package: measurements and browser tests share them.
        const shared = !home.startsWith('packages/') && reached.startsWith('scripts/')
        if (!reached.startsWith(`${home}/`) && !shared)
          faults.push(`${place}: reaches out of its package: ${target}`)
      } else if (target.startsWith('@castwright/')) {
        const name = target.split('/')[1]
        if (!allowed.includes(name)) faults.push(`${place}: ${home} may not import ${name}`)
        if (target.includes('/src/')) faults.push(`${place}: reaches into another package: ${target}`)
      }
    }
  }
}
for (const fault of faults) console.error(fault)
console.log(`imports: ${faults.length === 0 ? 'all point one way' : `${faults.length} faults`}`)
process.exit(faults.length === 0 ? 0 : 1)
