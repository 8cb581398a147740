import type { DocketField } from '@castwright/engine/pour/loads'
import { type Cell, cellText } from '../bar-list/table.ts'

/** A column of a list of dockets: a field of the docket, or what its row is about. */
export type DocketColumn =
  | Exclude<DocketField, 'specimens' | 'waterAfterDischarge' | 'slumpSample'>
  | 'panel'
  | 'job'
  | 'day'

/** How suppliers head their columns, in plain letters; the first is how our own lists are headed. */
const NAMES: Readonly<Record<DocketColumn, readonly string[]>> = {
  number: [
    'docket',
    'docket number',
    'docket no',
    'ticket',
    'ticket number',
    'ticket no',
    'delivery note',
    'number',
    'no',
  ],
  job: ['job', 'project', 'site'],
  panel: ['panel', 'mark', 'element', 'panel mark'],
  supplier: ['supplier', 'plant', 'depot'],
  truck: ['truck', 'truck number', 'truck no', 'vehicle', 'mixer', 'lorry'],
  mix: ['mix', 'mix code', 'recipe', 'product', 'concrete'],
  ordered: ['ordered', 'volume ordered', 'ordered volume', 'order quantity'],
  volume: ['volume', 'load', 'load volume', 'quantity', 'delivered', 'm3'],
  used: ['into this panel', 'used', 'part'],
  day: ['day', 'date'],
  batched: ['batched', 'batch time', 'batching time', 'loaded', 'loading time', 'time batched', 'time'],
  arrived: ['arrived', 'arrival', 'arrival time', 'on site', 'time on site'],
  began: ['discharge begins', 'discharge start', 'start of discharge', 'began', 'unloading start'],
  discharged: [
    'discharge finished',
    'discharge end',
    'end of discharge',
    'discharged',
    'finished',
    'unloading end',
  ],
  slumpTarget: ['slump ordered', 'slump target', 'target slump', 'nominal slump'],
  slump: ['slump', 'slump measured', 'measured slump'],
  temperature: ['temperature', 'concrete temperature', 'temp'],
  waterAllowed: ['water allowed', 'water that may be added', 'withheld water', 'water withheld'],
  waterAdded: ['water added', 'added water'],
  admixtureAdded: ['admixture added'],
  remixTurns: ['turns', 'remix turns', 'revolutions'],
  remixMinutes: ['remix minutes'],
}

/** A head without units, case and signs: `Volume (m³)` is `volume`. */
function plain(head: string): string {
  return head
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .replace('m³', 'm3')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()
    .replace(/ (m3|mm|l|c|min)$/, '')
}

export interface FoundColumns {
  /** Row of the head, from 0. */
  readonly head: number
  readonly columns: ReadonlyMap<DocketColumn, number>
  /** Heads that say nothing to us. */
  readonly unread: readonly string[]
}

/** Rows that are looked at for the head: titles may stand over it. */
const LOOKED_AT = 20

/** The first row that names a docket's number and something else; null where none does. */
export function columnsOf(rows: readonly (readonly Cell[])[]): FoundColumns | null {
  for (const [head, row] of rows.slice(0, LOOKED_AT).entries()) {
    const columns = new Map<DocketColumn, number>()
    const unread: string[] = []
    for (const [at, cell] of row.entries()) {
      const text = cellText(cell)
      const name = plain(text)
      const found = (Object.keys(NAMES) as DocketColumn[]).find(
        (column) => !columns.has(column) && NAMES[column].includes(name),
      )
      if (found !== undefined) columns.set(found, at)
      else if (text !== '') unread.push(text)
    }
    if (columns.has('number') && columns.size > 1) return { head, columns, unread }
  }
  return null
}
