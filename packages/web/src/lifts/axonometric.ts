import type { StressField } from '@castwright/engine/lift'

export interface AxonometricInput {
  readonly field: Pick<StressField, 'x' | 'y' | 'deflection' | 'triangles' | 'stress'>
  /** Turn of the view about the vertical, degrees. */
  readonly turn: number
  /** Times that the deflection is drawn larger. */
  readonly times: number
  /** px */
  readonly width: number
  readonly height: number
}

export interface AxonometricFace {
  readonly path: string
  /** 0 to 1 of the greatest sag. */
  readonly share: number
}

/** How flat the view looks on the panel: sine of 30°. */
const LOOK = 0.5

/** Triangles of a bent panel seen from above at a slant, the farthest first; sag drawn downward. */
export function axonometric({ field, turn, times, width, height }: AxonometricInput): AxonometricFace[] {
  const { x, y, deflection, triangles } = field
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
  const seen = Array.from(x, (px, i): [number, number, number] => {
    const [u, v] = [px * c - (y[i] ?? 0) * s, px * s + (y[i] ?? 0) * c]
    return [u, -v * LOOK + (deflection[i] ?? 0) * times, v]
  })
  const [left, right] = extent(seen.map(([u]) => u))
  const [top, bottom] = extent(seen.map(([, v]) => v))
  const scale = Math.min((width - 8) / Math.max(right - left, 1), (height - 8) / Math.max(bottom - top, 1))
  const [least, most] = extent([...deflection])
  const faces: { readonly depth: number; readonly face: AxonometricFace }[] = []
  for (let e = 0; e + 2 < triangles.length; e += 3) {
    const nodes = [triangles[e] ?? 0, triangles[e + 1] ?? 0, triangles[e + 2] ?? 0]
    const corners = nodes.map((i): [number, number, number] => seen[i] ?? [0, 0, 0])
    const sag = nodes.reduce((sum, i) => sum + (deflection[i] ?? 0), 0) / 3
    const path = corners
      .map(
        ([u, v], i) =>
          `${i === 0 ? 'M' : 'L'}${(4 + (u - left) * scale).toFixed(1)} ${(4 + (v - top) * scale).toFixed(1)}`,
      )
      .join('')
    const share = most > least ? (sag - least) / (most - least) : 0
    faces.push({
      depth: corners.reduce((sum, [, , depth]) => sum + depth, 0),
      face: { path: `${path}Z`, share },
    })
  }
  return faces.sort((a, b) => b.depth - a.depth).map(({ face }) => face)
}

function extent(values: readonly number[]): [number, number] {
  return values.reduce<[number, number]>(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  )
}

/** A round number of times that makes the greatest deflection about a tenth of the panel's longer side. */
export function exaggeration({ x, y, deflection }: AxonometricInput['field']): number {
  const [left, right] = extent([...x])
  const [bottom, top] = extent([...y])
  const most = Math.max(...Array.from(deflection, Math.abs))
  if (!(most > 0)) return 1
  const wanted = Math.max(right - left, top - bottom) / 10 / most
  const power = 10 ** Math.floor(Math.log10(wanted))
  return Math.max(1, ([5, 2, 1].find((step) => step * power <= wanted * (1 + 1e-6)) ?? 1) * power)
}
