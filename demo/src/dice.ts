/** Numbers that look thrown and are the same at every run: mulberry32. */
export class Dice {
  private state: number

  constructor(seed: number) {
    this.state = seed >>> 0
  }

  /** From 0 up to, not with, 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let t = this.state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next()
  }
}

/** A seed from words, so that a panel's numbers do not hang on the order in which panels are told. */
export function seedOf(text: string): number {
  let hash = 2_166_136_261
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16_777_619)
  return hash >>> 0
}
