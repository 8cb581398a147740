import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { InputError } from '@castwright/engine/working'

const NAME = 'in-use.json'

/** Locks of this very process: its own number in a lock file may be left by an earlier life with the same number. */
const held = new Set<string>()

/**
 * Takes a data folder for this process alone. A lock whose process is gone is taken over.
 *
 * @returns what gives the folder back.
 * @throws InputError naming the process that has it.
 */
export function lockFolder(folder: string): () => void {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const path = join(folder, NAME)
  const mine = JSON.stringify({ pid: process.pid, host: hostname(), since: new Date().toISOString() })
  // Twice: the first round may find a lock left by a process that was killed.
  for (let round = 0; round < 2; round++) {
    if (placed(path, mine)) {
      held.add(path)
      return () => {
        held.delete(path)
        if (readOr(path) === mine) rmSync(path, { force: true })
      }
    }
    const found = readOr(path)
    const owner = ownerOf(found)
    if (owner !== null && isAlive(owner, path)) {
      throw new InputError(
        [
          {
            path: '--data',
            found: `a folder in use by process ${owner.pid}${owner.host === hostname() ? '' : ` on ${owner.host}`}`,
            expected: `a folder that no other castwright has open (if that process is gone, remove ${NAME} there)`,
          },
        ],
        folder,
      )
    }
    if (readOr(path) === found) rmSync(path, { force: true })
  }
  throw new InputError(
    [{ path: '--data', found: 'a folder that another process just took', expected: 'a free folder' }],
    folder,
  )
}

/** Written beside and then linked into place: nobody ever sees a lock without its owner. */
function placed(path: string, text: string): boolean {
  const beside = `${path}.${process.pid}`
  writeFileSync(beside, text, { mode: 0o600 })
  try {
    linkSync(beside, path)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  } finally {
    rmSync(beside, { force: true })
  }
}

interface Owner {
  readonly pid: number
  readonly host: string
}

function readOr(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}

function ownerOf(text: string | null): Owner | null {
  try {
    const owner = JSON.parse(text ?? '') as Partial<Owner>
    return typeof owner.pid === 'number' && typeof owner.host === 'string'
      ? { pid: owner.pid, host: owner.host }
      : null
  } catch {
    return null
  }
}

/** A process on another computer cannot be asked, so it counts as alive: somebody must look. */
function isAlive({ pid, host }: Owner, path: string): boolean {
  if (host !== hostname()) return true
  if (pid === process.pid) return held.has(path)
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}
