/** Where text stops being JSON, as a person counts lines and columns from 1. */
export interface JsonFault {
  readonly line: number
  readonly column: number
  readonly found: string
  readonly expected: string
}

/**
 * The first place where a text is not JSON, or null where it is. Browsers word and place this each in their own way, so it is
 * found here.
 */
export function jsonFault(text: string): JsonFault | null {
  const reader = new JsonReader(text.replace(/^\uFEFF/, ''))
  return reader.fault()
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y
const SPACE = /[ \t\n\r]*/y
const MOST_DEPTH = 500

class JsonReader {
  readonly #text: string
  #at = 0
  #expected: string | null = null

  constructor(text: string) {
    this.#text = text
  }

  fault(): JsonFault | null {
    const whole = this.#value(0) && this.#end()
    return whole ? null : this.#place()
  }

  #end(): boolean {
    this.#space()
    return this.#at === this.#text.length || this.#wants('the end of the file')
  }

  #value(depth: number): boolean {
    this.#space()
    if (depth > MOST_DEPTH) return this.#wants('fewer levels')
    switch (this.#text[this.#at]) {
      case '{':
        return this.#object(depth)
      case '[':
        return this.#list(depth)
      case '"':
        return this.#string() || this.#wants('text that ends with a quote')
      default:
        return (
          this.#word('true') ||
          this.#word('false') ||
          this.#word('null') ||
          this.#match(NUMBER) ||
          this.#wants('a value')
        )
    }
  }

  #object(depth: number): boolean {
    this.#at += 1
    this.#space()
    if (this.#take('}')) return true
    for (;;) {
      this.#space()
      if (!this.#string()) return this.#wants('a field name in quotes')
      this.#space()
      if (!this.#take(':')) return this.#wants('a colon after the field name')
      if (!this.#value(depth + 1)) return false
      this.#space()
      if (this.#take('}')) return true
      if (!this.#take(',')) return this.#wants('a comma or }')
    }
  }

  #list(depth: number): boolean {
    this.#at += 1
    this.#space()
    if (this.#take(']')) return true
    for (;;) {
      if (!this.#value(depth + 1)) return false
      this.#space()
      if (this.#take(']')) return true
      if (!this.#take(',')) return this.#wants('a comma or ]')
    }
  }

  /** A text in quotes; where it does not end well the place is where it stops being one. */
  #string(): boolean {
    if (!this.#take('"')) return false
    for (;;) {
      const letter = this.#text[this.#at]
      if (letter === undefined || letter < ' ') return false // control characters, line ends among them
      if (letter === '\\') {
        if (!this.#match(ESCAPE)) return this.#wants('an escape such as \\n or \\u00e9')
      } else {
        this.#at += 1
        if (letter === '"') return true
      }
    }
  }

  #take(letter: string): boolean {
    if (this.#text[this.#at] !== letter) return false
    this.#at += 1
    return true
  }

  #word(word: string): boolean {
    if (!this.#text.startsWith(word, this.#at)) return false
    this.#at += word.length
    return true
  }

  #match(pattern: RegExp): boolean {
    pattern.lastIndex = this.#at
    const found = pattern.exec(this.#text)
    if (found === null) return false
    this.#at += found[0].length
    return true
  }

  #space(): void {
    this.#match(SPACE)
  }

  #wants(expected: string): false {
    this.#expected ??= expected
    return false
  }

  #place(): JsonFault {
    const before = this.#text.slice(0, this.#at)
    const line = before.split('\n').length
    const column = this.#at - (before.lastIndexOf('\n') + 1) + 1
    const rest = this.#text.slice(this.#at).split('\n')[0] ?? ''
    const found =
      this.#at >= this.#text.length ? 'the end of the file' : rest.slice(0, 20) || 'the end of the line'
    return { line, column, found, expected: this.#expected ?? 'JSON' }
  }
}
