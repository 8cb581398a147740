import type { Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { type Source, STATICS } from '../working/source.ts'
import type { Step } from '../working/worked.ts'
import type { LiftProbe } from './lift-report.ts'
import { type LiftedPlate, principalMoments, RESIDUAL_LIMIT, rigidity } from './plate/index.ts'
import type { Support } from './supports.ts'

/** Kirchhoff's plate and the elements that solve it. */
const PLATE: Source = { standard: 'thin-plate theory, finite elements', clause: '', status: 'computed' }
const THEORY: Source = { standard: 'thin-plate theory', clause: '', status: 'computed' }

/** Load and stiffness that the plate is given. */
export function loadSteps({
  panel,
  factor,
  modulus,
  poisson,
}: {
  readonly panel: Panel
  readonly factor: number
  readonly modulus: number
  readonly poisson: number
}): Step[] {
  const force = panel.weight * factor
  const { thickness } = panel.drawing
  return [
    {
      symbol: 'F',
      formula: 'W f',
      given: { W: panel.weight, f: factor },
      result: force,
      unit: 'kN',
      source: STATICS,
      note: 'load that the supports share, the factor in it',
    },
    {
      symbol: 'q',
      formula: 'F / A',
      given: { F: force, A: panel.faceArea },
      result: force / panel.faceArea,
      unit: 'kN/m²',
      source: STATICS,
      note: 'A in m²',
    },
    {
      symbol: 'D',
      formula: 'E t³ / (12 (1 − ν²) 10⁶)',
      given: { E: modulus, t: thickness, ν: poisson },
      result: rigidity(modulus, thickness, poisson) / 1e6,
      unit: 'kN·m',
      source: THEORY,
      note: 'bending stiffness of a metre of width',
    },
  ]
}

/** What the mesh is. */
export function plateSteps({ model }: LiftedPlate): Step[] {
  const { mesh } = model
  const count = (symbol: string, result: number, unit: string, note: string): Step => ({
    symbol,
    formula: 'counted on the mesh',
    given: {},
    result,
    unit,
    source: PLATE,
    by: 'search',
    note,
  })
  const [least, most] = sideLengths(mesh)
  return [
    count('triangles', mesh.triangles.length / 3, '', `least angle ${mesh.leastAngle.toFixed(1)}°`),
    {
      symbol: 'unknowns',
      formula: '6 n',
      given: { n: mesh.x.length },
      result: 6 * mesh.x.length,
      unit: '',
      source: PLATE,
      note: 'deflection, two slopes, three curvatures at each of n nodes',
    },
    count('h least', least, 'mm', 'shortest side'),
    count('h most', most, 'mm', 'longest side'),
    {
      symbol: 'residual',
      formula: '|f − K u| beside what cancels in it',
      given: {},
      result: `at most ${RESIDUAL_LIMIT}`,
      unit: '',
      source: PLATE,
      by: 'search',
      note: 'held in every solve; above it there is no result',
    },
  ]
}

function sideLengths({ x, y, triangles }: LiftedPlate['model']['mesh']): [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, 0]
  for (let i = 0; i < triangles.length; i += 1) {
    const [a, b] = [triangles[i]!, triangles[i - (i % 3) + ((i + 1) % 3)]!]
    const length = Math.hypot(x[a]! - x[b]!, y[a]! - y[b]!)
    least = Math.min(least, length)
    most = Math.max(most, length)
  }
  return [least, most]
}

/** Loads of the supports and the three sums that hold them against the weight. */
export function balanceSteps({
  plate,
  inserts,
  force,
  centre,
  equalised,
  determinate,
}: {
  readonly plate: LiftedPlate
  readonly inserts: readonly Support[]
  readonly force: number
  readonly centre: Point
  readonly equalised: boolean
  /** Whether the loads are shown by statics already. */
  readonly determinate: boolean
}): Step[] {
  const loads = plate.reactions.map((reaction) => reaction / 1000)
  const own = determinate
    ? []
    : inserts.map(
        ({ mark, at }, i): Step => ({
          symbol: `R ${mark}`,
          formula: equalised
            ? 'equal pull of the legs, the load in balance'
            : 'no deflection at rigid points, the load in balance',
          given: { x: at[0], y: at[1] },
          result: loads[i]!,
          unit: 'kN',
          source: PLATE,
          by: 'search',
          note: `R${i + 1} below`,
        }),
      )
  const sum = loads.map((_, i) => `R${i + 1}`).join(' + ')
  const given = Object.fromEntries(loads.map((load, i) => [`R${i + 1}`, load]))
  const whole = loads.reduce((all, load) => all + load, 0)
  const arm = (axis: 0 | 1, name: string): Step => ({
    symbol: `Σ R ${name} / Σ R`,
    formula: `(${loads.map((_, i) => `R${i + 1} ${name}${i + 1}`).join(' + ')}) / S`,
    given: {
      ...given,
      S: whole,
      ...Object.fromEntries(inserts.map(({ at }, i) => [`${name}${i + 1}`, at[axis]])),
    },
    result: loads.reduce((all, load, i) => all + load * inserts[i]!.at[axis], 0) / whole,
    unit: 'mm',
    source: STATICS,
    note: `centre of gravity at ${name} ${centre[axis].toFixed(1)} mm`,
  })
  return [
    ...own,
    {
      symbol: 'Σ R',
      formula: sum,
      given,
      result: whole,
      unit: 'kN',
      source: STATICS,
      note: `load F ${force.toFixed(4)} kN`,
    },
    arm(0, 'x'),
    arm(1, 'y'),
  ]
}

