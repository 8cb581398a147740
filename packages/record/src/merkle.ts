import { type Hash, sameBytes, sha256Of } from './hash.ts'

/*
 * Merkle tree of RFC 9162, section 2. Leaves are numbered from 0. A node (level, index) is a complete subtree: it covers the leaves from
 * index · 2^level on, 2^level of them. Complete subtrees never change again and are kept; everything else is made from them.
 * Sizes may pass 2³¹, so halving is division and no shift.
 */

export interface NodeId {
  readonly level: number
  readonly index: number
}

export interface TreeNode extends NodeId {
  readonly hash: Uint8Array
}

/** Gives the hash of a complete subtree. */
export type NodeReader = (id: NodeId) => Uint8Array

/** Leaves from `from` up to but not including `to`. */
interface Span {
  readonly from: number
  readonly to: number
}

/** Root of the empty tree: the hash of nothing (2.1.1). */
export function emptyRoot(hash: Hash = sha256Of): Uint8Array {
  return hash(new Uint8Array(0))
}

/** Hash of a leaf: 0x00 before its bytes (2.1.1). */
export function leafHash(bytes: Uint8Array, hash: Hash = sha256Of): Uint8Array {
  const input = new Uint8Array(bytes.length + 1)
  input.set(bytes, 1)
  return hash(input)
}

/** Hash of a node: 0x01, left, right (2.1.1). */
export function nodeHash(left: Uint8Array, right: Uint8Array, hash: Hash = sha256Of): Uint8Array {
  const input = new Uint8Array(1 + left.length + right.length)
  input[0] = 1
  input.set(left, 1)
  input.set(right, 1 + left.length)
  return hash(input)
}

/** The complete subtrees that make up the first `size` leaves, largest first: one for each 1 in the binary number. */
export function frontierOf(size: number): NodeId[] {
  return nodesOf({ from: 0, to: size })
}

/**
 * Adds a leaf. `frontier` holds the complete subtrees of the tree before it, largest first.
 *
 * Returns the frontier after it, and the nodes that this leaf completed, the leaf first: those to keep.
 */
export function appendLeaf(
  frontier: readonly TreeNode[],
  leaf: Uint8Array,
  hash: Hash = sha256Of,
): { readonly frontier: TreeNode[]; readonly made: TreeNode[] } {
  const stack = [...frontier]
  let node: TreeNode = { level: 0, index: sizeOf(frontier), hash: leaf }
  const made = [node]
  for (
    let top = stack[stack.length - 1];
    top !== undefined && top.level === node.level;
    top = stack[stack.length - 1]
  ) {
    stack.pop()
    node = {
      level: node.level + 1,
      index: Math.floor(node.index / 2),
      hash: nodeHash(top.hash, node.hash, hash),
    }
    made.push(node)
  }
  stack.push(node)
  return { frontier: stack, made }
}

/** Leaves that a frontier covers. */
export function sizeOf(frontier: readonly NodeId[]): number {
  return frontier.reduce((sum, { level }) => sum + 2 ** level, 0)
}

/** Root of the tree from its complete subtrees, largest first. */
export function rootOfFrontier(frontier: readonly TreeNode[], hash: Hash = sha256Of): Uint8Array {
  return joined(
    frontier.map((node) => node.hash),
    hash,
  )
}

/** Root over the leaf hashes given, from the definition of 2.1.1. */
export function rootOfLeaves(leaves: readonly Uint8Array[], hash: Hash = sha256Of): Uint8Array {
  const [first] = leaves
  if (first === undefined) return emptyRoot(hash)
  if (leaves.length === 1) return first
  const half = splitOf(leaves.length)
  return nodeHash(rootOfLeaves(leaves.slice(0, half), hash), rootOfLeaves(leaves.slice(half), hash), hash)
}

/** Nodes that `inclusionProof` reads, for stores that fetch them together. */
export function inclusionNodes(index: number, size: number): NodeId[] {
  return inclusionSpans(index, size).flatMap(nodesOf)
}

/** Proof that leaf `index` is in the tree of `size` leaves, lowest sibling first (2.1.3.1). @throws RangeError outside the tree. */
export function inclusionProof(
  index: number,
  size: number,
  read: NodeReader,
  hash: Hash = sha256Of,
): Uint8Array[] {
  return inclusionSpans(index, size).map((span) => hashOf(span, read, hash))
}

/** Nodes that `consistencyProof` reads. */
export function consistencyNodes(from: number, to: number): NodeId[] {
  return consistencySpans(from, to).flatMap(nodesOf)
}

/**
 * Proof that the tree of `to` leaves begins with the tree of `from` leaves (2.1.4.1); empty where `from` is 0 or equal to `to`.
 *
 * @throws RangeError where `from` is above `to`.
 */
export function consistencyProof(
  from: number,
  to: number,
  read: NodeReader,
  hash: Hash = sha256Of,
): Uint8Array[] {
  return consistencySpans(from, to).map((span) => hashOf(span, read, hash))
}

export interface InclusionPath {
  readonly index: number
  readonly size: number
  readonly leaf: Uint8Array
  readonly proof: readonly Uint8Array[]
}

export interface InclusionClaim extends InclusionPath {
  readonly root: Uint8Array
}

