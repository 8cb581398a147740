// Runs one command with its output shown; resolves with its exit status.
import { spawn } from 'node:child_process'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')

export function run(command, args, { env = {}, cwd = root } = {}) {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd, stdio: 'inherit', env: { ...process.env, ...env } })
    child.on('error', fail)
    child.on('exit', (code, signal) => done(code ?? (signal === null ? 0 : 1)))
  })
}

/** Runs a tool that npm installed, by the path of its script: no shell, no npx. */
export function runTool(script, args, options) {
  return run(process.execPath, [resolve(root, 'node_modules', script), ...args], options)
}
