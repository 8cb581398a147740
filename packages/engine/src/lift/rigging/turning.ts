import { STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'

export interface TurningPlace {
  /** Weight with the stage's factor, kN. */
  readonly load: number
  /** mm */
  readonly thickness: number
  /** Centre of gravity from the edge that it turns about, along the panel, mm. */
  readonly centre: number
  /** Row of picks from that edge, mm. */
  readonly pick: number
  /** Whether it is picked on its upper face, or in its middle plane by edge inserts. */
  readonly on: 'face' | 'edge'
}

export interface TurningForce {
  /** Panel from level, degrees. */
  readonly angle: number
  /** Force on the hook, straight up, kN. */
  readonly force: number
  /** Its part square to the panel and along it, kN. */
  readonly normal: number
  readonly along: number
  /** True where the edge is off the ground: the hook carries all. */
  readonly free: boolean
}

const RADIANS = Math.PI / 180

/** Level arms from the lower corner that it turns about, mm: of the centre of gravity and of the picks. */
export function turningArms(
  { thickness, centre, pick, on }: Omit<TurningPlace, 'load'>,
  angle: number,
): { readonly weight: number; readonly hook: number } {
  const [cos, sin] = angle === 90 ? [0, 1] : [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)]
  return {
    weight: centre * cos - (thickness / 2) * sin,
    hook: pick * cos - (on === 'face' ? thickness : thickness / 2) * sin,
  }
}

function gapsOf({ load, thickness, centre, pick }: TurningPlace): string[] {
  return Object.entries({
    load,
    thickness,
    'centre of gravity from the edge': centre,
    'picks from the edge': pick,
  }).flatMap(([name, value]) => (value > 0 && Number.isFinite(value) ? [] : [`${name}: a number above 0`]))
}

/**
 * Force on a hook that turns a panel up about its lower edge, the edge on the ground and the line plumb:
 * `W (a cos θ − t/2 sin θ) / (s cos θ − v sin θ)`, v the picks above the lower face. Where that is more than the weight, or the picks come over the
 * edge, the edge leaves the ground and the hook carries all.
 *
 * Unknown past the angle at which the centre of gravity comes over the edge: the panel then wants to fall through and must be held back; and for
 * values not above 0.
 *
 * Source: statics.
 * Example: 6 m high, picked on its face at 4.2426 m, 150 mm thick, level: 0.7071 W; at 45°: 0.7147 W.
 */
export function turningForce(input: TurningPlace & { readonly angle: number }): Worked<TurningForce> {
  const { load, thickness, centre, pick, on, angle } = input
  const gaps = gapsOf(input)
  if (!(angle >= 0 && angle <= 90)) gaps.push('angle of the panel from level: 0 to 90°')
  if (gaps.length > 0) return unknown(...gaps)
  const { weight, hook } = turningArms(input, angle)
  const free = !(hook > 0) || weight >= hook
  if (!free && !(weight >= 0)) {
    return unknown(
      `turning at ${angle}°: the centre of gravity is past the edge, the panel wants to fall through: hold it back`,
    )
  }
  const force = free ? load : (load * weight) / hook
  const above = on === 'face' ? thickness : thickness / 2
  const working: Step[] = [
    free
      ? {
          symbol: 'F',
          formula: '1 W',
          given: { W: load },
          result: force,
          unit: 'kN',
          source: STATICS,
          note: `at ${angle}° the edge is off the ground`,
        }
      : {
          symbol: 'F',
          formula: 'W (a cos(θ°) − t / 2 sin(θ°)) / (s cos(θ°) − v sin(θ°))',
          given: { W: load, a: centre, t: thickness, s: pick, v: above, θ: angle },
          result: force,
          unit: 'kN',
          source: STATICS,
          note: 'about the lower corner on the ground, the line plumb',
        },
  ]
  const [cos, sin] = angle === 90 ? [0, 1] : [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)]
  if (angle < 90) {
    working.push(
      {
        symbol: 'F normal',
        formula: 'F cos(θ°)',
        given: { F: force, θ: angle },
        result: force * cos,
        unit: 'kN',
        source: STATICS,
        note: 'square to the panel',
      },
      {
        symbol: 'F along',
        formula: 'F sin(θ°)',
        given: { F: force, θ: angle },
        result: force * sin,
        unit: 'kN',
        source: STATICS,
        note: 'along the panel',
      },
    )
  }
  return known({ angle, force, normal: force * cos, along: force * sin, free }, working)
}

export interface Turning {
  /** Every 15° from level, the angle at which the edge leaves the ground, and upright; those that are past the balance left out. */
  readonly cases: readonly TurningForce[]
  /** The greatest force, normal and along part over all angles. */
  readonly worst: {
    readonly force: TurningForce
    readonly normal: TurningForce
    readonly along: TurningForce
  }
  /** Angle at which the hook carries all, degrees; null where the panel comes to its balance first. */
  readonly leaves: number | null
  /** Angle at which the centre of gravity stands over the edge, degrees. */
  readonly balance: number
}

/** Angles that are looked at for the worst, degrees apart. */
const STEP = 0.25

