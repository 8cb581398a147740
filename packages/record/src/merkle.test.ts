import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromHex, sha256Of, toHex } from './hash.ts'
import {
  appendLeaf,
  consistencyNodes,
  consistencyProof,
  emptyRoot,
  frontierOf,
  inclusionNodes,
  inclusionProof,
  leafHash,
  type NodeId,
  nodeHash,
  rootOfFrontier,
  rootOfLeaves,
  type TreeNode,
  verifyConsistency,
  verifyInclusion,
} from './merkle.ts'

const SEED = 9162

/** Eight leaves that public implementations of the tree are tested with; roots and proofs computed, second method: the definition in Python. */
const LEAVES = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f',
]
const ROOTS = [
  'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
]
const leaves = LEAVES.map((hex) => leafHash(fromHex(hex)))

/** The proofs of RFC 9162, 2.1.3.1 and 2.1.4.1, written as they are defined. */
function splitOf(count: number): number {
  return 2 ** (31 - Math.clz32(count - 1))
}
function definedPath(index: number, d: readonly Uint8Array[]): Uint8Array[] {
  if (d.length === 1) return []
  const k = splitOf(d.length)
  return index < k
    ? [...definedPath(index, d.slice(0, k)), rootOfLeaves(d.slice(k))]
    : [...definedPath(index - k, d.slice(k)), rootOfLeaves(d.slice(0, k))]
}
function definedSubproof(m: number, d: readonly Uint8Array[], whole: boolean): Uint8Array[] {
  if (m === d.length) return whole ? [] : [rootOfLeaves(d)]
  const k = splitOf(d.length)
  return m <= k
    ? [...definedSubproof(m, d.slice(0, k), whole), rootOfLeaves(d.slice(k))]
    : [...definedSubproof(m - k, d.slice(k), false), rootOfLeaves(d.slice(0, k))]
}

/** A tree grown leaf by leaf, with the complete subtrees that were kept. */
function grow(hashes: readonly Uint8Array[]) {
  const kept = new Map<string, Uint8Array>()
  let frontier: TreeNode[] = []
  const roots = [rootOfFrontier(frontier)]
  for (const leaf of hashes) {
    const grown = appendLeaf(frontier, leaf)
    frontier = grown.frontier
    for (const { level, index, hash } of grown.made) kept.set(`${level} ${index}`, hash)
    roots.push(rootOfFrontier(frontier))
  }
  const read = ({ level, index }: NodeId): Uint8Array => {
    const hash = kept.get(`${level} ${index}`)
    if (hash === undefined) throw new Error(`no node ${level} ${index}`)
    return hash
  }
  return { frontier, roots, read, kept }
}

function someLeaves(count: number): Uint8Array[] {
  return Array.from({ length: count }, (_, index) => leafHash(new TextEncoder().encode(`leaf ${index}`)))
}