/** Whether the proof leads from the leaf to the root (2.1.3.2). */
export function verifyInclusion(claim: InclusionClaim, hash: Hash = sha256Of): boolean {
  const made = rootFromInclusion(claim, hash)
  return made !== null && sameBytes(made, claim.root)
}

/** The root that a proof leads to (2.1.3.2, steps 1 to 4); null where the path has the wrong length or the leaf is outside. */
export function rootFromInclusion(
  { index, size, leaf, proof }: InclusionPath,
  hash: Hash = sha256Of,
): Uint8Array | null {
  if (!isCount(index) || !isCount(size) || index >= size) return null
  let at = index
  let last = size - 1
  let made = leaf
  for (const sibling of proof) {
    if (last === 0) return null
    if (at % 2 === 1 || at === last) {
      made = nodeHash(sibling, made, hash)
      while (at % 2 === 0 && at !== 0) {
        at = Math.floor(at / 2)
        last = Math.floor(last / 2)
      }
    } else {
      made = nodeHash(made, sibling, hash)
    }
    at = Math.floor(at / 2)
    last = Math.floor(last / 2)
  }
  return last === 0 ? made : null
}

export interface ConsistencyClaim {
  readonly from: number
  readonly to: number
  readonly fromRoot: Uint8Array
  readonly toRoot: Uint8Array
  readonly proof: readonly Uint8Array[]
}

/** Whether the proof shows that the later tree begins with the earlier one (2.1.4.2). */
export function verifyConsistency(claim: ConsistencyClaim, hash: Hash = sha256Of): boolean {
  const { from, to, fromRoot, toRoot, proof } = claim
  if (!isCount(from) || !isCount(to) || from > to) return false
  if (from === to) return proof.length === 0 && sameBytes(fromRoot, toRoot)
  if (from === 0) return proof.length === 0 && sameBytes(fromRoot, emptyRoot(hash))
  if (proof.length === 0) return false
  const path = isPowerOfTwo(from) ? [fromRoot, ...proof] : [...proof]
  let at = from - 1
  let last = to - 1
  while (at % 2 === 1) {
    at = Math.floor(at / 2)
    last = Math.floor(last / 2)
  }
  let early = path[0] as Uint8Array
  let late = early
  for (const step of path.slice(1)) {
    if (last === 0) return false
    if (at % 2 === 1 || at === last) {
      early = nodeHash(step, early, hash)
      late = nodeHash(step, late, hash)
      while (at % 2 === 0 && at !== 0) {
        at = Math.floor(at / 2)
        last = Math.floor(last / 2)
      }
    } else {
      late = nodeHash(late, step, hash)
    }
    at = Math.floor(at / 2)
    last = Math.floor(last / 2)
  }
  return last === 0 && sameBytes(early, fromRoot) && sameBytes(late, toRoot)
}

function inclusionSpans(index: number, size: number): Span[] {
  if (!isCount(index) || !isCount(size) || index >= size) {
    throw new RangeError(`leaf ${index} of a tree of ${size}: expected 0 to ${size - 1}`)
  }
  const spans: Span[] = []
  let from = 0
  let to = size
  while (to - from > 1) {
    const middle = from + splitOf(to - from)
    if (index < middle) {
      spans.push({ from: middle, to })
      to = middle
    } else {
      spans.push({ from, to: middle })
      from = middle
    }
  }
  return spans.reverse()
}

function consistencySpans(early: number, late: number): Span[] {
  if (!isCount(early) || !isCount(late) || early > late) {
    throw new RangeError(`trees of ${early} and ${late} leaves: expected the first not above the second`)
  }
  if (early === 0 || early === late) return []
  const spans: Span[] = []
  let from = 0
  let to = late
  let whole = true
  while (early !== to) {
    const middle = from + splitOf(to - from)
    if (early <= middle) {
      spans.push({ from: middle, to })
      to = middle
    } else {
      spans.push({ from, to: middle })
      from = middle
      whole = false
    }
  }
  return [...(whole ? [] : [{ from, to }]), ...spans.reverse()]
}

/** Complete subtrees of a span that begins where the tree splits, largest first. */
function nodesOf({ from, to }: Span): NodeId[] {
  const nodes: NodeId[] = []
  for (let at = from; at < to; ) {
    let level = 0
    while (at % 2 ** (level + 1) === 0 && at + 2 ** (level + 1) <= to) level++
    nodes.push({ level, index: at / 2 ** level })
    at += 2 ** level
  }
  return nodes
}

function hashOf(span: Span, read: NodeReader, hash: Hash): Uint8Array {
  return joined(nodesOf(span).map(read), hash)
}

/** Joins subtrees that lie side by side, largest first, from the right. */
function joined(hashes: readonly Uint8Array[], hash: Hash): Uint8Array {
  if (hashes.length === 0) return emptyRoot(hash)
  return hashes.reduceRight((right, left) => nodeHash(left, right, hash))
}

/** Largest power of two below `count`; `count` above 1. */
function splitOf(count: number): number {
  let half = 1
  while (half * 2 < count) half *= 2
  return half
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0
}

function isPowerOfTwo(value: number): boolean {
  while (value % 2 === 0 && value > 1) value /= 2
  return value === 1
}
