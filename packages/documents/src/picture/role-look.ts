import type { Role } from './picture.ts'

/** The inks of the look; on a black-and-white printer each keeps its own grey. */
export type Ink =
  | 'ink'
  | 'quiet'
  | 'hair'
  | 'wash'
  | 'sheet'
  | 'accent'
  | 'accent-wash'
  | 'unknown'
  | 'fail'
  | 'band-1'
  | 'band-2'
  | 'band-3'
  | 'band-4'
  | 'band-5'
  | 'band-6'

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
  'band-1': '#e7ede9',
  'band-2': '#c9dad8',
  'band-3': '#a7c3c3',
  'band-4': '#85acaf',
  'band-5': '#5e9398',
  'band-6': '#32767d',
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
  void: { line: 'ink', width: 1.25, dash: [7, 4], fill: 'sheet', text: 'ink' },
  duct: { line: 'ink', width: 1.5, dash: [11, 3, 2, 3], fill: null, text: 'ink' },
  strap: { line: 'accent', width: 2.25, fill: null, text: 'ink' },
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
  'band-1': { line: 'quiet', width: 0.6, fill: 'band-1', text: 'ink' },
  'band-2': { line: 'quiet', width: 0.6, fill: 'band-2', text: 'ink' },
  'band-3': { line: 'quiet', width: 0.6, fill: 'band-3', text: 'ink' },
  'band-4': { line: 'quiet', width: 0.6, fill: 'band-4', text: 'ink' },
  'band-5': { line: 'ink', width: 0.6, fill: 'band-5', text: 'ink' },
  'band-6': { line: 'ink', width: 0.6, fill: 'band-6', text: 'ink' },
  level: { line: null, width: 0, fill: null, text: 'ink' },
  peak: { line: 'ink', width: 1, fill: 'ink', text: 'ink' },
  timber: { line: 'ink', width: 1, fill: 'sheet', text: 'ink' },
  picked: { line: 'accent', width: 3, fill: null, text: 'accent' },
  unused: { line: 'quiet', width: 1, dash: [3, 2], fill: 'sheet', text: 'quiet' },
  sling: { line: 'ink', width: 1.75, fill: 'sheet', text: 'ink' },
  beam: { line: 'ink', width: 3.5, fill: 'ink', text: 'ink' },
  plumb: { line: 'quiet', width: 0.75, dash: [4, 3], fill: null, text: 'quiet' },
  ground: { line: 'ink', width: 1.5, fill: null, text: 'ink' },
  met: { line: null, width: 0, fill: 'accent', text: 'ink' },
  wait: { line: 'quiet', width: 1.5, dash: [1.5, 4], fill: 'ink', text: 'ink' },
  now: { line: 'accent', width: 2.25, fill: null, text: 'accent' },
  grid: { line: 'hair', width: 1, fill: null, text: 'quiet' },
}
