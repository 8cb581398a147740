import { ICE_POINT } from '../../age-method.ts'
import { type Face, STEFAN_BOLTZMANN } from '../face.ts'
import type { HeatProblem } from '../problem.ts'
import { breaksOf, lineBetween, type Series } from '../series.ts'

/** R = 8.314 J/(mol·K), written again here on purpose: nothing of the solver's arithmetic is shared. */
const R = 8.314

export interface LinesRun {
  readonly times: readonly number[]
  readonly core: readonly number[]
  readonly top: readonly number[]
  readonly bottom: readonly number[]
  readonly mean: readonly number[]
  readonly hottest: readonly number[]
  readonly equivalentAge: readonly number[]
  readonly degree: readonly number[]
}

/**
 * The same problem by another way, for tests and bench: method of lines on an even grid of nodes that stand on the surfaces, heat
 * of hydration as a rate, Crank and Nicolson at fixed small steps, each hour of break begun with four half steps of backward Euler
 * (Rannacher). Seconds, metres, watts. Two grids of it say how far it has converged.
 *
 * @param spaces spaces between nodes through the concrete, even
 * @param seconds length of a step
 */
export function methodOfLines(problem: HeatProblem, spaces: number, seconds: number): LinesRun {
  const nodes = nodesOf(problem, spaces)
  const { size, first, last } = nodes
  const count = Math.floor(problem.hours / problem.every + 1e-9) + 1
  const times = Array.from({ length: count }, (_, index) => index * problem.every)
  const out = {
    core: [],
    top: [],
    bottom: [],
    mean: [],
    hottest: [],
    equivalentAge: [],
    degree: [],
  } as Record<'core' | 'top' | 'bottom' | 'mean' | 'hottest' | 'equivalentAge' | 'degree', number[]>
  const { hydration } = problem
  const state = { T: Float64Array.from(nodes.initial), age: new Float64Array(size), meanAge: 0 }
  const mean = (): number => {
    let sum = 0
    for (let i = first; i < last; i += 1) sum += (state.T[i]! + state.T[i + 1]!) / 2
    return sum / (last - first)
  }
  const write = (): void => {
    const { T, age } = state
    out.core.push(T[(first + last) / 2]!)
    out.bottom.push(T[first]!)
    out.top.push(T[last]!)
    out.mean.push(mean())
    out.hottest.push(Math.max(...T.subarray(first, last + 1)))
    out.equivalentAge.push(state.meanAge)
    const alpha = (te: number): number =>
      te > 0 ? hydration.ultimate * Math.exp(-((hydration.tau / te) ** hydration.beta)) : 0
    let sum = 0
    for (let i = first; i < last; i += 1) sum += (alpha(age[i]!) + alpha(age[i + 1]!)) / 2
    out.degree.push(sum / (last - first))
  }
  write()
  // As cast, before the mould's heat is shared with the node on the surface.
  for (const name of ['core', 'top', 'bottom', 'mean', 'hottest'] as const) out[name][0] = problem.initial
  const stops = [...new Set([...seriesOfBoth(problem).flatMap(breaksOf), ...times.slice(1), problem.hours])]
    .filter((hour) => hour > 0 && hour <= problem.hours)
    .sort((a, b) => a - b)
  let t = 0
  for (const stop of stops) {
    const sides = [problem.below, problem.above].map((face) => sideBetween(face, t, stop)) as [Side, Side]
    const steps = Math.max(Math.ceil(((stop - t) * 3600) / seconds - 1e-9), 1)
    const h = ((stop - t) * 3600) / steps
    for (let step = 0; step < steps; step += 1) {
      const from = t * 3600 + step * h
      if (step < 2) {
        advance(state, nodes, problem, sides, from, h / 2, 1)
        advance(state, nodes, problem, sides, from + h / 2, h / 2, 1)
      } else advance(state, nodes, problem, sides, from, h, 0.5)
    }
    t = stop
    if (times.some((time) => Math.abs(time - stop) < 1e-9)) write()
  }
  return { times, ...out }
}