describe('Merkle tree of RFC 9162', () => {
  it('has the hash of nothing as the root of no leaves', () => {
    expect(toHex(emptyRoot())).toBe(ROOTS[0])
    expect(toHex(rootOfFrontier([]))).toBe(ROOTS[0])
  })

  it('tells a leaf from a node', () => {
    const two = nodeHash(leaves[0] as Uint8Array, leaves[1] as Uint8Array)
    const forged = leafHash(new Uint8Array([...(leaves[0] as Uint8Array), ...(leaves[1] as Uint8Array)]))
    expect(toHex(two)).not.toBe(toHex(forged))
  })

  it.each(ROOTS.map((root, size) => [size, root] as const))(
    'has the known root of %i leaves',
    (size, root) => {
      expect(toHex(rootOfLeaves(leaves.slice(0, size)))).toBe(root)
      expect(toHex(grow(leaves.slice(0, size)).roots[size] as Uint8Array)).toBe(root)
    },
  )

  it('gives the known proofs', () => {
    const { read } = grow(leaves)
    const short = (proof: readonly Uint8Array[]) => proof.map((hash) => toHex(hash).slice(0, 16))
    expect(short(inclusionProof(5, 8, read))).toEqual([
      'bc1a0643b12e4d2d',
      'ca854ea128ed050b',
      'd37ee418976dd957',
    ])
    expect(short(inclusionProof(2, 3, read))).toEqual(['fac54203e7cc696c'])
    expect(short(inclusionProof(0, 7, read))).toEqual([
      '96a296d224f285c6',
      '5f083f0a1a33ca07',
      '837dbb152e9b0790',
    ])
    expect(short(consistencyProof(6, 8, read))).toEqual([
      '0ebc5d3437fbe2db',
      'ca854ea128ed050b',
      'd37ee418976dd957',
    ])
    expect(short(consistencyProof(3, 7, read))).toEqual([
      '0298d122906dcfc1',
      '07506a85fd9dd2f1',
      'fac54203e7cc696c',
      '837dbb152e9b0790',
    ])
    expect(short(consistencyProof(4, 7, read))).toEqual(['837dbb152e9b0790'])
  })

  it('agrees with the definition for every leaf and every pair of sizes up to 40', () => {
    const all = someLeaves(40)
    const { read, roots } = grow(all)
    for (let to = 1; to <= 40; to++) {
      const d = all.slice(0, to)
      expect(roots[to]).toEqual(rootOfLeaves(d))
      for (let index = 0; index < to; index++) {
        const proof = inclusionProof(index, to, read)
        expect(proof).toEqual(definedPath(index, d))
        const claim = {
          index,
          size: to,
          leaf: all[index] as Uint8Array,
          proof,
          root: roots[to] as Uint8Array,
        }
        expect(verifyInclusion(claim)).toBe(true)
      }
      for (let from = 1; from < to; from++) {
        const proof = consistencyProof(from, to, read)
        expect(proof).toEqual(definedSubproof(from, d, true))
        const [fromRoot, toRoot] = [roots[from] as Uint8Array, roots[to] as Uint8Array]
        expect(verifyConsistency({ from, to, fromRoot, toRoot, proof })).toBe(true)
      }
    }
  })

  it('keeps one node a leaf on average and reads a head from as many as the size has ones', () => {
    const { kept, frontier } = grow(someLeaves(1000))
    expect(kept.size).toBe(1994) // 2 · 1000 − ones of 1000 (6), computed, second method: count of complete subtrees
    expect(frontier).toHaveLength(6)
    expect(frontier.map(({ level, index }) => ({ level, index }))).toEqual(frontierOf(1000))
    expect(inclusionNodes(0, 1000).length).toBeLessThanOrEqual(20)
    expect(consistencyNodes(1, 1000).length).toBeLessThanOrEqual(20)
  })

  it('holds no proof for a leaf or a size outside the tree', () => {
    const { read } = grow(leaves)
    expect(() => inclusionProof(8, 8, read)).toThrow(RangeError)
    expect(() => inclusionProof(-1, 8, read)).toThrow(RangeError)
    expect(() => inclusionProof(0.5, 8, read)).toThrow(RangeError)
    expect(() => consistencyProof(9, 8, read)).toThrow(RangeError)
    expect(consistencyProof(0, 8, read)).toEqual([])
    expect(consistencyProof(8, 8, read)).toEqual([])
  })

  it('goes past 2³¹ leaves', () => {
    const size = 2 ** 40 + 3
    expect(frontierOf(size)).toEqual([
      { level: 40, index: 0 },
      { level: 1, index: 2 ** 39 },
      { level: 0, index: 2 ** 40 + 2 },
    ])
    const named = ({ level, index }: NodeId) => sha256Of(new TextEncoder().encode(`${level} ${index}`))
    const index = 2 ** 40 + 2
    const root = nodeHash(
      named({ level: 40, index: 0 }),
      nodeHash(named({ level: 1, index: 2 ** 39 }), named({ level: 0, index })),
    )
    expect(
      verifyInclusion({
        index,
        size,
        leaf: named({ level: 0, index }),
        proof: inclusionProof(index, size, named),
        root,
      }),
    ).toBe(true)
  })

  it(`accepts no proof that was changed in any way (seed ${SEED})`, () => {
    const all = someLeaves(60)
    const { read, roots } = grow(all)
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }).chain((size) =>
          fc.record({
            size: fc.constant(size),
            index: fc.integer({ min: 0, max: size - 1 }),
            from: fc.integer({ min: 1, max: size - 1 }),
            pick: fc.nat(1_000_000),
            way: fc.constantFrom('flip', 'drop', 'repeat', 'swap'),
          }),
        ),
        ({ size, index, from, pick, way }) => {
          const inclusion = inclusionProof(index, size, read)
          const claim = { index, size, leaf: all[index] as Uint8Array, root: roots[size] as Uint8Array }
          const broken = spoil(inclusion, pick, way)
          if (broken) expect(verifyInclusion({ ...claim, proof: broken })).toBe(false)
          expect(
            verifyInclusion({ ...claim, proof: inclusion, leaf: all[(index + 1) % size] as Uint8Array }),
          ).toBe(false)

          const proof = consistencyProof(from, size, read)
          const heads = {
            from,
            to: size,
            fromRoot: roots[from] as Uint8Array,
            toRoot: roots[size] as Uint8Array,
          }
          const wrong = spoil(proof, pick, way)
          if (wrong) expect(verifyConsistency({ ...heads, proof: wrong })).toBe(false)
          expect(verifyConsistency({ ...heads, proof, fromRoot: roots[0] as Uint8Array })).toBe(false)
          expect(verifyConsistency({ ...heads, proof, toRoot: roots[0] as Uint8Array })).toBe(false)
        },
      ),
      { seed: SEED, numRuns: 400 },
    )
  })
})

function spoil(proof: readonly Uint8Array[], pick: number, way: string): Uint8Array[] | null {
  if (proof.length === 0) return null
  const at = pick % proof.length
  const one = proof[at] as Uint8Array
  if (way === 'drop') return proof.filter((_, index) => index !== at)
  if (way === 'repeat') return proof.flatMap((hash, index) => (index === at ? [hash, hash] : [hash]))
  if (way === 'swap') {
    const other = (at + 1) % proof.length
    if (other === at) return null
    return proof.map((hash, index) =>
      index === at ? (proof[other] as Uint8Array) : index === other ? one : hash,
    )
  }
  return proof.map((hash, index) =>
    index === at ? hash.map((byte, place) => (place === pick % 32 ? byte ^ 1 : byte)) : hash,
  )
}
