// Builds the command line into packages/cli/dist with esbuild. Used by bin/castwright.js and by the root build script.
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
export const root = resolve(here, '../../..')
export const bundle = join(here, '../dist/main.js')

const SOURCES = ['engine', 'record', 'documents', 'server', 'cli'].map((name) =>
  join(root, 'packages', name, 'src'),
)
SOURCES.push(join(root, 'demo/src'), join(root, 'demo/data'), join(root, 'package-lock.json'))

/** Native, WASM or file-reading packages stay where npm put them. */
const EXTERNAL = [
  '@photostructure/sqlite',
  '@node-rs/argon2',
  'highs',
  'pdfkit',
  'qrcode',
  'pg',
  'pg-native',
  '@fontsource/*',
]

/** Newest change of any source, ms. */
export function newestSource() {
  let newest = 0
  const visit = (path) => {
    const stat = statSync(path, { throwIfNoEntry: false })
    if (stat === undefined) return
    if (!stat.isDirectory()) {
      newest = Math.max(newest, stat.mtimeMs)
      return
    }
    newest = Math.max(newest, stat.mtimeMs)
    for (const item of readdirSync(path)) visit(join(path, item))
  }
  for (const source of SOURCES) visit(source)
  return newest
}

/** Whether the built bundle is there and newer than every source. */
export function isFresh() {
  const built = statSync(bundle, { throwIfNoEntry: false })
  return built !== undefined && built.mtimeMs >= newestSource()
}

/** Messages of the schema library in other languages are never used: our own words stand at each field. */
const oneLanguage = {
  name: 'one-language',
  setup(build) {
    build.onLoad({ filter: /zod[\\/]v4[\\/]locales[\\/]index\.js$/ }, () => ({
      contents: "export { default as en } from './en.js'",
      loader: 'js',
    }))
  },
}

/** Builds into a folder beside and swaps it in, so that a reader never finds half a bundle. */
export async function build() {
  const { build: esbuild } = await import('esbuild')
  const started = Date.now()
  const fresh = join(here, `../dist.${process.pid}`)
  rmSync(fresh, { recursive: true, force: true })
  mkdirSync(fresh, { recursive: true })
  try {
    await esbuild({
      entryPoints: [join(here, '../src/main.ts')],
      outdir: fresh,
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      external: EXTERNAL,
      loader: { '.csv': 'text' },
      minifySyntax: true,
      // Less to read at each start; names stay, so that a stack still tells where.
      minifyWhitespace: true,
      plugins: [oneLanguage],
      sourcemap: false,
      logLevel: 'warning',
      absWorkingDir: root,
      banner: {
        js: "import { createRequire as createRequireForBundle } from 'node:module'; const require = createRequireForBundle(import.meta.url);",
      },
    })
    writeFileSync(join(fresh, 'built.json'), JSON.stringify({ seconds: (Date.now() - started) / 1000 }))
    swap(fresh, join(here, '../dist'))
  } finally {
    rmSync(fresh, { recursive: true, force: true })
  }
}

function swap(fresh, target) {
  const old = join(here, `../dist.old.${process.pid}`)
  // `dist` also holds what the type checker writes; only the bundle is replaced.
  mkdirSync(target, { recursive: true })
  mkdirSync(old, { recursive: true })
  const keep = (name) => name.startsWith('types')
  for (const name of readdirSync(target)) if (!keep(name)) tryRename(join(target, name), join(old, name))
  const names = readdirSync(fresh).sort((a, b) => Number(a === 'main.js') - Number(b === 'main.js'))
  for (const name of names) renameSync(join(fresh, name), join(target, name))
  rmSync(old, { recursive: true, force: true })
}

function tryRename(from, to) {
  try {
    renameSync(from, to)
  } catch (error) {
    if (error.code !== 'ENOENT') throw error
  }
}
