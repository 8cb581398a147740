import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  candidate,
  liftedPlate,
  liftReport,
  loadCase,
  plateOf,
  platePeak,
  reentrantCorners,
  supported,
} from '@castwright/engine/lift'
import { type Panel, panelOf } from '@castwright/engine/panel'
import { type BenchLine, median, seconds } from './line.ts'
import { BENCH_PANELS, type BenchPanel, SPEED_PANEL } from './plate-panels.ts'
import { type PeerAnswer, peerFound, runPeer } from './plate-peer.ts'

const BIN = fileURLToPath(new URL('../packages/cli/bin/castwright.js', import.meta.url))
const MODULUS = 30_000
const POISSON = 0.2

/** What was found when the peer was last there, for machines without it. */
const LAST_MEASURED = {
  accuracy: '25 November 2026, four panels: loads 0.17 %, deflections 0.91 %, moments 0.73 % off',
  whole: '25 November 2026: × 4.0 of S8R at 100 mm, goal × 5, machine busy',
  warm: '25 November 2026: × 36 of S8R at 100 mm, goal × 20, machine busy',
} as const

/** Plate against an independent solver and against itself. `short`: seconds, without the peer. */
export function plate(short: boolean): BenchLine[] {
  const peer = !short && peerFound()
  const missing = short ? 'peer not run' : 'peer missing'
  const against = peer
    ? BENCH_PANELS.map(accuracy)
    : [{ what: 'plate against a shell solver', value: missing, beside: `last ${LAST_MEASURED.accuracy}` }]
  return [
    ...against,
    ...speed(peer, missing, short ? 5 : 15),
    moving(short ? 30 : 150),
    ...growth(short ? 24 : 1000),
  ]
}

/** Meshes of the peer, each with half the sides of the one before: refined until two agree. */
const PEER_SIZES = [
  { coarsest: 300, finest: 50, growth: 0.4 },
  { coarsest: 200, finest: 25, growth: 0.3 },
  { coarsest: 150, finest: 12.5, growth: 0.25 },
] as const
/** Two meshes of the peer agree within this share of the greatest number of a kind. */
const AGREE = 0.005

function accuracy({ name, drawing, probes, inner }: BenchPanel): BenchLine {
  const ours = liftReport({ panel: panelOf(drawing), yard: null, probes, modulus: MODULUS, poisson: POISSON })
  const theirs = refinedPeer({ name, drawing, probes, inner })
  const found: PeerAnswer = {
    ...theirs.answer,
    loads: ours.inserts.map(({ load }) => (load ?? Number.NaN) * 1000),
    probes: ours.probes.map(({ deflection, mx, my, mxy }) => ({
      deflection: deflection ?? Number.NaN,
      mx: mx ?? Number.NaN,
      my: my ?? Number.NaN,
      mxy: mxy ?? Number.NaN,
    })),
  }
  const off = differences(found, theirs.answer, inner)
  const met = off.loads <= 0.01 && off.deflections <= 0.015 && off.moments <= 0.03
  return {
    what: `plate, ${name}: loads, deflections, moments`,
    value: [off.loads, off.deflections, off.moments].map(percent).join(' '),
    beside: `off an S8R mesh of ${theirs.answer.elements}, its own two meshes ${percent(theirs.apart)} apart; goal 1, 1.5, 3 %${met ? '' : ': not met'}`,
  }
}

function refinedPeer({ drawing, probes, inner }: BenchPanel): { answer: PeerAnswer; apart: number } {
  let before: PeerAnswer | null = null
  let apart = Number.POSITIVE_INFINITY
  for (const size of PEER_SIZES) {
    const answer = runPeer({ drawing, probes, modulus: MODULUS, poisson: POISSON, size })
    if (before !== null) {
      const { loads, deflections, moments } = differences(before, answer, inner)
      apart = Math.max(loads, deflections, moments)
      if (apart <= AGREE) return { answer, apart }
    }
    before = answer
  }
  if (before === null) throw new Error('peer: expected at least one mesh')
  return { answer: before, apart }
}

/** Largest difference of loads, each of itself; of deflections and moments, of the greatest of the panel. */
function differences(
  one: PeerAnswer,
  other: PeerAnswer,
  inner: readonly boolean[],
): { loads: number; deflections: number; moments: number } {
  const most = (values: readonly number[]): number => Math.max(...values.map(Math.abs))
  // A shell that gives way in shear lets the twisting moment fall to zero in a thin strip along a free edge: not compared there.
  const moments = ({ probes }: PeerAnswer): number[] =>
    probes.flatMap(({ mx, my, mxy }, i) => (inner[i] === true ? [mx, my, mxy] : [mx, my]))
  const apart = (a: readonly number[], b: readonly number[]): number =>
    most(a.map((value, i) => value - b[i]!)) / most(b)
  return {
    loads: most(one.loads.map((load, i) => load / other.loads[i]! - 1)),
    deflections: apart(
      one.probes.map(({ deflection }) => deflection),
      other.probes.map(({ deflection }) => deflection),
    ),
    moments: apart(moments(one), moments(other)),
  }
}

function percent(share: number): string {
  return `${(100 * share).toFixed(2)}%`
}

