import { EXAMPLE_BUNDLE, heatKey, heatsOf } from '@castwright/engine/steel/incoming'
import { type Entry, fold, panelsOfHeat, type StoredEntry, type YardState } from '@castwright/record'
import type { BenchLine } from './line.ts'

/** A year: so many bundles, ten cuts of each, pieces for 8,000 panels. */
const BUNDLES = 4000
const CUTS = 10
const PANELS = 8000

/** Which panels hold steel of a heat, over a year of records: the folded index beside reading every entry. */
export async function heats(short: boolean): Promise<BenchLine[]> {
  const entries = year(short ? BUNDLES / 10 : BUNDLES)
  const started = performance.now()
  const state = fold(entries)
  const folded = performance.now() - started
  const asked = Array.from({ length: 20 }, (_, i) => `h-${i * 17}`)
  const index = timed(() => asked.map((heat) => panelsOfHeat(state.steel, heat).length)) / asked.length
  const read = timed(() => asked.map((heat) => byReading(entries, heat))) / asked.length
  return [
    {
      what: `panels of a heat, ${entries.length} entries of a year`,
      value: `${index.toFixed(1)} ms`,
      beside: `× ${(read / index).toFixed(0)} against reading every entry (${read.toFixed(0)} ms); all of them folded in ${(folded / 1000).toFixed(2)} s; alike: ${same(state, entries, asked)}`,
    },
  ]
}

function same(state: YardState, entries: readonly StoredEntry[], asked: readonly string[]): string {
  return asked.every((heat) => panelsOfHeat(state.steel, heat).length === byReading(entries, heat))
    ? 'yes'
    : 'no'
}

function timed(run: () => unknown): number {
  const started = performance.now()
  run()
  return performance.now() - started
}

/** The peer: two passes over the entries. */
function byReading(entries: readonly StoredEntry[], heat: string): number {
  const key = heatKey(heat)
  const bundles = new Set<string>()
  for (const { kind, subject, value } of entries) {
    if (kind === 'bundle' && heatsOf(value as never).some((each) => heatKey(each.heat) === key))
      bundles.add(subject.id)
  }
  const panels = new Set<string>()
  for (const { kind, value } of entries) {
    if (kind !== 'cut') continue
    const { from, pieces } = value as { from: { bundle: string }; pieces: { panel: string }[] }
    if (bundles.has(from.bundle)) for (const { panel } of pieces) panels.add(panel)
  }
  return panels.size
}

function year(bundles: number): StoredEntry[] {
  const entries: StoredEntry[] = []
  const add = (kind: Entry['kind'], subject: Entry['subject'], value: unknown): void => {
    const index = entries.length
    entries.push({
      format: 'castwright.entry/1',
      id: String(index).padStart(26, '0'),
      yard: 'bench',
      kind,
      subject,
      value: value as Entry['value'],
      person: { id: 'p', name: 'Jo', role: 'floor' },
      device: { id: 'd', counter: index + 1, previous: null, clockOffset: null },
      seen: new Date(1.75e12 + index * 1000).toISOString(),
      stored: new Date(1.75e12 + index * 1000).toISOString(),
      index,
    })
  }
  for (let bundle = 0; bundle < bundles; bundle += 1) {
    const subject = { kind: 'bundle', id: `B-${bundle}` } as const
    add('bundle', subject, { ...EXAMPLE_BUNDLE, tag: { heat: `H${bundle % 1500}` }, certificate: null })
    add('release', subject, { decision: 'accept' })
    for (let cut = 0; cut < CUTS; cut += 1) {
      const panel = `J/${(bundle * CUTS + cut) % PANELS}`
      add('cut', { kind: 'bar', id: 'shear' }, cutOf(subject.id, panel, cut % 3 === 0))
    }
  }
  return entries
}

function cutOf(bundle: string, panel: string, kept: boolean): unknown {
  const steel = { diameter: 12, grade: '500E', stock: 6000, bars: 4, offcut: 1000 }
  const pieces = [{ length: 2400, count: 2, mark: 'MX1', panel }]
  return { plan: null, line: null, ...steel, from: { bundle }, pieces, kept }
}
