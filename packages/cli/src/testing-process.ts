import { type ChildProcess, spawn } from 'node:child_process'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const main = resolve(fileURLToPath(import.meta.url), '../main.ts')

export type Variables = Readonly<Record<string, string>>

function child(args: readonly string[], variables: Variables): ChildProcess {
  const env = { ...process.env, ...variables }
  return spawn(process.execPath, ['--import', 'tsx', main, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env,
  })
}

/** A command line in a process of its own that stays. Resolves once it is up: its JSON is whole, or how to stop it is told. */
export function started(
  args: readonly string[],
  variables: Variables = {},
): Promise<{ readonly child: ChildProcess; readonly said: string }> {
  const running = child(args, variables)
  return new Promise((done, fail) => {
    let said = ''
    let err = ''
    running.stderr?.on('data', (chunk: Buffer) => {
      err += chunk.toString()
    })
    running.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString()
      if (/^\}$/m.test(said) || said.includes('Stop with Ctrl+C')) done({ child: running, said })
    })
    running.on('exit', (code) => fail(new Error(`ended with ${code}: ${err}`)))
  })
}

/** Tells it to stop; resolves with its exit status. */
export function stopped(running: ChildProcess): Promise<number | null> {
  running.removeAllListeners('exit')
  return new Promise((done) => {
    running.on('exit', (code) => done(code))
    running.kill('SIGTERM')
  })
}

/** A command line in a process of its own that ends by itself. */
export function ran(
  args: readonly string[],
  variables: Variables = {},
): Promise<{ readonly code: number | null; readonly err: string }> {
  const running = child(args, variables)
  let err = ''
  running.stderr?.on('data', (chunk: Buffer) => {
    err += chunk.toString()
  })
  return new Promise((done) => running.on('exit', (code) => done({ code, err })))
}
