/** An even beam under an even load, held at `supports` points evenly apart, its ends overhanging. All by parts of its length. */
export interface HungBeam {
  /** Overhang beyond the outer supports over the length. */
  readonly overhang: number
  /** Largest sag over w L⁴ / EI, against the supports, up or down. */
  readonly sag: number
  /** Largest moment over w L². */
  readonly moment: number
  /** Each support's share of the whole load. */
  readonly shares: readonly number[]
}

/** Places looked at in one span. */
const PARTS = 48

/**
 * Sag, moment and reactions of a beam on `supports` ≥ 2 points, by the three-moment equations of equal spans. `overhang` is part of
 * the length, 0 to below a half.
 */
export function hungBeam(supports: number, overhang: number): HungBeam {
  const spans = supports - 1
  const l = (1 - 2 * overhang) / spans
  const moments = supportMoments(supports, overhang, l)
  let sag = 0
  let moment = 0
  const shears: [left: number, right: number][] = []
  for (let i = 0; i < spans; i += 1) {
    const [a, b] = [moments[i] as number, moments[i + 1] as number]
    // Shear at the left end of the span, then at its right.
    const left = l / 2 + (b - a) / l
    shears.push([left, l - left])
    const most = Math.min(l, Math.max(0, left))
    moment = Math.max(moment, Math.abs(a), Math.abs(b), Math.abs(a + left * most - most ** 2 / 2))
    for (let k = 1; k < PARTS; k += 1) sag = Math.max(sag, Math.abs(sagAt((k * l) / PARTS, l, a, b)))
  }
  const slope = l ** 3 / 24 + (l * (moments[0] as number)) / 3 + (l * (moments[1] as number)) / 6
  sag = Math.max(sag, Math.abs(overhang ** 4 / 8 - slope * overhang))
  const shares = moments.map((_, i) => {
    const fromLeft = i === 0 ? overhang : (shears[i - 1] as [number, number])[1]
    const fromRight = i === spans ? overhang : (shears[i] as [number, number])[0]
    return fromLeft + fromRight
  })
  return { overhang, sag, moment, shares }
}

/** Downward, over w / EI. */
function sagAt(x: number, l: number, a: number, b: number): number {
  return (
    (x * (l ** 3 - 2 * l * x ** 2 + x ** 3)) / 24 +
    (a * x * (l - x) * (2 * l - x)) / (6 * l) +
    (b * x * (l - x) * (l + x)) / (6 * l)
  )
}

/** Sagging positive; the outer ones are those of the overhangs. */
function supportMoments(supports: number, overhang: number, l: number): number[] {
  const end = -(overhang ** 2) / 2
  const moments = new Array<number>(supports).fill(end)
  const inner = supports - 2
  if (inner <= 0) return moments
  // Thomas' method on M(i−1) + 4 M(i) + M(i+1) = −l² / 2.
  const c: number[] = []
  const d: number[] = []
  for (let i = 0; i < inner; i += 1) {
    const right = -(l ** 2) / 2 - (i === 0 ? end : 0) - (i === inner - 1 ? end : 0)
    const below = 4 - (c[i - 1] ?? 0)
    c.push(1 / below)
    d.push((right - (d[i - 1] ?? 0)) / below)
  }
  for (let i = inner - 1; i >= 0; i -= 1)
    moments[i + 1] = (d[i] as number) - (c[i] as number) * (i === inner - 1 ? 0 : (moments[i + 2] as number))
  return moments
}

const GOLDEN = (Math.sqrt(5) - 1) / 2

/** The beam with the overhang at which it sags least. */
export function leastSag(supports: number): HungBeam {
  let [low, high] = [0, 0.45]
  for (let round = 0; round < 40; round += 1) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
    if (hungBeam(supports, a).sag < hungBeam(supports, b).sag) high = b
    else low = a
  }
  return hungBeam(supports, (low + high) / 2)
}
