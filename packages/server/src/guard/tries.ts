export interface TriesOptions {
  /** Tries before the first wait. */
  readonly free: number
  /** First wait, ms; doubles with each further try. */
  readonly first: number
  /** Longest wait, ms. */
  readonly most: number
  /** Tries older than this are forgotten, ms. */
  readonly forget: number
  /** Names kept at once; the oldest goes first, so that a flood of invented names fills no memory. */
  readonly kept?: number
}

interface Tried {
  count: number
  last: number
  until: number
}

/**
 * Counts tries by name and makes each further one wait longer. A try is counted before its PIN is checked, so that many
 * at once gain nothing, and taken back when the PIN was right. Kept in memory: each process counts for itself.
 */
export class Tries {
  private readonly tried = new Map<string, Tried>()

  constructor(
    private readonly clock: () => number,
    private readonly options: TriesOptions,
  ) {}

  /** Milliseconds to wait before `name` may try again; 0 when it may now. */
  wait(name: string): number {
    const known = this.known(name)
    return known === undefined ? 0 : Math.max(0, known.until - this.clock())
  }

  count(name: string): void {
    const now = this.clock()
    const count = (this.known(name)?.count ?? 0) + 1
    const over = count - this.options.free
    const wait = over < 0 ? 0 : Math.min(this.options.most, this.options.first * 2 ** over)
    this.tried.delete(name)
    this.tried.set(name, { count, last: now, until: now + wait })
    if (this.tried.size > (this.options.kept ?? 10_000)) {
      const oldest = this.tried.keys().next().value
      if (oldest !== undefined) this.tried.delete(oldest)
    }
  }

  /** Takes one counted try back: it was right. */
  takeBack(name: string): void {
    const known = this.known(name)
    if (known === undefined) return
    known.count -= 1
    known.until = this.clock()
    if (known.count <= 0) this.tried.delete(name)
  }

  /** Forgets every try of a name. */
  clear(name: string): void {
    this.tried.delete(name)
  }

  private known(name: string): Tried | undefined {
    const known = this.tried.get(name)
    if (known === undefined) return undefined
    if (this.clock() - Math.max(known.last, known.until) > this.options.forget) {
      this.tried.delete(name)
      return undefined
    }
    return known
  }
}