export interface Nodes {
  readonly size: number
  /** Nodes on the under and the upper side of the concrete. */
  readonly first: number
  readonly last: number
  /** J/(m² K) of each node, W/(m² K) to the next, W/m² of each node per (1/s) of hydration. */
  readonly capacity: Float64Array
  readonly link: Float64Array
  readonly gives: Float64Array
  readonly initial: Float64Array
}

export function nodesOf(problem: HeatProblem, spaces: number): Nodes {
  const parts = [
    ...[...problem.under]
      .reverse()
      .map((layer) => ({ layer, spaces: Math.max(4, spaces / 10), initial: layer.initial, own: false })),
    { layer: problem.concrete, spaces, initial: problem.initial, own: true },
    ...problem.over.map((layer) => ({
      layer,
      spaces: Math.max(4, spaces / 10),
      initial: layer.initial,
      own: false,
    })),
  ]
  const size = parts.reduce((sum, part) => sum + part.spaces, 1)
  const nodes = {
    capacity: new Float64Array(size),
    link: new Float64Array(size - 1),
    gives: new Float64Array(size),
    initial: new Float64Array(size),
  }
  let [at, first] = [0, 0]
  for (const { layer, spaces: these, initial, own } of parts) {
    const dx = layer.thickness / 1000 / these
    if (own) first = at
    for (let space = 0; space < these; space += 1) {
      const heat = (layer.heatCapacity * 1000 * dx) / 2
      for (const node of [at + space, at + space + 1]) {
        const before = nodes.capacity[node]!
        // A node between two parts begins at what leaves their heat as it is.
        nodes.initial[node] = (nodes.initial[node]! * before + initial * heat) / (before + heat)
        nodes.capacity[node] = before + heat
        if (own) nodes.gives[node]! += (problem.hydration.binder * problem.hydration.heat * 1000 * dx) / 2
      }
      nodes.link[at + space] = layer.conductivity / dx
    }
    at += these
  }
  return { size, first, last: first + spaces, ...nodes }
}

interface Side {
  readonly face: Face
  readonly lines: ReadonlyMap<Series, readonly [number, number]>
}

function seriesOfFace(face: Face): Series[] {
  return [
    face.film,
    face.held,
    face.resistance,
    face.air,
    face.sky?.temperature ?? null,
    ...face.gain.map(({ series }) => series),
  ].filter((series): series is Series => series !== null)
}

export function seriesOfBoth({ below, above }: HeatProblem): Series[] {
  return [...seriesOfFace(below), ...seriesOfFace(above)]
}

function sideBetween(face: Face, from: number, to: number): Side {
  return { face, lines: new Map(seriesOfFace(face).map((series) => [series, lineBetween(series, from, to)])) }
}

/** W/m² into the node on that side, as `[at 0 °C, less per °C]`. A held side without resistance goes in over a nearly perfect contact. */
function into({ face, lines }: Side, seconds: number): [number, number] {
  const at = (series: Series): number => {
    const [start, slope] = lines.get(series) ?? [0, 0]
    return start + (slope * seconds) / 3600
  }
  const resistance = at(face.resistance)
  if (face.held !== null) {
    const u = 1 / Math.max(resistance, 1e-9)
    return [u * at(face.held), u]
  }
  const air = at(face.air)
  const film = face.film === null ? 0 : at(face.film)
  let q = face.gain.reduce((sum, { series, share }) => sum + share * at(series), 0)
  if (face.sky !== null)
    q +=
      face.sky.emissivity *
      STEFAN_BOLTZMANN *
      ((at(face.sky.temperature) + ICE_POINT) ** 4 - (air + ICE_POINT) ** 4)
  if (film === 0) return [q, 0]
  const u = 1 / (1 / film + resistance)
  return [u * (air + q / film), u]
}

