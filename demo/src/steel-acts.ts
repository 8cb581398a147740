import type { Plan } from '@castwright/engine/plan'
import type { ScheduledBar } from '@castwright/engine/steel'
import type { Bundle } from '@castwright/engine/steel/incoming'
import { type Draft, panelSubject } from '@castwright/record'
import { DEMO_ZONE } from './calendar.ts'
import { DEMO_JOB } from './drawings.ts'
import { at } from './local-time.ts'
import { type DemoPerson, personOf } from './people.ts'
import type { Act } from './telling.ts'

const MINUTE = 60_000
const TABLET = 'tablet-steel'
const STOCK = 12_000
/** Shorter is scrap, mm. */
const WORTH_KEEPING = 1500

/** A bundle of the invented yard: when it came, and how many bars it holds. */
interface Arrival {
  readonly id: string
  readonly day: string
  readonly diameter: number
  readonly bars: number
  readonly heat: string
}

const ARRIVALS: readonly Arrival[] = [
  { id: 'R-201', day: '2026-09-07', diameter: 8, bars: 200, heat: 'KV 7710' },
  { id: 'R-202', day: '2026-09-07', diameter: 10, bars: 160, heat: 'KV 7714' },
  { id: 'R-203', day: '2026-09-07', diameter: 12, bars: 140, heat: 'KV 7715' },
  { id: 'R-204', day: '2026-09-07', diameter: 16, bars: 60, heat: 'LD 3120' },
  { id: 'R-205', day: '2026-09-07', diameter: 20, bars: 30, heat: 'LD 3122' },
  { id: 'R-206', day: '2026-09-10', diameter: 10, bars: 200, heat: 'KV 7802' },
  { id: 'R-207', day: '2026-09-10', diameter: 12, bars: 200, heat: 'KV 7803' },
  { id: 'R-208', day: '2026-09-11', diameter: 8, bars: 300, heat: 'KV 7811' },
  { id: 'R-209', day: '2026-09-14', diameter: 10, bars: 300, heat: 'KV 7840' },
  { id: 'R-210', day: '2026-09-14', diameter: 12, bars: 300, heat: 'KV 7841' },
  { id: 'R-211', day: '2026-09-14', diameter: 16, bars: 120, heat: 'LD 3190' },
]

/** A panel whose bars were cut, and when. */
export interface CutPanel {
  readonly mark: string
  readonly at: number
  readonly plan: Plan
}

/** Bundles as they came and were accepted, two that were not, and the bars that were cut from them for each panel. */
export function steelActs(panels: readonly CutPanel[]): Act[] {
  const left = new Map(ARRIVALS.map(({ id, bars }) => [id, bars]))
  const cuts = [...panels].sort((a, b) => a.at - b.at).flatMap((panel) => cutsOf(panel, left))
  return [...ARRIVALS.flatMap(arrivalActs), ...refusedActs(), ...cuts]
}

function arrivalActs({ id, day, diameter, bars, heat }: Arrival, index: number): Act[] {
  const when = at(day, '06:40', DEMO_ZONE) + index * 9 * MINUTE
  const mass = (Math.PI * diameter ** 2 * 7850) / 4e6
  const bundle: Bundle = {
    ordered: { diameter, grade: 'B500B', length: STOCK, count: bars, reference: `K-${310 + index}` },
    docket: {
      number: String(88_100 + 7 * index),
      supplier: 'Estuary Steel',
      diameter,
      grade: 'B500B',
      count: bars,
    },
    tag: { heat },
    certificate: {
      number: `EC-${5200 + index}`,
      heat,
      grade: 'B500B',
      diameter,
      process: diameter > 10 ? 'quenched and tempered' : 'cold worked',
    },
    seen: ['5', '2', '4'],
    barsRead: 3,
    weighed: [{ length: 1000, mass: Number((mass * (index % 2 === 0 ? 0.985 : 1.01)).toFixed(3)) }],
    lengths: [STOCK, STOCK + 20],
    counted: bars,
    surface: ['light rust'],
  }
  return [came(id, bundle, when), decided(id, 'accept', when + 4 * MINUTE, personOf('jo'))]
}

