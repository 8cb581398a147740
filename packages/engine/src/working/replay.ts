import type { Step } from './worked.ts'

/**
 * Puts a step's own numbers in its own formula, so that tests can hold the printed result against it.
 *
 * Reads `+ − - · × * / ^ ( ) √`, superscripts (`d²`, `10⁹`, `x⁻¹`), degrees (`cos(β°)`), implied products (`π d² / 4`),
 * `min max sin cos tan asin acos atan ln log10 exp abs ceil floor round sqrt`, and the names in `given`, longest first.
 * Returns null for steps read from a table or found by a search. @throws Error where the formula cannot be read.
 */
export function replay(step: Step): number | null {
  if ((step.by ?? 'formula') !== 'formula') return null
  const reader = new Reader(step.formula, step.given)
  const value = reader.sum()
  reader.end()
  return value
}

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const CONSTANTS: Readonly<Record<string, number>> = { π: Math.PI, e: Math.E }
const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = {
  min: Math.min,
  max: Math.max,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  ln: Math.log,
  log10: Math.log10,
  exp: Math.exp,
  abs: Math.abs,
  ceil: Math.ceil,
  floor: Math.floor,
  round: Math.round,
  sqrt: Math.sqrt,
}

class Reader {
  private at = 0
  private readonly names: readonly string[]

  constructor(
    private readonly text: string,
    private readonly given: Readonly<Record<string, number | string>>,
  ) {
    this.names = Object.keys(given).sort((a, b) => b.length - a.length)
  }

  end(): void {
    this.skip()
    if (this.at < this.text.length) this.fail('the end')
  }

  sum(): number {
    let value = this.product()
    for (;;) {
      if (this.take('+')) value += this.product()
      else if (this.take('−') || this.take('-')) value -= this.product()
      else return value
    }
  }

  private product(): number {
    let value = this.signed()
    for (;;) {
      if (this.take('·') || this.take('×') || this.take('*')) value *= this.signed()
      else if (this.take('/')) value /= this.signed()
      else if (this.startsOperand()) value *= this.power()
      else return value
    }
  }

  private signed(): number {
    if (this.take('−') || this.take('-')) return -this.signed()
    return this.power()
  }

  private power(): number {
    let base = this.take('√') ? Math.sqrt(this.power()) : this.operand()
    if (this.text[this.at] === '°') {
      this.at += 1
      base *= Math.PI / 180
    }
    const raised = this.superscript()
    if (raised !== null) base = base ** raised
    if (this.take('^')) base = base ** this.signed()
    return base
  }

  private superscript(): number | null {
    let digits = ''
    const negative = this.text[this.at] === '⁻'
    let next = this.at + (negative ? 1 : 0)
    while (next < this.text.length && SUPERSCRIPTS.includes(this.text[next] ?? '')) {
      digits += SUPERSCRIPTS.indexOf(this.text[next] ?? '')
      next += 1
    }
    if (digits === '') return null
    this.at = next
    return Number(negative ? `-${digits}` : digits)
  }

  private operand(): number {
    this.skip()
    if (this.take('(')) return this.closed(this.sum())
    const name = this.names.find((candidate) => this.text.startsWith(candidate, this.at))
    if (name !== undefined && !this.startsFunction()) {
      this.at += name.length
      const value = this.given[name]
      if (typeof value !== 'number') return this.fail(`a number for ${name}`)
      return value
    }
    const number = /^\d+(\.\d+)?(e[+-]?\d+)?/.exec(this.text.slice(this.at))
    if (number) {
      this.at += number[0].length
      return Number(number[0])
    }
    const word = /^[a-z]+[0-9]*(?=\()/.exec(this.text.slice(this.at))?.[0]
    const fn = word === undefined ? undefined : FUNCTIONS[word]
    if (word !== undefined && fn !== undefined) {
      this.at += word.length + 1
      const values = [this.sum()]
      while (this.take(',')) values.push(this.sum())
      return this.closed(fn(...values))
    }
    const constant = CONSTANTS[this.text[this.at] ?? '']
    if (constant !== undefined) {
      this.at += 1
      return constant
    }
    return this.fail('a number, a given name or a function')
  }

  private startsFunction(): boolean {
    const word = /^[a-z]+[0-9]*(?=\()/.exec(this.text.slice(this.at))?.[0]
    return word !== undefined && word in FUNCTIONS && !(word in this.given)
  }

  private startsOperand(): boolean {
    this.skip()
    const next = this.text[this.at]
    return next !== undefined && !'+−-·×*/^),°'.includes(next)
  }

  private closed(value: number): number {
    if (!this.take(')')) this.fail(')')
    return value
  }

  private take(token: string): boolean {
    this.skip()
    if (!this.text.startsWith(token, this.at)) return false
    this.at += token.length
    return true
  }

  private skip(): void {
    while (this.text[this.at] === ' ') this.at += 1
  }

  private fail(expected: string): never {
    throw new Error(`formula "${this.text}" at ${this.at}: expected ${expected}`)
  }
}
