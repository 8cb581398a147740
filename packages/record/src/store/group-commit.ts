interface Waiting<T, R> {
  readonly item: T
  readonly resolve: (result: R) => void
  readonly reject: (error: unknown) => void
}

/**
 * One writer for many callers: what comes in while a commit runs goes together into the next one. Each caller is answered after the
 * commit that holds its item.
 */
export class GroupCommit<T, R> {
  readonly #commit: (items: readonly T[]) => Promise<readonly R[]>
  readonly #most: number
  #waiting: Waiting<T, R>[] = []
  #running: Promise<void> | null = null

  /** `commit` answers one result an item, in their order; at most `most` items at once. */
  constructor(commit: (items: readonly T[]) => Promise<readonly R[]>, most: number) {
    this.#commit = commit
    this.#most = most
  }

  submit(item: T): Promise<R> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ item, resolve, reject })
      this.#running ??= this.#run()
    })
  }

  /** Resolves when nothing is left to commit. */
  async idle(): Promise<void> {
    while (this.#running !== null) await this.#running
  }

  async #run(): Promise<void> {
    // Callers of the same turn join the first commit.
    await new Promise<void>((resolve) => setImmediate(resolve))
    while (this.#waiting.length > 0) {
      const batch = this.#waiting.splice(0, this.#most)
      try {
        const results = await this.#commit(batch.map(({ item }) => item))
        for (const [index, { resolve }] of batch.entries()) resolve(results[index] as R)
      } catch (error) {
        for (const { reject } of batch) reject(error)
      }
    }
    this.#running = null
  }
}
