/** Something that conducts and stores heat: thickness mm, W/mK, kJ/m³K. */
export interface Layer {
  readonly thickness: number
  readonly conductivity: number
  readonly heatCapacity: number
}

/** Concrete with what lies under and over it, cut into cells from the bottom up. Hours and kJ, per m² of panel. */
export interface Grid {
  readonly cells: number
  /** Cells of each part from the bottom up: layers under, concrete, layers over. */
  readonly counts: readonly number[]
  /** First concrete cell, and the first beyond the concrete. */
  readonly from: number
  readonly to: number
  /** Thickness of each cell, m. */
  readonly width: Float64Array
  /** Heat that warms a cell by 1 K, kJ/m²K. */
  readonly capacity: Float64Array
  /** Between each cell and the next, kJ/(m² h K). */
  readonly conductance: Float64Array
  /** From the middle of a cell to its own face, kJ/(m² h K). */
  readonly half: Float64Array
}

/** W/m²K to kJ/(m² h K). */
export const PER_HOUR = 3.6

/** Share of the spacing that is a cosine's, the rest even: cells at the faces come out about a seventh of those in the middle. */
const GRADED = 0.85

export interface GridInput {
  readonly concrete: Layer
  /** Cells through the concrete, an odd number: mid-depth is then the middle of a cell. */
  readonly cells: number
  /** Outward from the concrete. */
  readonly under: readonly Layer[]
  readonly over: readonly Layer[]
}

/** Cells through everything, fine where the concrete ends. */
export function gridOf({ concrete, cells, under, over }: GridInput): Grid {
  const parts: { readonly layer: Layer; readonly widths: readonly number[] }[] = [
    ...[...under].reverse().map((layer) => evenly(layer, concrete, cells)),
    { layer: concrete, widths: graded(concrete.thickness / 1000, cells) },
    ...over.map((layer) => evenly(layer, concrete, cells)),
  ]
  const all = parts.flatMap(({ layer, widths }) => widths.map((width) => ({ layer, width })))
  const from = parts.slice(0, under.length).reduce((sum, { widths }) => sum + widths.length, 0)
  const half = Float64Array.from(all, ({ layer, width }) => (PER_HOUR * 2 * layer.conductivity) / width)
  return {
    cells: all.length,
    counts: parts.map(({ widths }) => widths.length),
    from,
    to: from + cells,
    width: Float64Array.from(all, ({ width }) => width),
    capacity: Float64Array.from(all, ({ layer, width }) => layer.heatCapacity * width),
    conductance: Float64Array.from(all.slice(1), (_, index) => {
      const [a, b] = [half[index] ?? 0, half[index + 1] ?? 0]
      return (a * b) / (a + b)
    }),
    half,
  }
}

function graded(depth: number, cells: number): number[] {
  const edge = (at: number): number =>
    depth * (((1 - GRADED) * at) / cells + (GRADED * (1 - Math.cos((Math.PI * at) / cells))) / 2)
  return Array.from({ length: cells }, (_, cell) => edge(cell + 1) - edge(cell))
}

/** As many cells as heat takes time to cross the layer, held against the concrete; two at least, so that a layer has a slope. */
function evenly(
  layer: Layer,
  concrete: Layer,
  cells: number,
): { readonly layer: Layer; readonly widths: readonly number[] } {
  const crossing = (of: Layer): number => of.thickness * Math.sqrt(of.heatCapacity / of.conductivity)
  const count = Math.min(
    Math.max(Math.ceil((1.5 * cells * crossing(layer)) / crossing(concrete)), 2),
    2 * cells,
  )
  const width = layer.thickness / 1000 / count
  return { layer, widths: Array.from({ length: count }, () => width) }
}