const WHERE = {
  support: 'averaged over a disc of one thickness in diameter at a support',
  corner: 'averaged over the concrete in a disc of one thickness in diameter at a re-entrant corner',
  plate: 'the plate’s own value',
} as const

/** From the moments at the peak to its stress, and how far a coarser mesh is off. */
export function peakSteps({ peak, peakError, model }: LiftedPlate): Step[] {
  const [mx, my, mxy] = [peak.mx / 1000, peak.my / 1000, peak.mxy / 1000]
  const place = `at (${peak.at[0].toFixed(1)}, ${peak.at[1].toFixed(1)}), ${WHERE[peak.of]}`
  const moment = (symbol: string, result: number, formula: string): Step => ({
    symbol: `${symbol} peak`,
    formula,
    given: {},
    result,
    unit: 'kN·m/m',
    source: PLATE,
    by: 'search',
    note: place,
  })
  const [most, least] = principalMoments({ mx, my, mxy })
  const principal = (symbol: string, sign: '+' | '−', result: number): Step => ({
    symbol,
    formula: `(mx + my) / 2 ${sign} sqrt(((mx − my) / 2)² + mxy²)`,
    given: { mx, my, mxy },
    result,
    unit: 'kN·m/m',
    source: THEORY,
  })
  const estimate: Step[] =
    peakError === null
      ? []
      : [
          {
            symbol: 'error of peak',
            formula: '|σ − σ on a mesh of sides twice as long|',
            given: { σ: peak.stress },
            result: peakError,
            unit: 'MPa',
            source: PLATE,
            by: 'search',
            note: 'same place, averaged alike: an estimate, on the high side',
          },
        ]
  return [
    moment('mx', mx, '−D (w_xx + ν w_yy)'),
    moment('my', my, '−D (w_yy + ν w_xx)'),
    moment('mxy', mxy, '−D (1 − ν) w_xy'),
    principal('m1', '+', most),
    principal('m2', '−', least),
    stressStep('σ peak', [most, least], model.thickness, peak.stress),
    ...estimate,
  ]
}

function stressStep(
  symbol: string,
  [m1, m2]: readonly [number, number],
  thickness: number,
  result: number,
): Step {
  return {
    symbol,
    formula: '6000 max(m1, −m2, 0) / t²',
    given: { m1, m2, t: thickness },
    result,
    unit: 'MPa',
    source: THEORY,
    note: m1 >= -m2 ? 'tension on the lower face' : 'tension on the upper face',
  }
}

export function probeSteps(probes: readonly LiftProbe[], thickness: number): Step[] {
  return probes.flatMap(({ at, mx, my, mxy, stress, deflection, averaged }, i) => {
    if (mx === null || my === null || mxy === null || stress === null || deflection === null) return []
    const place = `probe ${i + 1} at (${at[0]}, ${at[1]})`
    const read = (symbol: string, result: number, unit: string): Step => ({
      symbol: `${symbol} probe ${i + 1}`,
      formula: averaged && symbol !== 'w' ? 'mean over the disc it stands in' : 'the element’s own shape',
      given: { x: at[0], y: at[1] },
      result,
      unit,
      source: PLATE,
      by: 'search',
      note: place,
    })
    return [
      read('w', deflection, 'mm'),
      read('mx', mx, 'kN·m/m'),
      read('my', my, 'kN·m/m'),
      read('mxy', mxy, 'kN·m/m'),
      stressStep(`σ probe ${i + 1}`, principalMoments({ mx, my, mxy }), thickness, stress),
    ]
  })
}
