import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lockFolder } from './folder-lock.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'castwright-lock-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('lock of a data folder', () => {
  it('is taken once and can be taken again after it was given back', () => {
    const free = lockFolder(folder)
    expect(() => lockFolder(folder)).toThrow(/in use by process/)
    free()
    expect(readdirSync(folder)).toEqual([])
    lockFolder(folder)()
  })

  it('of a process that is gone is taken over', () => {
    const gone = spawnSync(process.execPath, ['-e', 'process.stdout.write(String(process.pid))'])
    const pid = Number(gone.stdout.toString())
    writeFileSync(join(folder, 'in-use.json'), JSON.stringify({ pid, host: hostname(), since: '' }))
    lockFolder(folder)()
  })

  it('left by an earlier life with the same process number is taken over', () => {
    writeFileSync(
      join(folder, 'in-use.json'),
      JSON.stringify({ pid: process.pid, host: hostname(), since: '' }),
    )
    lockFolder(folder)()
    expect(existsSync(join(folder, 'in-use.json'))).toBe(false)
  })

  it('of another computer is respected, and the message says what to do', () => {
    writeFileSync(join(folder, 'in-use.json'), JSON.stringify({ pid: 1, host: 'elsewhere', since: '' }))
    expect(() => lockFolder(folder)).toThrow(/on elsewhere.*remove in-use\.json/)
  })

  it('that cannot be read is replaced', () => {
    writeFileSync(join(folder, 'in-use.json'), 'half a')
    lockFolder(folder)()
  })
})
