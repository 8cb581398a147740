/** What a bar list says of a bar, apart from its legs. */
export const FIELDS = [
  'job',
  'panel',
  'mark',
  'shape',
  'shapeCode',
  'diameter',
  'grade',
  'role',
  'count',
  'cutLength',
  'legs',
  'turns',
  'inside',
] as const
export type Field = (typeof FIELDS)[number]

/** Fields of lengths, mm. */
export const LENGTHS: ReadonlySet<Field> = new Set(['diameter', 'cutLength', 'legs', 'inside'])

/** How a field is called in words. */
export const FIELD_WORD: Readonly<Record<Field, string>> = {
  job: 'Job',
  panel: 'Panel',
  mark: 'Mark',
  shape: 'Shape',
  shapeCode: 'Shape code',
  diameter: 'Diameter',
  grade: 'Grade',
  role: 'Role',
  count: 'Count',
  cutLength: 'Cut length',
  legs: 'Legs',
  turns: 'Turns',
  inside: 'Inside diameter',
}

/** Names of columns by field as lists spell them, the plainest first: where two columns fit, the earlier name wins. */
export const SPELLINGS: Readonly<Record<Field, readonly string[]>> = {
  job: ['job', 'project', 'contract'],
  panel: ['panel', 'panel mark', 'element', 'member', 'unit'],
  mark: ['mark', 'bar mark', 'bar', 'bar no', 'bar number', 'bar id', 'position', 'pos', 'item', 'id'],
  shape: ['shape', 'shape word', 'form'],
  shapeCode: ['shape code', 'code'],
  diameter: [
    'diameter',
    'bar diameter',
    'nominal diameter',
    'dia',
    'bar dia',
    'ø',
    'φ',
    'bar size',
    'size',
    'db',
  ],
  grade: ['grade', 'steel grade', 'bar grade', 'steel', 'quality', 'class'],
  role: ['role', 'use', 'used as', 'function'],
  count: [
    'count',
    'total count',
    'quantity',
    'qty',
    'number of bars',
    'no of bars',
    'number off',
    'no off',
    'number',
    'pieces',
    'pcs',
    'bars',
    'no',
  ],
  cutLength: [
    'cut length',
    'cutting length',
    'length of bar',
    'length each',
    'bar length',
    'length per bar',
    'length',
  ],
  legs: ['legs', 'dimensions', 'sides'],
  turns: ['turns', 'turn', 'angles', 'bend angles', 'bend angle', 'angle'],
  inside: [
    'inside diameter',
    'inside',
    'inside diameter of bends',
    'inside diameter of bend',
    'inside of bend',
    'bend diameter',
    'bending diameter',
    'mandrel',
    'mandrel diameter',
    'former',
    'former diameter',
    'pin',
    'pin diameter',
  ],
}

/** The name of a column without its unit and marks, and the unit that it names: `Cut length, mm` is `cut length` in `mm`. */
export function headerWords(text: string): { readonly name: string; readonly unit: string | null } {
  const plain = text.trim().replace(/\s+/g, ' ')
  const parts = /^(.+?)\s*(?:\(([^)]*)\)|\[([^\]]*)\]|,\s*(\S+))$/.exec(plain)
  const [, before = plain, round, square, after] = parts ?? []
  const unit = (round ?? square ?? after)?.trim().toLowerCase() ?? null
  const name = before
    .toLowerCase()
    .replace(/[._/:-]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
  return { name, unit: unit === '' ? null : unit }
}

/** mm in each unit that a column of lengths may be in. */
export const UNIT_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
}

/** Which leg a column holds, from 0, by its name: `A`, `leg B`, `leg 3`; null for another column. */
export function legNumber(name: string): number | null {
  const letter = /^(?:leg |dimension |dim |side )?([a-z])$/.exec(name)?.[1]
  if (letter !== undefined) return letter.charCodeAt(0) - 97
  const pair = /^(?:leg )?a([a-x])$/.exec(name)?.[1]
  if (pair !== undefined) return 26 + pair.charCodeAt(0) - 97
  const number = /^(?:leg |leg|l)(\d{1,2})$/.exec(name)?.[1]
  return number === undefined || Number(number) < 1 || Number(number) > 50 ? null : Number(number) - 1
}

/** What roles are called. */
export const ROLE_WORDS: Readonly<Record<string, 'main' | 'stirrup'>> = {
  main: 'main',
  bar: 'main',
  longitudinal: 'main',
  stirrup: 'stirrup',
  link: 'stirrup',
  tie: 'stirrup',
  ligature: 'stirrup',
  fitment: 'stirrup',
  hoop: 'stirrup',
}
