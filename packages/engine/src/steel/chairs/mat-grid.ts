import { addTo, type Band, factorBand, solveBand } from './banded.ts'

/** A mat on chairs as bars that cross: each an elastic beam, one on the other where they cross, torsion left out. */
export interface MatGridInput {
  /** Bars that lie on the chairs, mm. */
  readonly carried: { readonly diameter: number; readonly spacing: number }
  /** Bars that cross them, mm; null for a mat of one direction. */
  readonly crossing: { readonly diameter: number; readonly spacing: number } | null
  /** Chairs apart along a carried bar, mm. */
  readonly spacing: number
  /** One person's weight on a crossing, kN. */
  readonly person: number
}

export interface MatGridSag {
  /** Under own weight and the person, at the worst crossing tried, mm. */
  readonly sag: number
  /** Largest bending stress at the same time, MPa. */
  readonly stress: number
  /** Chaired bars apart across the carried bars, mm. */
  readonly across: number
}

/** Young's modulus of bar, N/mm². */
export const BAR_MODULUS = 200_000
const DENSITY = 7850
const GRAVITY = 9.80665
/** Bays of chairs each way: the corner bay with one neighbour is the least held. */
const BAYS = 2
/** Where a bay has one gap alone, the middle of the bar is looked at too. */
const HALVES = 2

/**
 * Sag of a mat on a square grid of chairs, by the stiffness method on two bays by two, chairs also along the rim. The person stands
 * on a crossing of the corner bay, the worst of all of them, or in the middle of a bar where the bay has no other; ends that overhang the last chair are not stepped on. Crossing bars
 * are spread so that whole gaps fill a bay, never closer than they lie.
 *
 * Null where a size is not above 0.
 */
export function matGridSag(input: MatGridInput): MatGridSag | null {
  const grid = gridOf(input)
  if (grid === null) return null
  const stiff = assemble(grid)
  factorBand(stiff)
  const own = solveBand(stiff, weights(grid, input))
  let [sag, stress] = [0, 0]
  const load = new Float64Array(grid.size)
  for (const node of cornerBay(grid)) {
    load.fill(0)
    load[3 * node] = input.person * 1000
    const bent = solveBand(stiff, load)
    for (let i = 0; i < bent.length; i += 1) bent[i] = (bent[i] as number) + (own[i] as number)
    sag = Math.max(sag, bent[3 * node] as number)
    stress = Math.max(stress, largestStress(grid, bent))
  }
  return { sag, stress, across: grid.gapV * grid.baysV }
}

interface Grid {
  /** Nodes along a carried bar and across. */
  readonly nu: number
  readonly nv: number
  /** Between nodes, mm. */
  readonly gapU: number
  readonly gapV: number
  /** Nodes in one bay, each way. */
  readonly baysU: number
  readonly baysV: number
  /** A crossing bar lies on each node along, or on every second; a carried bar likewise. */
  readonly everyU: number
  readonly everyV: number
  readonly u: Bar
  readonly v: Bar | null
  readonly size: number
  readonly chairs: readonly number[]
}

interface Bar {
  readonly diameter: number
  readonly stiffness: number
}

function gridOf({ carried, crossing, spacing, person }: MatGridInput): Grid | null {
  const sizes = [spacing, person, carried.diameter, carried.spacing]
  if (crossing !== null) sizes.push(crossing.diameter, crossing.spacing)
  if (!sizes.every((size) => size > 0 && Number.isFinite(size))) return null
  const gapsU = crossing === null ? 1 : Math.max(1, Math.floor(spacing / crossing.spacing + 1e-9))
  const gapsV = crossing === null ? 1 : Math.max(1, Math.floor(spacing / carried.spacing + 1e-9))
  const everyU = gapsU === 1 ? HALVES : 1
  const everyV = gapsV === 1 && crossing !== null ? HALVES : 1
  const [baysU, baysV] = [gapsU * everyU, gapsV * everyV]
  const [nu, nv] = [BAYS * baysU + 1, crossing === null ? 1 : BAYS * baysV + 1]
  const chairs: number[] = []
  for (let j = 0; j < nv; j += baysV) {
    for (let i = 0; i < nu; i += baysU) chairs.push(j * nu + i)
  }
  return {
    nu,
    nv,
    gapU: spacing / baysU,
    gapV: carried.spacing / everyV,
    baysU,
    baysV,
    everyU,
    everyV,
    u: barOf(carried.diameter),
    v: crossing === null ? null : barOf(crossing.diameter),
    size: 3 * nu * nv,
    chairs,
  }
}

function barOf(diameter: number): Bar {
  return { diameter, stiffness: (BAR_MODULUS * Math.PI * diameter ** 4) / 64 }
}

