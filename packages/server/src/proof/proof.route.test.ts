import {
  canonicalBytes,
  fromHex,
  leafHash,
  type StoredEntry,
  verifyConsistency,
  verifyHead,
  verifyInclusion,
} from '@castwright/record'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { drawingOf, LEAD, type TestVisitor, type TestYard, testYard, VIEWER } from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
beforeAll(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  const drawings = ['W1', 'W2', 'W3', 'W4', 'W5'].map((mark) =>
    lead.entry({
      kind: 'drawing',
      subject: { kind: 'panel', id: `J1/${mark}` },
      revision: 'A',
      value: drawingOf(mark) as never,
    }),
  )
  await lead.send(...drawings)
})
afterAll(() => yard.end())

describe('proofs', () => {
  it('of the head: signed with the key that is given out to anyone', async () => {
    const { body: head } = await lead.get('/api/head')
    const { body: key } = await yard.visitor().get('/api/key')
    expect(head).toMatchObject({ size: 5, yard: 'test-yard', time: new Date(yard.now).toISOString() })
    expect(key.yard).toBe('test-yard')
    expect(verifyHead(head as never, key.publicKey as string)).toBe(true)
  })

  it('of inclusion hold for each entry, and for no other', async () => {
    const { body } = await lead.get('/api/entries')
    const root = fromHex((body.head as { root: string }).root)
    for (const entry of body.entries as StoredEntry[]) {
      const { index } = entry
      const proof = await lead.get(`/api/proof/inclusion?index=${index}&size=5`)
      const path = (proof.body.proof as string[]).map(fromHex)
      const claim = { index, size: 5, root, path, proof: path }
      expect(verifyInclusion({ ...claim, leaf: leafHash(canonicalBytes(entry)) } as never)).toBe(true)
      const changed = { ...entry, revision: 'B' }
      expect(verifyInclusion({ ...claim, leaf: leafHash(canonicalBytes(changed)) } as never)).toBe(false)
    }
  })

  it('of consistency hold from an earlier head', async () => {
    const early = await yard.store.head({ size: 3 })
    const { root } = await yard.store.head()
    const { body } = await lead.get('/api/proof/consistency?from=3&to=5')
    const path = (body.proof as string[]).map(fromHex)
    const claim = { from: 3, to: 5, fromRoot: fromHex(early.root), toRoot: fromHex(root), path, proof: path }
    expect(verifyConsistency(claim as never)).toBe(true)
  })

  it.each([
    'inclusion?index=5&size=5',
    'inclusion?index=0&size=6',
    'inclusion?index=-1&size=5',
    'inclusion?index=0',
    'inclusion?index=0&size=5&more=1',
    'consistency?from=6&to=5',
    'consistency?from=1&to=9',
    'consistency?from=a&to=5',
  ])('outside the log are refused: %s', async (path) => {
    const { status, body } = await lead.get(`/api/proof/${path}`)
    expect(status).toBe(422)
    expect(body.issues).not.toEqual([])
  })

  it('are for everyone who may read, and need a session', async () => {
    const viewer = await yard.enter(VIEWER)
    for (const path of [
      '/api/head',
      '/api/proof/inclusion?index=0&size=5',
      '/api/proof/consistency?from=1&to=5',
    ]) {
      expect((await viewer.get(path)).status).toBe(200)
      expect((await yard.visitor().get(path)).status).toBe(401)
    }
  })
})
