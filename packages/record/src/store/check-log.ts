import type { Kysely } from 'kysely'
import { canonicalText } from '../canonical.ts'
import type { StoredEntry } from '../entry.ts'
import { entryHash, toHex } from '../hash.ts'
import { appendLeaf, leafHash, type TreeNode } from '../merkle.ts'
import { nodeHash256 } from './append.ts'
import type { RecordTables } from './tables.ts'

const PAGE = 1000

/** Reads the whole log and computes every leaf and node again from its bytes. One sentence a fault; empty where all fits. */
export async function checkLog(db: Kysely<RecordTables>, yard: string): Promise<string[]> {
  const faults: string[] = []
  let frontier: TreeNode[] = []
  let next = 0
  let nodes = 0
  for (;;) {
    const rows = await db
      .selectFrom('entries')
      .selectAll()
      .where('yard', '=', yard)
      .where('position', '>=', next)
      .orderBy('position')
      .limit(PAGE)
      .execute()
    if (rows.length === 0) break
    const made: TreeNode[] = []
    for (const row of rows) {
      if (row.position !== next) faults.push(`entry ${next} is missing; the next is ${row.position}`)
      next = row.position + 1
      const entry = readBody(row.body)
      if (entry === null) {
        faults.push(`entry ${row.position} is not JSON`)
        continue
      }
      if (canonicalText(entry) !== row.body) faults.push(`entry ${row.position} is not in RFC 8785 form`)
      if (entry.index !== row.position || entry.id !== row.id)
        faults.push(`entry ${row.position} says that it is another`)
      if (entryHash(entry, nodeHash256) !== row.hash)
        faults.push(`entry ${row.position} has another hash than was stored`)
      const leaf = leafHash(new TextEncoder().encode(row.body), nodeHash256)
      if (toHex(leaf) !== row.leaf) faults.push(`entry ${row.position} has another leaf hash than was stored`)
      const grown = appendLeaf(frontier, leaf, nodeHash256)
      frontier = grown.frontier
      made.push(...grown.made.slice(1))
    }
    faults.push(...(await nodeFaults(db, yard, made)))
    nodes += made.length
  }
  const { size } = await db
    .selectFrom('yards')
    .select('size')
    .where('yard', '=', yard)
    .executeTakeFirstOrThrow()
  if (size !== next) faults.push(`the log holds ${next} entries and says ${size}`)
  const kept = await db
    .selectFrom('nodes')
    .select(({ fn }) => fn.countAll().as('count'))
    .where('yard', '=', yard)
    .executeTakeFirstOrThrow()
  if (Number(kept.count) !== nodes) faults.push(`the tree keeps ${kept.count} nodes, expected ${nodes}`)
  return faults
}

async function nodeFaults(
  db: Kysely<RecordTables>,
  yard: string,
  made: readonly TreeNode[],
): Promise<string[]> {
  const levels = new Map<number, TreeNode[]>()
  for (const node of made) levels.set(node.level, [...(levels.get(node.level) ?? []), node])
  const faults: string[] = []
  for (const [level, nodes] of levels) {
    const rows = await db
      .selectFrom('nodes')
      .select(['position', 'hash'])
      .where('yard', '=', yard)
      .where('level', '=', level)
      .where('position', '>=', nodes[0]?.index ?? 0)
      .where('position', '<=', nodes.at(-1)?.index ?? 0)
      .execute()
    const kept = new Map(rows.map(({ position, hash }) => [position, hash]))
    for (const { index, hash } of nodes) {
      if (kept.get(index) !== toHex(hash))
        faults.push(`node ${index} of level ${level} does not fit its leaves`)
    }
  }
  return faults
}

function readBody(body: string): StoredEntry | null {
  try {
    return JSON.parse(body) as StoredEntry
  } catch {
    return null
  }
}
