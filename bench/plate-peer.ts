import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Drawing } from '@castwright/engine/panel'

/**
 * The independent peer: an open shell solver (`ccx`, elements S8R) in its thin limit: a tenth of the thickness, modulus × 1000,
 * density × 10. Same bending stiffness and weight, no shear flexibility to speak of.
 */
export interface PeerSize {
  /** Longest side, mm. */
  readonly coarsest: number
  /** Side at picks and re-entrant corners, mm, and how fast it grows away from them; absent: uniform. */
  readonly finest?: number
  readonly growth?: number
}

export interface PeerAnswer {
  readonly elements: number
  /** Of the picks, N. */
  readonly loads: readonly number[]
  /** At the probes: mm downward; kN·m/m, sagging positive. */
  readonly probes: readonly { deflection: number; mx: number; my: number; mxy: number }[]
  /** Whole process of the solver, s. */
  readonly seconds: number
}

export interface PeerCase {
  readonly drawing: Drawing
  readonly probes: readonly (readonly [number, number])[]
  readonly modulus: number
  readonly poisson: number
  readonly size: PeerSize
}

/** Whether the solver is on the PATH. */
export function peerFound(): boolean {
  return spawnSync('ccx', ['-v'], { stdio: 'ignore' }).error === undefined
}

const THINNER = 10

export function runPeer(input: PeerCase): PeerAnswer {
  const mesh = quadMesh(input)
  const folder = mkdtempSync(join(tmpdir(), 'plate-peer-'))
  try {
    writeFileSync(join(folder, 'plate.inp'), deck(input, mesh))
    const from = performance.now()
    execFileSync('ccx', ['-i', 'plate'], {
      cwd: folder,
      stdio: 'ignore',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    })
    const seconds = (performance.now() - from) / 1000
    return { ...answer(input, mesh, readFileSync(join(folder, 'plate.dat'), 'utf8')), seconds }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

interface QuadMesh {
  readonly nodes: readonly (readonly [number, number])[]
  /** Four corners counter-clockwise, then the middles of their sides. */
  readonly elements: readonly (readonly number[])[]
  readonly nodeAt: (at: readonly [number, number]) => number
}

/** Rectangles between grid lines through all edges, picks and probes, those in openings left out. */
function quadMesh({ drawing, probes, size }: PeerCase): QuadMesh {
  const picks = (drawing.inserts ?? []).map(({ at }) => at)
  const openings = (drawing.openings ?? []).map(({ outline }) => boundsOf(outline))
  const whole = boundsOf(drawing.outline)
  const lines = ([0, 1] as const).map((axis) => {
    const fixed = [whole, ...openings].flatMap((box) => [box[0][axis], box[1][axis]])
    const fine = [...openings.flatMap((box) => [box[0][axis], box[1][axis]]), ...picks.map((at) => at[axis])]
    return gridLines([...fixed, ...picks.map((at) => at[axis]), ...probes.map((at) => at[axis])], fine, size)
  }) as [number[], number[]]
  const [xs, ys] = lines
  const nodes: [number, number][] = []
  const index = new Map<string, number>()
  const node = (x: number, y: number): number => {
    const key = `${x.toFixed(4)},${y.toFixed(4)}`
    const found = index.get(key)
    if (found !== undefined) return found
    nodes.push([x, y])
    index.set(key, nodes.length)
    return nodes.length
  }
  const elements: number[][] = []
  for (let j = 0; j + 1 < ys.length; j += 1) {
    for (let i = 0; i + 1 < xs.length; i += 1) {
      const [x0, x1, y0, y1] = [xs[i]!, xs[i + 1]!, ys[j]!, ys[j + 1]!]
      const [mx, my] = [(x0 + x1) / 2, (y0 + y1) / 2]
      if (openings.some(([low, high]) => mx > low[0] && mx < high[0] && my > low[1] && my < high[1])) continue
      elements.push([
        node(x0, y0),
        node(x1, y0),
        node(x1, y1),
        node(x0, y1),
        node(mx, y0),
        node(x1, my),
        node(mx, y1),
        node(x0, my),
      ])
    }
  }
  const nodeAt = ([x, y]: readonly [number, number]): number => {
    const found = index.get(`${x.toFixed(4)},${y.toFixed(4)}`)
    if (found === undefined) throw new Error(`peer mesh: no node at ${x}, ${y}`)
    return found
  }
  return { nodes, elements, nodeAt }
}

function boundsOf(ring: readonly (readonly [number, number])[]): [[number, number], [number, number]] {
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)]
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ]
}

function gridLines(
  wanted: readonly number[],
  fine: readonly number[],
  { coarsest, finest, growth = 0.3 }: PeerSize,
): number[] {
  const fixed = [...new Set(wanted)].sort((a, b) => a - b)
  const sizeAt = (x: number): number =>
    finest === undefined
      ? coarsest
      : fine.reduce((least, at) => Math.min(least, finest + growth * Math.abs(x - at)), coarsest)
  const lines: number[] = []
  const split = (from: number, to: number): void => {
    const middle = (from + to) / 2
    if (to - from <= 1.001 * Math.min(sizeAt(middle), 1.5 * sizeAt(from), 1.5 * sizeAt(to))) lines.push(to)
    else {
      split(from, middle)
      split(middle, to)
    }
  }
  for (const [i, at] of fixed.entries()) {
    if (i === 0) lines.push(at)
    else if (finest !== undefined) split(fixed[i - 1]!, at)
    else {
      const parts = Math.ceil((at - fixed[i - 1]!) / coarsest - 1e-9)
      for (let k = 1; k <= parts; k += 1) lines.push(fixed[i - 1]! + ((at - fixed[i - 1]!) * k) / parts)
    }
  }
  return lines
}

