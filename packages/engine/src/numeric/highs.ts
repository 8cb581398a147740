import type { Highs, InitOptions, ModelData } from 'highs'

let loading: Promise<Highs> | undefined

/**
 * The solver, loaded at the first call and kept. A browser passes where its wasm file lies (`locateFile`) at that first call.
 */
export function loadHighs(options: InitOptions = {}): Promise<Highs> {
  loading ??= import('highs').then((highs) => highs.default(options))
  return loading
}

/** A column of a linear program: its cost, bounds and the rows that it stands in. */
export interface Column {
  readonly cost: number
  readonly upper: number
  readonly rows: readonly number[]
  readonly values: readonly number[]
}

export interface Row {
  readonly lower: number
  readonly upper: number
}

/** Rows and columns in the form that the solver takes; every column from 0 up to its upper bound. */
export function modelData(rows: readonly Row[], columns: readonly Column[], integer: boolean): ModelData {
  const starts = [0]
  const indices: number[] = []
  const values: number[] = []
  for (const column of columns) {
    indices.push(...column.rows)
    values.push(...column.values)
    starts.push(indices.length)
  }
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: columns.map((column) => column.cost),
    colLower: columns.map(() => 0),
    colUpper: columns.map((column) => column.upper),
    rowLower: rows.map((row) => row.lower),
    rowUpper: rows.map((row) => row.upper),
    matrix: { format: 'csc', numRows: rows.length, numCols: columns.length, starts, indices, values },
    ...(integer ? { integrality: columns.map(() => 1 as const) } : {}),
  }
}