/** One whose bars are of another class than ordered, and one that came this morning without a docket. */
function refusedActs(): Act[] {
  const [wrongAt, bareAt] = [at('2026-09-15', '07:20', DEMO_ZONE), at('2026-09-16', '11:05', DEMO_ZONE)]
  const wrong: Bundle = {
    ordered: { diameter: 16, grade: 'B500B', length: STOCK, count: 40, reference: 'K-330' },
    docket: { number: '88302', supplier: 'Estuary Steel', diameter: 16, grade: 'B500B', count: 40 },
    tag: { heat: 'LD 3204' },
    certificate: { number: 'EC-5302', heat: 'LD 3207', grade: 'B500B', diameter: 16 },
    seen: ['5', '2', '4'],
    barsRead: 3,
    weighed: [{ length: 1000, mass: 1.57 }],
    counted: 40,
    surface: ['light rust'],
  }
  const bare: Bundle = {
    ordered: { diameter: 12, grade: 'B500B', length: STOCK, count: 150, reference: 'K-334' },
    docket: null,
    tag: { mill: '524', heat: 'KV 7866' },
    seen: ['5', '2', '4'],
    barsRead: 4,
    weighed: [{ length: 1000, mass: 0.881 }],
    counted: 150,
    surface: ['light rust', 'mud or ice'],
  }
  const apart =
    'The certificate is of heat LD 3207, the tag says LD 3204. Asked the supplier for the right one.'
  return [
    came('R-212', wrong, wrongAt),
    decided('R-212', 'quarantine', wrongAt + 6 * MINUTE, personOf('orla'), apart),
    came('R-213', bare, bareAt),
  ]
}

function came(id: string, bundle: Bundle, when: number): Act {
  const value = JSON.parse(JSON.stringify(bundle)) as Draft['value']
  return act(when, personOf('jo'), { kind: 'bundle', subject: { kind: 'bundle', id }, value })
}

function decided(id: string, decision: string, when: number, person: DemoPerson, reason?: string): Act {
  return act(when, person, {
    kind: 'release',
    subject: { kind: 'bundle', id },
    value: { decision },
    ...(reason === undefined ? {} : { reason }),
  })
}

function act(when: number, person: DemoPerson, draft: Draft): Act {
  return { at: when, device: TABLET, person, draft }
}

interface Bar {
  readonly pieces: Map<string, { readonly length: number; readonly mark: string; count: number }>
  room: number
}

/** The bars of one panel cut longest first, equal bars in one entry. */
function cutsOf({ mark, at: when, plan }: CutPanel, left: Map<string, number>): Act[] {
  const acts: Act[] = []
  const sizes = new Map<number, ScheduledBar[]>()
  for (const bar of plan.steel.bars) sizes.set(bar.diameter, [...(sizes.get(bar.diameter) ?? []), bar])
  for (const [diameter, bars] of sizes) {
    const alike = new Map<string, { readonly bar: Bar; times: number }>()
    for (const bar of filled(bars)) {
      const key = JSON.stringify([...bar.pieces.values()])
      const same = alike.get(key)
      if (same) same.times += 1
      else alike.set(key, { bar, times: 1 })
    }
    for (const { bar, times } of alike.values()) {
      for (const { bundle, bars: count } of taken(diameter, times, left)) {
        acts.push(
          act(
            when + (1 + acts.length) * 40_000,
            personOf('jo'),
            cutDraft(mark, diameter, bundle, count, bar),
          ),
        )
      }
    }
  }
  return acts
}

function filled(bars: readonly ScheduledBar[]): Bar[] {
  const open: Bar[] = []
  for (const { mark, cutLength, count } of [...bars].sort((a, b) => b.cutLength - a.cutLength)) {
    const length = Math.round(cutLength)
    for (let piece = 0; piece < count; piece += 1) {
      let bar = open.find(({ room }) => room >= length)
      if (bar === undefined) {
        bar = { pieces: new Map(), room: STOCK }
        open.push(bar)
      }
      bar.room -= length
      const key = `${mark} ${length}`
      const same = bar.pieces.get(key)
      if (same) same.count += 1
      else bar.pieces.set(key, { length, mark, count: 1 })
    }
  }
  return open
}

/** Bundles of a size in the order in which they came, until the bars are there. */
function taken(
  diameter: number,
  bars: number,
  left: Map<string, number>,
): { bundle: string; bars: number }[] {
  const from: { bundle: string; bars: number }[] = []
  let wanted = bars
  for (const { id, diameter: its } of ARRIVALS) {
    const there = left.get(id) ?? 0
    if (its !== diameter || there === 0 || wanted === 0) continue
    const count = Math.min(there, wanted)
    from.push({ bundle: id, bars: count })
    left.set(id, there - count)
    wanted -= count
  }
  if (wanted > 0)
    throw new Error(`${diameter} mm: found ${wanted} bars too few in the bundles, expected enough`)
  return from
}

function cutDraft(mark: string, diameter: number, bundle: string, bars: number, bar: Bar): Draft {
  return {
    kind: 'cut',
    subject: { kind: 'bar', id: `${diameter} B500B` },
    value: {
      plan: null,
      line: null,
      diameter,
      grade: 'B500B',
      from: { bundle },
      stock: STOCK,
      bars,
      pieces: [...bar.pieces.values()].map((piece) => ({ ...piece, panel: panelSubject(DEMO_JOB, mark).id })),
      offcut: bar.room,
      kept: bar.room >= WORTH_KEEPING,
    },
  }
}