/** One step of the θ-method, Newton on temperatures with the age eliminated. */
function advance(
  state: { T: Float64Array; age: Float64Array; meanAge: number },
  { size, first, last, capacity, link, gives }: Nodes,
  { hydration }: HeatProblem,
  [below, above]: readonly [Side, Side],
  from: number,
  h: number,
  theta: number,
): void {
  const { ultimate, tau, beta, activation, reference } = hydration
  const aging = (T: number): number =>
    Math.exp((activation / R) * (1 / (reference + 273.15) - 1 / (T + 273.15)))
  // dα/dt in 1/s.
  const speed = (te: number, f: number): number => {
    if (!(te > 0)) return 0
    const power = (tau / te) ** beta
    return power > 700 ? 0 : (ultimate * Math.exp(-power) * beta * power * f) / te / 3600
  }
  const old = state.T
  const T = Float64Array.from(old)
  const age = Float64Array.from(state.age)
  const inflow = (of: Float64Array, i: number, lo: [number, number], hi: [number, number]): number => {
    const left = i > 0 ? link[i - 1]! * (of[i - 1]! - of[i]!) : lo[0] - lo[1] * of[0]!
    const right = i < size - 1 ? link[i]! * (of[i + 1]! - of[i]!) : hi[0] - hi[1] * of[i]!
    return left + right
  }
  const [lo0, hi0, lo1, hi1] = [
    into(below, from),
    into(above, from),
    into(below, from + h),
    into(above, from + h),
  ]
  const before = new Float64Array(size)
  for (let i = 0; i < size; i += 1)
    before[i] =
      inflow(old, i, lo0, hi0) + (gives[i]! > 0 ? gives[i]! * speed(state.age[i]!, aging(old[i]!)) : 0)
  const upper = new Float64Array(size)
  const change = new Float64Array(size)
  for (let round = 0; round < 30; round += 1) {
    let largest = 0
    for (let i = 0; i < size; i += 1) {
      let source = 0
      let steeper = 0
      if (gives[i]! > 0) {
        const f = aging(T[i]!)
        const te = state.age[i]! + (h / 3600) * (theta * f + (1 - theta) * aging(old[i]!))
        source = gives[i]! * speed(te, f)
        age[i] = te
        // The largest part of the derivative is enough: Newton's matrix need not be exact.
        steeper = (source * activation) / R / (T[i]! + 273.15) ** 2
      }
      const residual =
        capacity[i]! * (T[i]! - old[i]!) -
        h * (theta * (inflow(T, i, lo1, hi1) + source) + (1 - theta) * before[i]!)
      const left = i > 0 ? link[i - 1]! : lo1[1]
      const right = i < size - 1 ? link[i]! : hi1[1]
      const diagonal = capacity[i]! + h * theta * (left + right - steeper)
      const lower = i > 0 ? -h * theta * left : 0
      const free = diagonal - lower * (i > 0 ? upper[i - 1]! : 0)
      upper[i] = i < size - 1 ? (-h * theta * right) / free : 0
      change[i] = (-residual - lower * (i > 0 ? change[i - 1]! : 0)) / free
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      if (i < size - 1) change[i]! -= upper[i]! * change[i + 1]!
      T[i]! += change[i]!
      largest = Math.max(largest, Math.abs(change[i]!))
    }
    if (largest < 1e-9) break
    if (round === 29) throw new Error(`method of lines: Newton left ${largest} K`)
  }
  const meanOf = (of: Float64Array): number => {
    let sum = 0
    for (let i = first; i < last; i += 1) sum += (of[i]! + of[i + 1]!) / 2
    return sum / (last - first)
  }
  for (let i = first; i <= last; i += 1)
    age[i] = state.age[i]! + (h / 3600) * (theta * aging(T[i]!) + (1 - theta) * aging(old[i]!))
  state.meanAge += (h / 3600) * (theta * aging(meanOf(T)) + (1 - theta) * aging(meanOf(old)))
  state.T = T
  state.age = age
}
