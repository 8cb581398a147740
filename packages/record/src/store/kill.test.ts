import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkChain } from '../device.ts'
import { nodeHash256 } from './append.ts'
import { openStore } from './open.ts'

const SEED = Number(process.env.KILL_SEED ?? Date.now() % 1_000_000)
const KILLS = 208
const LANES = 4
/** Kills on one folder before a fresh one is taken, so that reading it all stays quick. */
const KILLS_A_FOLDER = 13

/** One ending of a writer: what it said before, when it was ended. */
interface Ending {
  readonly entries: readonly string[]
  readonly files: readonly string[]
  readonly signal: NodeJS.Signals | null
}

const bundle = fileURLToPath(new URL(`../../dist/kill-writer-${process.pid}.mjs`, import.meta.url))
let root: string

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'castwright-kill-'))
  await build({
    entryPoints: [fileURLToPath(new URL('./kill-writer.ts', import.meta.url))],
    outfile: bundle,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['@photostructure/sqlite', 'pg'],
    logLevel: 'error',
  })
})
afterAll(async () => {
  await rm(root, { recursive: true, force: true })
  await rm(bundle, { force: true })
})

describe(`a writer killed ${KILLS} times at random points (KILL_SEED=${SEED})`, () => {
  it('loses nothing that was acknowledged, and its tree and chains fit after every kill', async () => {
    const lanes = await Promise.all(Array.from({ length: LANES }, (_, lane) => runLane(lane)))
    const kills = lanes.flat()
    expect(kills.length).toBeGreaterThanOrEqual(200)
    expect(kills.every(({ signal }) => signal === 'SIGKILL')).toBe(true)
    // The test means something only where most were killed while writing.
    expect(kills.filter(({ entries }) => entries.length > 0).length).toBeGreaterThan(KILLS / 2)
  }, 240_000)
})

async function runLane(lane: number): Promise<Ending[]> {
  const random = randomFrom(SEED * LANES + lane)
  const endings: Ending[] = []
  let acknowledged: { entries: string[]; files: string[] } = { entries: [], files: [] }
  for (let kill = 0; kill < KILLS / LANES; kill++) {
    const folder = join(root, `${lane}-${Math.floor(kill / KILLS_A_FOLDER)}`)
    if (kill % KILLS_A_FOLDER === 0) acknowledged = { entries: [], files: [] }
    const ending = await writeAndKill(folder, `k${lane}x${kill}`, random)
    acknowledged.entries.push(...ending.entries)
    acknowledged.files.push(...ending.files)
    await expectWhole(folder, acknowledged)
    endings.push(ending)
  }
  return endings
}

async function expectWhole(
  folder: string,
  acknowledged: { readonly entries: readonly string[]; readonly files: readonly string[] },
): Promise<void> {
  const store = await openStore({ folder, yard: 'example' })
  try {
    const entries = await store.read({ after: -1, limit: 1_000_000 })
    const ids = new Set(entries.map(({ id }) => id))
    expect(acknowledged.entries.filter((id) => !ids.has(id))).toEqual([])
    expect(await store.check()).toEqual([])
    expect(checkChain(entries, nodeHash256)).toEqual([])
    for (const sha256 of acknowledged.files) expect((await store.files.get(sha256))?.size).toBe(5000)
  } finally {
    await store.close()
  }
}

/** One kill in eight comes while the store is being opened, one before its first answer, the others up to 40 ms after that. */
function writeAndKill(folder: string, name: string, random: () => number): Promise<Ending> {
  const point = random() * 8
  const sign = point < 1 ? '' : point < 2 ? 'ready\n' : 'e '
  const delay = random() * (point < 1 ? 150 : 40)
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [bundle, folder, name], { stdio: ['ignore', 'pipe', 'pipe'] })
    let said = ''
    let complaint = ''
    let set = false
    const killLater = () => {
      set = true
      setTimeout(() => child.kill('SIGKILL'), delay)
    }
    if (sign === '') killLater()
    child.stdout.on('data', (chunk) => {
      said += chunk
      if (!set && said.includes(sign)) killLater()
    })
    child.stderr.on('data', (chunk) => {
      complaint += chunk
    })
    child.on('error', reject)
    child.on('close', (code, signal) => {
      if (signal === null) reject(new Error(`the writer ended by itself with ${code}: ${complaint}`))
      const lines = said.slice(0, said.lastIndexOf('\n') + 1).split('\n')
      const of = (mark: string) => lines.filter((line) => line.startsWith(mark)).map((line) => line.slice(2))
      resolve({ entries: of('e '), files: of('f '), signal })
    })
  })
}

/** mulberry32: the same kills for the same seed, as far as the machine's own timing lets them be. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}
