#!/usr/bin/env node
// Runs the built command line; where the bundle is missing or older than the sources, builds it first and says so.
import { mkdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const build = await import('./build.mjs')
if (!build.isFresh()) await buildOnce()
await import(pathToFileURL(build.bundle).href)

/** Several command lines started at once build one bundle: the first takes the lock, the others wait for it. */
async function buildOnce() {
  const lock = fileURLToPath(new URL('../.building', import.meta.url))
  const deadline = Date.now() + 120_000
  for (;;) {
    try {
      mkdirSync(lock)
      break
    } catch (error) {
      if (error.code !== 'EEXIST') throw error
      const age = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now())
      if (age > 60_000 || Date.now() > deadline) rmSync(lock, { recursive: true, force: true })
      await new Promise((done) => setTimeout(done, 100))
      if (build.isFresh()) return
    }
  }
  try {
    if (build.isFresh()) return
    process.stderr.write(`castwright: building the command line once (${join('packages', 'cli', 'dist')})\n`)
    await build.build()
  } finally {
    rmSync(lock, { recursive: true, force: true })
  }
}