/**
 * A panel turned from level to upright about its lower edge: the force at angles between and its worst.
 *
 * A face insert's shear rises to all that its row carries. A panel picked at its upper edge comes to its balance before that: from there on it must
 * be held back. Upright, off the ground, the row carries all.
 *
 * Source: statics. Example: 6 m, 150 mm: the centre of gravity stands over the edge at 88.57°.
 */
export function turning(input: TurningPlace): Worked<Turning> {
  const gaps = gapsOf(input)
  if (gaps.length > 0) return unknown(...gaps)
  const { load, thickness, centre } = input
  const balance = Math.atan(centre / (thickness / 2)) / RADIANS
  const leaves = leavesAt(input)
  const hung: TurningForce = { angle: 90, force: load, normal: 0, along: load, free: true }
  const at = (angle: number): TurningForce[] => {
    if (angle >= 90) return [hung]
    const found = turningForce({ ...input, angle })
    return found.known ? [found.value] : []
  }
  const angles = [...new Set([0, 15, 30, 45, 60, 75, ...(leaves === null ? [] : [leaves]), 90])].sort(
    (a, b) => a - b,
  )
  const cases = angles.flatMap(at)
  const all = [...cases, ...Array.from({ length: Math.round(90 / STEP) }, (_, i) => i * STEP).flatMap(at)]
  const most = (of: 'force' | 'normal' | 'along'): TurningForce =>
    all.reduce((best, one) => (one[of] > best[of] * (1 + 1e-12) ? one : best))
  const worst = { force: most('force'), normal: most('normal'), along: most('along') }
  const steps = Object.entries(worst).map(
    ([of, found]): Step => ({
      symbol: `F worst ${of}`,
      formula: `greatest over 0 to 90°, ${STEP}° apart`,
      given: { θ: found.angle },
      result: found[of as 'force'],
      unit: 'kN',
      source: STATICS,
      by: 'search',
      note: found.free ? 'off the ground, the hook carries all' : 'the edge on the ground',
    }),
  )
  return known({ cases, worst, leaves, balance }, [
    {
      symbol: 'θ balance',
      formula: 'atan(2 a / t) · 180 / π',
      given: { a: centre, t: thickness },
      result: balance,
      unit: '°',
      source: STATICS,
      note: 'the centre of gravity stands over the edge: hold the panel with hook or prop before',
    },
    ...steps,
  ])
}

/** Where the arm of the hook comes down to that of the weight, degrees; null where the panel is past its balance before. */
function leavesAt(input: TurningPlace): number | null {
  const { pick, centre, thickness, on } = input
  const above = on === 'face' ? thickness : thickness / 2
  // (s − a) cos θ = (v − t / 2) sin θ
  if (pick <= centre) return 0
  if (above <= thickness / 2) return null
  const angle = Math.atan((pick - centre) / (above - thickness / 2)) / RADIANS
  return turningArms(input, angle).weight >= 0 ? angle : null
}

export interface TwoHooksInput {
  readonly load: number
  readonly thickness: number
  /** From the lower edge along the panel, mm: centre of gravity, head edge pick in the middle plane, foot pick on the face. */
  readonly centre: number
  readonly head: number
  readonly foot: number
  readonly angle: number
}

/**
 * Two hooks, both lines plumb: the load of the head line, picked at an edge in the middle plane, and of the foot line, picked on the face, kN.
 *
 * Unknown where a line would have to push, and for impossible sizes.
 *
 * Source: statics.
 * Example: 6 m high, foot at 1.2 m, 150 mm thick: head 0.3750 W level, 0.3806 W at 30°, W upright.
 */
export function twoHooks(input: TwoHooksInput): Worked<{ readonly head: number; readonly foot: number }> {
  const { load, thickness, centre, head, foot, angle } = input
  const gaps = gapsOf({ load, thickness, centre, pick: head, on: 'edge' })
  if (!(foot >= 0) || !Number.isFinite(foot)) gaps.push('foot picks from the edge: a number not below 0')
  if (!(angle >= 0 && angle <= 90)) gaps.push('angle of the panel from level: 0 to 90°')
  if (gaps.length > 0) return unknown(...gaps)
  const [cos, sin] = angle === 90 ? [0, 1] : [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)]
  const low = foot * cos - (thickness / 2) * sin
  const span = head * cos - low
  const arm = centre * cos - low
  if (!(span > 0)) return unknown('two hooks: the head must stand beyond the foot')
  const share = arm / span
  if (share < -1e-9 || share > 1 + 1e-9)
    return unknown(
      `two hooks at ${angle}°: a line would have to push, ${(share * load).toFixed(3)} kN at the head`,
    )
  const up = load * share
  const formula =
    angle === 90
      ? 'W (t / 2) / (t / 2)'
      : 'W (a cos(θ°) − f cos(θ°) + t / 2 sin(θ°)) / (s cos(θ°) − f cos(θ°) + t / 2 sin(θ°))'
  return known({ head: up, foot: load - up }, [
    {
      symbol: 'R head',
      formula,
      given: { W: load, a: centre, f: foot, t: thickness, s: head, θ: angle },
      result: up,
      unit: 'kN',
      source: STATICS,
      note: 'both lines plumb',
    },
    {
      symbol: 'R foot',
      formula: 'W − Rh',
      given: { W: load, Rh: up },
      result: load - up,
      unit: 'kN',
      source: STATICS,
    },
  ])
}
