// Holds every relative link and picture of the prose to a file that is there.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')
const LINK = /\]\(([^)\s]+)\)/g

function prose(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((item) => {
    if (['node_modules', 'dist', 'data', '.git'].includes(item.name)) return []
    const path = join(folder, item.name)
    if (item.isDirectory()) return prose(path)
    return item.name.endsWith('.md') ? [path] : []
  })
}

const faults = prose(root).flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(LINK)]
    .map(([, target]) => target.split('#')[0])
    .filter(
      (target) => target !== '' && !/^[a-z]+:/.test(target) && !existsSync(resolve(dirname(file), target)),
    )
    .map((target) => `${relative(root, file)}: no ${target}`),
)
for (const fault of faults) console.error(fault)
console.log(`links: ${faults.length === 0 ? 'all lead to a file' : `${faults.length} lead nowhere`}`)
process.exit(faults.length === 0 ? 0 : 1)
