import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { type BenchLine, median, seconds } from './line.ts'

const BIN = fileURLToPath(new URL('../packages/cli/bin/castwright.js', import.meta.url))
const BEND = [
  'bend',
  '--diameter',
  '16',
  '--grade',
  '500E',
  '--role',
  'main',
  '--inside',
  '80',
  '--code',
  'nz',
]

/** Start of the command line, bundle built, beside a bare start of Node. Goal: under 0.2 s. */
export function startUp(): BenchLine[] {
  const node = (args: readonly string[]): number =>
    seconds(() => execFileSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'inherit'] }))
  node([BIN, ...BEND])
  const bend = median(Array.from({ length: 7 }, () => node([BIN, ...BEND])))
  const bare = median(Array.from({ length: 7 }, () => node(['-e', '0'])))
  return [
    {
      what: 'castwright bend, whole process',
      value: `${(bend * 1000).toFixed(0)} ms`,
      beside: `bare node ${(bare * 1000).toFixed(0)} ms, × ${(bend / bare).toFixed(1)}; goal under 200 ms`,
    },
  ]
}
