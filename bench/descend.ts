export interface Sloped {
  readonly value: number
  readonly slope: readonly number[]
}

/** Goes downhill by the BFGS rule until a round gains less than `least`, or for so many rounds. */
export function descend(
  at: (x: readonly number[]) => Sloped,
  start: readonly number[],
  { rounds, least }: { readonly rounds: number; readonly least: number },
): number[] {
  let x = [...start]
  let here = at(x)
  let inverse: readonly (readonly number[])[] = x.map((_, i) => x.map((__, j) => (i === j ? 1 : 0)))
  for (let round = 0; round < rounds; round += 1) {
    const straight = inverse.map((row) => -dot(row, here.slope))
    const longest = Math.max(...straight.map(Math.abs))
    const way = longest > 1 ? straight.map((each) => each / longest) : straight
    const next = shortened(at, x, here, way)
    if (next === null) return x
    const gained = here.value - next.found.value
    inverse = updated(
      inverse,
      next.x.map((each, i) => each - (x[i] ?? 0)),
      next.found.slope.map((each, i) => each - (here.slope[i] ?? 0)),
    )
    ;[x, here] = [next.x, next.found]
    if (gained < least) return x
  }
  return x
}

/** Halves the step until it goes down as the slope promises. Null where none does. */
function shortened(
  at: (x: readonly number[]) => Sloped,
  x: readonly number[],
  here: Sloped,
  way: readonly number[],
): { x: number[]; found: Sloped } | null {
  const fall = dot(way, here.slope)
  for (let step = 1; step > 1e-4; step /= 2) {
    const next = x.map((each, i) => each + step * (way[i] ?? 0))
    const found = at(next)
    if (found.value < here.value + 1e-4 * step * fall) return { x: next, found }
  }
  return null
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0)
}

function updated(
  inverse: readonly (readonly number[])[],
  moved: readonly number[],
  turned: readonly number[],
): readonly (readonly number[])[] {
  const curve = dot(moved, turned)
  if (!(curve > 1e-12)) return inverse
  const drawn = inverse.map((row) => dot(row, turned))
  const share = (1 + dot(turned, drawn) / curve) / curve
  return inverse.map((row, i) =>
    row.map((each, j) => {
      const [mi, mj] = [moved[i] ?? 0, moved[j] ?? 0]
      return each + share * mi * mj - ((drawn[i] ?? 0) * mj + (drawn[j] ?? 0) * mi) / curve
    }),
  )
}
