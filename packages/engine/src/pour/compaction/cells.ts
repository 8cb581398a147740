/** Square cells over a rectangle, each with a list; places outside count to the nearest cell. */
export class Cells<T> {
  private readonly lists: (T[] | undefined)[] = []
  readonly columns: number
  readonly rows: number
  readonly size: number

  /** `size` is the least side of a cell, mm; longer where the rectangle would hold more than a million. */
  constructor(
    private readonly left: number,
    private readonly bottom: number,
    width: number,
    height: number,
    size: number,
  ) {
    this.size = Math.max(size, Math.sqrt((width * height) / 1e6), Math.max(width, height) / 1e6)
    this.columns = Math.floor(width / this.size) + 1
    this.rows = Math.floor(height / this.size) + 1
  }

  column(x: number): number {
    return Math.max(0, Math.min(this.columns - 1, Math.floor((x - this.left) / this.size)))
  }

  row(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.bottom) / this.size)))
  }

  /** Middle of a cell. */
  middle(column: number, row: number): readonly [x: number, y: number] {
    return [this.left + (column + 0.5) * this.size, this.bottom + (row + 0.5) * this.size]
  }

  list(column: number, row: number): T[] | undefined {
    return this.lists[row * this.columns + column]
  }

  push(column: number, row: number, value: T): void {
    const at = row * this.columns + column
    const list = this.lists[at]
    if (list === undefined) this.lists[at] = [value]
    else list.push(value)
  }
}
