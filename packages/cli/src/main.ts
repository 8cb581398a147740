import { readFile } from 'node:fs/promises'
import { text } from 'node:stream/consumers'
import { InputError } from '@castwright/engine/working'
import { run } from './run.ts'

async function read(path: string): Promise<string> {
  if (path === '-') return text(process.stdin)
  try {
    return await readFile(path, 'utf8')
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? String(error)
    throw new InputError(
      [{ path: '', found: `no readable file (${why})`, expected: 'a file that can be read' }],
      path,
    )
  }
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // A reader that stops early (head) is no defect.
  if (error.code === 'EPIPE') process.exit(0)
})

process.exitCode = await run(process.argv.slice(2), {
  out: (chunk) => process.stdout.write(chunk),
  err: (chunk) => process.stderr.write(chunk),
  read,
})
