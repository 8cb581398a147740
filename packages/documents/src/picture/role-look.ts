import type { Role } from './picture.ts'

/** The inks of the look; on a black-and-white printer each keeps its own grey. */
export type Ink = 'ink' | 'quiet' | 'hair' | 'wash' | 'sheet' | 'accent' | 'accent-wash' | 'unknown' | 'fail'

/** Day values of the inks, for paper and where no style sheet sets them. */
export const INKS: Readonly<Record<Ink, string>> = {
  ink: '#1b1e1d',
  quiet: '#474d49',
  hair: '#d5cfc2',
  wash: '#eae5da',
  sheet: '#fffdf8',
  accent: '#0b5c66',
  'accent-wash': '#dbe9e8',
  unknown: '#7a5200',
  fail: '#a3260f',
}

export interface RoleLook {
  /** Line; null for none. */
  readonly line: Ink | null
  /** Line width, units. */
  readonly width: number
  readonly dash?: readonly number[]
  readonly fill: Ink | null
  /** Text and letters. */
  readonly text: Ink
}

/** How each role is drawn. Lines of bars differ by dash and not only by colour: near the mould full, near the top dashed. */
export const ROLE_LOOK: Readonly<Record<Role, RoleLook>> = {
  concrete: { line: null, width: 0, fill: 'wash', text: 'ink' },
  outline: { line: 'ink', width: 2, fill: null, text: 'ink' },
  opening: { line: 'quiet', width: 0.75, fill: null, text: 'quiet' },
  'bar-mould': { line: 'ink', width: 1.1, fill: null, text: 'ink' },
  'bar-top': { line: 'quiet', width: 1.1, dash: [5, 3], fill: null, text: 'quiet' },
  lap: { line: 'accent', width: 4, fill: null, text: 'accent' },
  insert: { line: 'ink', width: 2, fill: 'sheet', text: 'ink' },
  chair: { line: 'quiet', width: 1, fill: 'sheet', text: 'quiet' },
  form: { line: 'quiet', width: 1, fill: 'accent-wash', text: 'quiet' },
  prop: { line: 'ink', width: 1.5, fill: 'ink', text: 'ink' },
  insertion: { line: 'accent', width: 1.25, fill: 'sheet', text: 'ink' },
  path: { line: 'accent', width: 1, dash: [2, 3], fill: null, text: 'accent' },
  'zone-mark': { line: 'ink', width: 1.5, fill: 'sheet', text: 'ink' },
  zone: { line: 'quiet', width: 1, dash: [6, 3], fill: null, text: 'ink' },
  dimension: { line: 'ink', width: 1, fill: null, text: 'ink' },
  load: { line: 'ink', width: 1, fill: null, text: 'ink' },
  centre: { line: 'accent', width: 1.75, fill: 'sheet', text: 'accent' },
  measure: { line: 'accent', width: 1.25, dash: [6, 3], fill: null, text: 'ink' },
  defect: { line: 'fail', width: 2, fill: 'sheet', text: 'ink' },
  label: { line: null, width: 0, fill: null, text: 'ink' },
}
