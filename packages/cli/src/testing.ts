import { readFile } from 'node:fs/promises'
import { InputError } from '@castwright/engine/working'
import { run } from './run.ts'

export interface Ran {
  readonly code: number
  readonly out: string
  readonly err: string
  /** The JSON document on standard output. */
  readonly json: () => Record<string, unknown>
}

/**
 * Runs a command line in process, for tests. `files` stand in for the disk by path (`-` is standard input); any other
 * path is read from disk.
 */
export async function cli(
  args: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  let out = ''
  let err = ''
  const code = await run(args, {
    out: (chunk) => {
      out += chunk
    },
    err: (chunk) => {
      err += chunk
    },
    read: async (path) => {
      const given = files[path]
      if (given !== undefined) return given
      return readFile(path, 'utf8').catch(() => {
        throw new InputError(
          [{ path: '', found: 'no readable file', expected: 'a file that can be read' }],
          path,
        )
      })
    },
  })
  return { code, out, err, json: () => JSON.parse(out) as Record<string, unknown> }
}
