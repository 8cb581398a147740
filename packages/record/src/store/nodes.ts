import type { Kysely } from 'kysely'
import { fromHex } from '../hash.ts'
import type { NodeId, NodeReader } from '../merkle.ts'
import type { RecordTables } from './tables.ts'

/** Reads the complete subtrees of one proof or head at once, a query a level. */
export async function readNodes(
  db: Kysely<RecordTables>,
  yard: string,
  ids: readonly NodeId[],
): Promise<NodeReader> {
  const byLevel = new Map<number, number[]>()
  for (const { level, index } of ids) byLevel.set(level, [...(byLevel.get(level) ?? []), index])
  const found = new Map<string, Uint8Array>()
  const { 0: leaves, ...above } = Object.fromEntries(byLevel)
  if (leaves) {
    const rows = await db
      .selectFrom('entries')
      .select(['position', 'leaf'])
      .where('yard', '=', yard)
      .where('position', 'in', leaves)
      .execute()
    for (const { position, leaf } of rows) found.set(`0 ${position}`, fromHex(leaf))
  }
  const upper = Object.entries(above)
  if (upper.length > 0) {
    const rows = await db
      .selectFrom('nodes')
      .select(['level', 'position', 'hash'])
      .where('yard', '=', yard)
      .where(({ and, eb, or }) =>
        or(
          upper.map(([level, indices]) =>
            and([eb('level', '=', Number(level)), eb('position', 'in', indices)]),
          ),
        ),
      )
      .execute()
    for (const { level, position, hash } of rows) found.set(`${level} ${position}`, fromHex(hash))
  }
  return ({ level, index }) => {
    const hash = found.get(`${level} ${index}`)
    if (hash === undefined) throw new Error(`the tree lacks node ${index} of level ${level}`)
    return hash
  }
}
