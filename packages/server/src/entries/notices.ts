/** Tells those who listen that the log has grown. */
export class Notices {
  private readonly listeners = new Set<(size: number) => void>()
  private readonly closers = new Set<() => void>()

  /** `close` is called when the server stops. Returns what ends the listening. */
  listen(grown: (size: number) => void, close: () => void): () => void {
    this.listeners.add(grown)
    this.closers.add(close)
    return () => {
      this.listeners.delete(grown)
      this.closers.delete(close)
    }
  }

  tell(size: number): void {
    for (const listener of this.listeners) listener(size)
  }

  get count(): number {
    return this.listeners.size
  }

  closeAll(): void {
    for (const close of [...this.closers]) close()
  }
}
