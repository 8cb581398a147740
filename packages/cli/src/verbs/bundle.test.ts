import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

function file(value: unknown): string {
  const path = join(mkdtempSync(join(tmpdir(), 'castwright-bundle-')), 'bundle.json')
  writeFileSync(path, JSON.stringify(value))
  return path
}

const GOOD = {
  ordered: { diameter: 12, grade: '500E', length: 6000 },
  docket: null,
  tag: { heat: 'H4022' },
  certificate: { number: 'C-9', heat: 'H4022', grade: '500E', process: 'micro-alloyed' },
  seen: ['500E'],
  barsRead: 3,
  weighed: [{ length: 1000, mass: 0.89 }],
  surface: ['clean'],
}

describe('castwright bundle', () => {
  it('accepts what agrees, without a docket, and says that a person decides', async () => {
    const { code, json } = await cli(['bundle', file(GOOD), '--family', 'nz', '--json'])
    expect(code).toBe(0)
    expect(json()).toMatchObject({ outcome: 'accept', because: [] })
    const shown = await cli(['bundle', file(GOOD), '--family', 'nz'])
    expect(shown.out).toContain('Who accepts it is a person, by name.')
  })

  it('keeps apart a bar of another grade, and asks where something is missing', async () => {
    const wrong = await cli(['bundle', file({ ...GOOD, seen: ['300E'] }), '--family', 'nz', '--json'])
    expect([wrong.code, wrong.json().outcome]).toEqual([1, 'quarantine'])
    const { weighed: _weighed, ...bare } = GOOD
    const open = await cli(['bundle', file(bare), '--family', 'nz', '--json'])
    expect([open.code, open.json().outcome]).toEqual([1, 'ask'])
    expect(JSON.stringify(open.json().unknown)).toContain('weighed')
  })

  it('refuses what cannot be, by field', async () => {
    const { code, err } = await cli(['bundle', file({ ...GOOD, barsRead: 0, heat: 1 }), '--family', 'nz'])
    expect(code).toBe(2)
    expect(err).toMatch(/barsRead/)
    expect(err).toMatch(/heat/)
  })
})