function deck({ drawing, probes, modulus, poisson }: PeerCase, mesh: QuadMesh): string {
  const picks = (drawing.inserts ?? []).map(({ at }) => mesh.nodeAt(at))
  const read = probes.map((at) => mesh.nodeAt(at))
  const around = mesh.elements.flatMap((corners, e) => (corners.some((n) => read.includes(n)) ? [e + 1] : []))
  const density = drawing.concrete.density ?? 2500
  return [
    '*NODE,NSET=NALL',
    ...mesh.nodes.map(([x, y], i) => `${i + 1},${x},${y},0`),
    '*ELEMENT,TYPE=S8R,ELSET=EALL',
    ...mesh.elements.map((nodes, e) => `${e + 1},${nodes.join(',')}`),
    ...listed('*NSET,NSET=NPICK', picks),
    ...listed('*NSET,NSET=NREAD', read),
    ...listed('*ELSET,ELSET=EREAD', around),
    '*MATERIAL,NAME=M',
    '*ELASTIC',
    `${modulus * THINNER ** 3},${poisson}`,
    '*DENSITY',
    `${density * THINNER * 1e-12}`,
    '*SHELL SECTION,ELSET=EALL,MATERIAL=M',
    `${drawing.thickness / THINNER}`,
    '*BOUNDARY',
    ...picks.map((n) => `${n},3,3`),
    `${picks[0]},1,2`,
    `${picks[1]},2,2`,
    '*STEP',
    '*STATIC',
    '*DLOAD',
    'EALL,GRAV,9806.65,0.,0.,-1.',
    '*NODE PRINT,NSET=NREAD',
    'U',
    '*NODE PRINT,NSET=NPICK',
    'RF',
    '*EL PRINT,ELSET=EREAD',
    'S',
    '*END STEP',
    '',
  ].join('\n')
}

function listed(head: string, numbers: readonly number[]): string[] {
  const lines = [head]
  for (let i = 0; i < numbers.length; i += 8) lines.push(`${numbers.slice(i, i + 8).join(',')},`)
  return lines
}

function answer({ drawing, probes }: PeerCase, mesh: QuadMesh, text: string): Omit<PeerAnswer, 'seconds'> {
  const parts = text.split(/^ *(displacements|forces|stresses)/m)
  const rows = (name: string): number[][] => {
    const at = parts.indexOf(name)
    return (parts[at + 1] ?? '')
      .split('\n')
      .slice(1)
      .map((line) => line.trim().split(/\s+/).map(Number).filter(Number.isFinite))
      .filter((row) => row.length > 3)
  }
  const moved = new Map(rows('displacements').map((row) => [row[0]!, row[3]!]))
  const forces = new Map(rows('forces').map((row) => [row[0]!, row[3]!]))
  const stresses = new Map<number, number[][]>()
  for (const row of rows('stresses')) stresses.set(row[0]!, [...(stresses.get(row[0]!) ?? []), row.slice(2)])
  return {
    elements: mesh.elements.length,
    loads: (drawing.inserts ?? []).map(({ at }) => forces.get(mesh.nodeAt(at)) ?? Number.NaN),
    probes: probes.map((at) => {
      const node = mesh.nodeAt(at)
      return {
        deflection: -(moved.get(node) ?? Number.NaN),
        ...momentsAt(node, mesh, stresses, drawing.thickness / THINNER),
      }
    }),
  }
}

/** Mean over the elements around a node of the moments carried on from their integration points. */
function momentsAt(
  node: number,
  { elements }: QuadMesh,
  stresses: ReadonlyMap<number, readonly number[][]>,
  thickness: number,
): { mx: number; my: number; mxy: number } {
  const sums = [0, 0, 0]
  let count = 0
  const root = Math.sqrt(3)
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]
  for (const [e, nodes] of elements.entries()) {
    const place = nodes.indexOf(node)
    const points = stresses.get(e + 1)
    if (place < 0 || place > 3 || points === undefined) continue
    const [xi, eta] = corners[place] as [number, number]
    count += 1
    for (const [k, component] of [0, 1, 3].entries()) {
      // Two layers of four points at ± 1 / √3: moment from the difference of the layers.
      const moment = (p: number): number =>
        (((points[p]![component]! - points[p + 4]![component]!) / 2) * root * thickness ** 2) / 6
      for (let p = 0; p < 4; p += 1) {
        const [px, py] = [p % 2 === 0 ? -1 : 1, p < 2 ? -1 : 1]
        sums[k]! += (moment(p) * (1 + root * px * xi) * (1 + root * py * eta)) / 4
      }
    }
  }
  const [mx, my, mxy] = sums.map((sum) => sum / count / 1000) as [number, number, number]
  return { mx, my, mxy }
}
