import { foundText, InputError, pathText } from '@castwright/engine/working'

/**
 * A JSON value as RFC 8785 text: no spaces, keys in order of their UTF-16 units, numbers and strings as ECMAScript writes them.
 *
 * @throws InputError with the path of what JSON cannot hold: NaN, Infinity, a lone surrogate, undefined, a function, a date.
 */
export function canonicalText(value: unknown): string {
  return write(value, [])
}

/** The UTF-8 bytes of `canonicalText`: what is hashed and signed. */
export function canonicalBytes(value: unknown): Uint8Array {
  return new TextEncoder().encode(canonicalText(value))
}

function write(value: unknown, path: PropertyKey[]): string {
  switch (typeof value) {
    case 'string':
      return writeString(value, path)
    case 'number':
      if (!Number.isFinite(value)) throw refused(value, 'a finite number', path)
      return JSON.stringify(value)
    case 'boolean':
      return value ? 'true' : 'false'
    case 'object':
      if (value === null) return 'null'
      return Array.isArray(value) ? writeArray(value, path) : writeObject(value, path)
    default:
      throw refused(value, 'a JSON value', path)
  }
}

function writeArray(items: readonly unknown[], path: PropertyKey[]): string {
  let text = '['
  for (let index = 0; index < items.length; index++) {
    path.push(index)
    text += (index === 0 ? '' : ',') + write(items[index], path)
    path.pop()
  }
  return `${text}]`
}

function writeObject(object: object, path: PropertyKey[]): string {
  const prototype = Object.getPrototypeOf(object)
  if (prototype !== null && prototype !== Object.prototype) throw refused(object, 'a plain object', path)
  let text = '{'
  // The default order of sort() is that of UTF-16 units, which is what RFC 8785 section 3.2.3 asks for.
  for (const key of Object.keys(object).sort()) {
    path.push(key)
    text += `${text === '{' ? '' : ','}${writeString(key, path)}:${write((object as Record<string, unknown>)[key], path)}`
    path.pop()
  }
  return `${text}}`
}

function writeString(value: string, path: readonly PropertyKey[]): string {
  if (/[\ud800-\udfff]/.test(value) && /\p{Surrogate}/u.test(value)) {
    throw refused(value, 'text without lone surrogates', path)
  }
  return JSON.stringify(value)
}

function refused(value: unknown, expected: string, path: readonly PropertyKey[]): InputError {
  const found = typeof value === 'function' || typeof value === 'bigint' ? typeof value : foundText(value)
  return new InputError([{ path: pathText(path), found, expected }])
}
