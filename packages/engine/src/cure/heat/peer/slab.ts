/** A plate of concrete in closed form: thickness mm, W/mK, kJ/m³K. */
export interface Slab {
  readonly thickness: number
  readonly conductivity: number
  readonly heatCapacity: number
}

const TERMS = 200

/**
 * Share of the first difference to the air that is left after some hours, at a distance from mid-depth (0 middle, 1 face): plate
 * with the same film, W/m²K, on both sides; an infinite film holds the faces.
 *
 * Source: Carslaw and Jaeger, Conduction of Heat in Solids, 1959, section 3.11 (from memory).
 */
export function slabLeft(slab: Slab, film: number, hours: number, at: number): number {
  const half = slab.thickness / 2000
  const fourier = (slab.conductivity * hours * 3.6) / slab.heatCapacity / half ** 2
  const biot = (film * half) / slab.conductivity
  let sum = 0
  for (let n = 0; n < TERMS; n += 1) {
    const root = biotRoot(biot, n)
    const share = (4 * Math.sin(root)) / (2 * root + Math.sin(2 * root))
    sum += share * Math.cos(root * at) * Math.exp(-(root ** 2) * fourier)
  }
  return sum
}

/** Root of ζ tan ζ = Bi in the n-th branch, by halving. */
export function biotRoot(biot: number, n: number): number {
  let [low, high] = [n * Math.PI, (n + 0.5) * Math.PI]
  if (!Number.isFinite(biot)) return high
  for (let round = 0; round < 200; round += 1) {
    const middle = (low + high) / 2
    // ζ sin ζ − Bi cos ζ, in the sign of the branch: no pole.
    const over = (middle * Math.sin(middle) - biot * Math.cos(middle)) * (n % 2 === 0 ? 1 : -1)
    if (over > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** Complementary error function to 1e-12: power series below 2, continued fraction above. */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x)
  if (x < 2) {
    let [term, sum] = [x, x]
    for (let n = 1; n < 60; n += 1) {
      term *= (-x * x) / n
      sum += term / (2 * n + 1)
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * sum
  }
  let fraction = 0
  for (let n = 80; n > 0; n -= 1) fraction = n / 2 / (x + fraction)
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + fraction)
}

/**
 * Share of the first difference that the face's side has brought into a half space at a depth, mm, after some hours: the face held,
 * or a film, W/m²K, to the air. Source: Carslaw and Jaeger 1959, sections 2.5 and 2.7 (from memory).
 */
export function halfSpaceReached(
  slab: Slab,
  depth: number,
  hours: number,
  film = Number.POSITIVE_INFINITY,
): number {
  const { conductivity, heatCapacity } = slab
  const spread = Math.sqrt((conductivity * hours * 3.6) / heatCapacity)
  const x = depth / 1000 / (2 * spread)
  if (!Number.isFinite(film)) return erfc(x)
  const b = (film * spread) / conductivity
  return erfc(x) - Math.exp(2 * x * b + b * b) * erfc(x + b)
}