function speed(peer: boolean, missing: string, runs: number): BenchLine[] {
  const { drawing, probes } = SPEED_PANEL
  const theirs = peer
    ? median(
        Array.from(
          { length: 3 },
          () =>
            runPeer({ drawing, probes, modulus: MODULUS, poisson: POISSON, size: { coarsest: 100 } }).seconds,
        ),
      )
    : null
  const folder = mkdtempSync(join(tmpdir(), 'plate-bench-'))
  const file = join(folder, 'panel.json')
  writeFileSync(file, JSON.stringify(drawing))
  const lift = (): unknown =>
    execFileSync(process.execPath, [BIN, 'lift', file, '--json'], { stdio: 'ignore' })
  lift()
  const whole = median(Array.from({ length: Math.ceil(runs / 3) }, () => seconds(lift)))
  rmSync(folder, { recursive: true })
  const panel = panelOf(drawing)
  const report = (): unknown => liftReport({ panel, yard: null, probes })
  for (let i = 0; i < runs; i += 1) report()
  const warm = median(Array.from({ length: runs }, () => seconds(report)))
  const line = (what: string, time: number, goal: number, last: string): BenchLine => ({
    what,
    value: `${(time * 1000).toFixed(0)} ms`,
    beside:
      theirs === null
        ? `${missing}; last ${last}`
        : `peer, S8R at 100 mm, ${(theirs * 1000).toFixed(0)} ms: × ${(theirs / time).toFixed(1)}; goal × ${goal}`,
  })
  return [
    line('lift 7.2 × 3.2 m, two openings, whole process', whole, 5, LAST_MEASURED.whole),
    line('the same in one process, warm', warm, 20, LAST_MEASURED.warm),
  ]
}

function plateInput(panel: Panel) {
  const { region, drawing, weight, faceArea } = panel
  const piece = region[0]
  if (piece === undefined) throw new Error('bench: expected concrete')
  const picks = (drawing.inserts ?? []).map(({ at }) => at)
  const pressure = (weight * 1000) / (faceArea * 1e6)
  return { piece, picks, pressure, thickness: drawing.thickness, modulus: MODULUS, poisson: POISSON }
}

/** One insert dragged over the panel in steps of a few millimetres. */
function moving(steps: number): BenchLine {
  const { picks, pressure, ...input } = plateInput(panelOf(SPEED_PANEL.drawing))
  const fresh = () => {
    const model = plateOf({ ...input, supports: picks })
    const load = loadCase(model, { pressure })
    const candidates = picks.map((at) => candidate(model, at))
    return {
      model,
      load,
      candidates,
      ...supported({ model, load, supports: picks.map((at) => ({ at })), candidates }),
    }
  }
  for (let i = 0; i < 10; i += 1) fresh()
  const whole = median(Array.from({ length: 10 }, () => seconds(fresh)))
  const { model, load, candidates } = fresh()
  const corners = reentrantCorners(input.piece)
  const times: number[] = []
  const peaks: number[] = []
  for (let i = 0; i < 2 * steps; i += 1) {
    const at = [picks[0]![0] + 3.1 * (i % steps), picks[0]![1] + 1.7 * (i % steps)] as const
    const places = [at, ...picks.slice(1)]
    const from = performance.now()
    const own = candidate(model, at)
    const { field } = supported({
      model,
      load,
      supports: places.map((place) => ({ at: place })),
      candidates: [own, ...candidates.slice(1)],
    })
    const then = performance.now()
    platePeak({ field, supports: places, corners })
    if (i < steps) continue
    times.push((then - from) / 1000)
    peaks.push((performance.now() - from) / 1000)
  }
  return {
    what: 'one insert moved: loads and bending',
    value: `${(median(times) * 1000).toFixed(2)} ms`,
    beside: `fresh (mesh, factor, loads) ${(whole * 1000).toFixed(0)} ms: × ${(whole / median(times)).toFixed(0)}; goal × 50; with the peak over all points ${(median(peaks) * 1000).toFixed(1)} ms, goal 16 ms`,
  }
}

/** Flat lifts of panels of different size, and how the time grows with the unknowns. */
function growth(count: number): BenchLine[] {
  const cases = Array.from({ length: count }, (_, i) => {
    const share = i / Math.max(1, count - 1)
    const [length, width] = [3000 + 9000 * share, 2400 + 1600 * share]
    const thickness = 120 + 10 * (i % 9)
    const openings = Array.from({ length: i % 5 }, (_, k) => {
      const [x, y] = [length * (0.12 + 0.2 * k), width * 0.35]
      const [w, h] = [length * 0.1, width * 0.3]
      return [
        [x, y],
        [x, y + h],
        [x + w, y + h],
        [x + w, y],
      ] as [number, number][]
    })
    const piece = {
      outline: [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ] as [number, number][],
      holes: openings,
    }
    const supports = [0.207, 0.793].flatMap((x) =>
      [0.15, 0.85].map((y) => ({ at: [x * length, y * width] as [number, number] })),
    )
    const pressure = 25e-6 * thickness
    return { piece, thickness, modulus: MODULUS, poisson: POISSON, supports, pressure }
  })
  const runs = cases.map((input) => {
    let unknowns = 0
    const time = seconds(() => {
      unknowns = 6 * liftedPlate(input).model.mesh.x.length
    })
    return { time, unknowns }
  })
  const warm = runs.slice(Math.min(20, count >> 2))
  const whole = warm.reduce((sum, { time }) => sum + time, 0)
  const sorted = [...warm].sort((a, b) => a.unknowns - b.unknowns)
  return [
    {
      what: `flat lifts of ${count} panels of different size`,
      value: `${(warm.length / whole).toFixed(1)} panels/s`,
      beside: `${sorted[0]?.unknowns} to ${sorted.at(-1)?.unknowns} unknowns; time with unknowns^${slope(warm).toFixed(2)}`,
    },
  ]
}

/** Slope of time against unknowns, both as logarithms, by least squares. */
function slope(runs: readonly { readonly time: number; readonly unknowns: number }[]): number {
  const points = runs.map(({ time, unknowns }) => [Math.log(unknowns), Math.log(time)] as const)
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / points.length
  const [x, y] = [mean(0), mean(1)]
  const along = points.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0)
  return along / points.reduce((sum, [a]) => sum + (a - x) ** 2, 0)
}