/** Three unknowns a node: sag, slope along, slope across. */
function assemble(grid: Grid): Band {
  const { nu, nv, gapU, gapV, u, v, size } = grid
  const half = Math.min(size - 1, 3 * nu + 2)
  const band: Band = { size, half, at: new Float64Array(size * (half + 1)) }
  for (let j = 0; j < nv; j += 1) {
    for (let i = 0; i < nu; i += 1) {
      const node = j * nu + i
      const [onU, onV] = [liesU(grid, j), liesV(grid, i)]
      if (onU && i + 1 < nu) addBeam(band, 3 * node, 3 * (node + 1), 1, u.stiffness, gapU)
      if (v !== null && onV && j + 1 < nv) addBeam(band, 3 * node, 3 * (node + nu), 2, v.stiffness, gapV)
      // What no bar holds stays where it is.
      if (!onU) addTo(band, 3 * node + 1, 3 * node + 1, u.stiffness)
      if (!onV) addTo(band, 3 * node + 2, 3 * node + 2, u.stiffness)
      if (!onU && !onV) addTo(band, 3 * node, 3 * node, u.stiffness)
    }
  }
  // Far stiffer than any bar, near enough to rigid and well within what doubles hold.
  const rigid = (1e6 * Math.max(u.stiffness, v?.stiffness ?? 0)) / Math.min(gapU, gapV) ** 3
  for (const node of grid.chairs) addTo(band, 3 * node, 3 * node, rigid)
  return band
}

/** Whether a carried bar lies on a row of nodes. */
function liesU({ everyV }: Grid, j: number): boolean {
  return j % everyV === 0
}

/** Whether a crossing bar lies on a column of nodes. */
function liesV({ v, everyU }: Grid, i: number): boolean {
  return v !== null && i % everyU === 0
}

function addBeam(band: Band, a: number, b: number, slope: 1 | 2, stiffness: number, length: number): void {
  const k = stiffness / length ** 3
  const places = [a, a + slope, b, b + slope]
  const [l, ll] = [length, length * length]
  const beam = [
    [12, 6 * l, -12, 6 * l],
    [6 * l, 4 * ll, -6 * l, 2 * ll],
    [-12, -6 * l, 12, -6 * l],
    [6 * l, 2 * ll, -6 * l, 4 * ll],
  ]
  for (let r = 0; r < 4; r += 1) {
    for (let c = 0; c <= r; c += 1)
      addTo(band, places[r] as number, places[c] as number, k * ((beam[r] as number[])[c] as number))
  }
}

/** Own weight of both directions, at the crossings. */
function weights(grid: Grid, { carried, crossing }: MatGridInput): Float64Array {
  const { nu, nv, gapU, gapV, size } = grid
  const perMetre = (diameter: number): number => (DENSITY * GRAVITY * Math.PI * diameter ** 2) / 4e9
  const load = new Float64Array(size)
  for (let j = 0; j < nv; j += 1) {
    for (let i = 0; i < nu; i += 1) {
      const alongU = !liesU(grid, j) ? 0 : i === 0 || i === nu - 1 ? gapU / 2 : gapU
      const alongV = !liesV(grid, i) ? 0 : j === 0 || j === nv - 1 ? gapV / 2 : gapV
      load[3 * (j * nu + i)] =
        perMetre(carried.diameter) * alongU + (crossing === null ? 0 : perMetre(crossing.diameter) * alongV)
    }
  }
  return load
}

/** Nodes of the corner bay where a bar lies and no chair is. */
function* cornerBay(grid: Grid): Generator<number> {
  const { nu, nv, baysU, baysV } = grid
  for (let j = 0; j <= Math.min(baysV, nv - 1); j += 1) {
    for (let i = 0; i <= baysU; i += 1) {
      const chair = (i === 0 || i === baysU) && (j === 0 || j === baysV)
      if (!chair && (liesU(grid, j) || liesV(grid, i))) yield j * nu + i
    }
  }
}

function largestStress(grid: Grid, bent: Float64Array): number {
  const { nu, nv, gapU, gapV, u, v } = grid
  let most = 0
  const look = (a: number, b: number, slope: 1 | 2, bar: Bar, length: number): void => {
    const [wa, sa, wb, sb] = [bent[a], bent[a + slope], bent[b], bent[b + slope]] as [
      number,
      number,
      number,
      number,
    ]
    const chord = (6 * (wb - wa)) / length ** 2
    const curved = Math.max(
      Math.abs(chord - (4 * sa + 2 * sb) / length),
      Math.abs((2 * sa + 4 * sb) / length - chord),
    )
    most = Math.max(most, (BAR_MODULUS * curved * bar.diameter) / 2)
  }
  for (let j = 0; j < nv; j += 1) {
    for (let i = 0; i < nu; i += 1) {
      const node = j * nu + i
      if (liesU(grid, j) && i + 1 < nu) look(3 * node, 3 * (node + 1), 1, u, gapU)
      if (v !== null && liesV(grid, i) && j + 1 < nv) look(3 * node, 3 * (node + nu), 2, v, gapV)
    }
  }
  return most
}
