/** One act at a time, in the order they were asked for; a failing one does not stop the next. */
export class Turns {
  private last: Promise<unknown> = Promise.resolve()

  take<T>(act: () => Promise<T>): Promise<T> {
    const turn = this.last.then(act, act)
    this.last = turn.catch(() => undefined)
    return turn
  }

  /** Ends when every act asked for so far has ended. */
  async idle(): Promise<void> {
    await this.last
  }
}
