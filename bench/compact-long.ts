// The long search, offline: `tsx bench/compact-long.ts FILE [seconds a panel] [part of a name]` writes the fewest insertions that it found.
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import {
  Cover,
  Ground,
  randomFrom,
  rowStarts,
  type Site,
  shrunk,
  squeeze,
  Terrain,
} from '@castwright/engine/pour/compaction'
import { COMPACT_PANELS, type CompactPanel } from './compact-panels.ts'

const [file = 'compact-best.json', limit = '60', wanted = ''] = process.argv.slice(2)
type Found = Record<string, { insertions: number; starts: (number | null)[]; seconds: number }>
const all: Found = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Found) : {}
for (const panel of COMPACT_PANELS.filter(({ name }) => name.includes(wanted))) {
  const before = all[panel.name]
  const found = longSearch(panel, Number(limit), before === undefined ? 1 : Math.round(before.seconds) + 7)
  if (before === undefined || found.insertions <= before.insertions)
    all[panel.name] = { ...found, seconds: found.seconds + (before?.seconds ?? 0) }
  writeFileSync(file, JSON.stringify(all, null, 1))
}

/** Every start squeezed for a fifth of the time, then the best of them again and again with other seeds. Each result is proven. */
function longSearch({ region, radius, margin }: CompactPanel, limit: number, seed: number): Found[string] {
  const spent = (): number => process.cpuUsage().user / 1e6
  const from = spent()
  const ground = new Ground(region, radius)
  const kept = margin <= 0.9 * radius ? margin : 0
  const inner = new Ground(shrunk(region, kept > 0 ? kept : radius / 2), radius)
  const terrain = new Terrain(ground, radius - 2e-5, margin, inner)
  const run = (sites: readonly Site[], until: number, turn: number): readonly Site[] | null =>
    squeeze({
      terrain,
      sites,
      work: Number.POSITIVE_INFINITY,
      random: randomFrom(seed * 1000 + turn),
      stop: () => spent() - from > until,
    })
  const starts = rowStarts(terrain, radius, kept)
  const results = starts.map((sites, i) => run(sites, (limit * 0.6 * (i + 1)) / starts.length, i))
  let best = results.reduce((a, b) => (a === null || (b !== null && b.length < a.length) ? b : a))
  for (let turn = 10; best !== null && spent() - from < limit; turn += 1)
    best = run(best, Math.min(limit, spent() - from + limit / 8), turn) ?? best
  if (best === null) throw new Error('no cover found')
  const cover = new Cover(ground, radius)
  for (const { x, y } of best) cover.add(x, y)
  if (cover.gaps(1).length > 0) throw new Error('the long search lost its cover')
  return {
    insertions: best.length,
    starts: results.map((sites) => sites?.length ?? null),
    seconds: spent() - from,
  }
}
