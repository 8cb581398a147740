import type { SourceStatus } from '../../working/source.ts'

/** What a bend must turn to be the bend of a shape: a right angle, half a turn, or less than a right angle. */
export type BendKind = 'right' | 'half' | 'shallow' | '135'

/** One shape of BS 8666, read along the bar from either end and from either side. */
export interface ShapeRow {
  readonly code: string
  readonly bends: readonly BendKind[]
  /** Sides of the bends against the first: `+` the same, `−` the other. */
  readonly sides: string
  /** Dimension letter of each leg in order; legs with one letter are equal. */
  readonly legs: readonly string[]
  /** Letter of the outside width of its half turns. */
  readonly width?: string
  /** Radius letter where the radius is not the standard one. */
  readonly radius?: string
  /** Groups of shallow bends that turn by one angle, by index. */
  readonly sameTurn?: readonly (readonly number[])[]
  /** Parts of the standard's own length: times each letter, the radius `r` and the diameter `d`; null where it is not confirmed. */
  readonly length: Readonly<Record<string, number>> | null
  /** The formula is approximate, and not to be used for bends over 45°. */
  readonly rough?: true
  /** Whether the figure of the shape was read in a public copy. */
  readonly status: SourceStatus
}

const right = (count: number): readonly BendKind[] => Array.from({ length: count }, () => 'right')

export const SHAPE_ROWS: readonly ShapeRow[] = [
  { code: '00', bends: [], sides: '', legs: ['A'], length: { A: 1 }, status: 'seen' },
  {
    code: '11',
    bends: right(1),
    sides: '+',
    legs: ['A', 'B'],
    length: { A: 1, B: 1, r: -0.5, d: -1 },
    status: 'seen',
  },
  {
    code: '12',
    bends: right(1),
    sides: '+',
    legs: ['A', 'B'],
    radius: 'R',
    length: { A: 1, B: 1, R: -0.43, d: -1.2 },
    status: 'seen',
  },
  {
    code: '13',
    bends: ['half'],
    sides: '+',
    legs: ['A', 'C'],
    width: 'B',
    length: { A: 1, B: 0.57, C: 1, d: -1.6 },
    status: 'seen',
  },
  {
    code: '15',
    bends: ['shallow'],
    sides: '+',
    legs: ['A', 'C'],
    length: { A: 1, C: 1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '21',
    bends: right(2),
    sides: '++',
    legs: ['A', 'B', 'C'],
    length: { A: 1, B: 1, C: 1, r: -1, d: -2 },
    status: 'seen',
  },
  {
    code: '22',
    bends: ['right', 'half'],
    sides: '++',
    legs: ['A', 'B', 'D'],
    width: 'C',
    length: { A: 1, B: 1, C: 1, D: 1, r: -1.5, d: -3 },
    status: 'from memory',
  },
  {
    code: '23',
    bends: right(2),
    sides: '+−',
    legs: ['A', 'B', 'C'],
    length: { A: 1, B: 1, C: 1, r: -1, d: -2 },
    status: 'from memory',
  },
  {
    code: '25',
    bends: ['shallow', 'shallow'],
    sides: '++',
    legs: ['A', 'E', 'B'],
    length: { A: 1, B: 1, E: 1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '26',
    bends: ['shallow', 'shallow'],
    sides: '+−',
    legs: ['A', 'B', 'C'],
    sameTurn: [[0, 1]],
    length: { A: 1, B: 1, C: 1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '27',
    bends: ['shallow', 'right'],
    sides: '++',
    legs: ['A', 'B', 'C'],
    length: { A: 1, B: 1, C: 1, r: -0.5, d: -1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '28',
    bends: ['shallow', 'right'],
    sides: '+−',
    legs: ['A', 'B', 'C'],
    length: { A: 1, B: 1, C: 1, r: -0.5, d: -1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '31',
    bends: right(3),
    sides: '+++',
    legs: ['A', 'B', 'C', 'D'],
    length: { A: 1, B: 1, C: 1, D: 1, r: -1.5, d: -3 },
    status: 'from memory',
  },
  {
    code: '32',
    bends: right(3),
    sides: '++−',
    legs: ['A', 'B', 'C', 'D'],
    length: { A: 1, B: 1, C: 1, D: 1, r: -1.5, d: -3 },
    status: 'from memory',
  },
  {
    code: '33',
    bends: ['half', 'half', 'half'],
    sides: '+++',
    legs: ['C', 'A', 'A', 'C'],
    width: 'B',
    length: { A: 2, B: 1.7, C: 2, d: -4 },
    status: 'from memory',
  },
  {
    code: '34',
    bends: ['shallow', 'shallow', 'right'],
    sides: '+−−',
    legs: ['A', 'B', 'C', 'E'],
    sameTurn: [[0, 1]],
    length: { A: 1, B: 1, C: 1, E: 1, r: -0.5, d: -1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '35',
    bends: ['shallow', 'shallow', 'right'],
    sides: '+−+',
    legs: ['A', 'B', 'C', 'E'],
    sameTurn: [[0, 1]],
    length: { A: 1, B: 1, C: 1, E: 1, r: -0.5, d: -1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '36',
    bends: ['shallow', 'right', 'right'],
    sides: '+++',
    legs: ['A', 'B', 'C', 'D'],
    length: { A: 1, B: 1, C: 1, D: 1, r: -1, d: -2 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '41',
    bends: right(4),
    sides: '++++',
    legs: ['A', 'B', 'C', 'D', 'E'],
    length: { A: 1, B: 1, C: 1, D: 1, E: 1, r: -2, d: -4 },
    status: 'from memory',
  },
  {
    code: '44',
    bends: right(4),
    sides: '+−−+',
    legs: ['A', 'B', 'C', 'D', 'E'],
    length: { A: 1, B: 1, C: 1, D: 1, E: 1, r: -2, d: -4 },
    status: 'from memory',
  },
  {
    code: '46',
    bends: ['shallow', 'shallow', 'shallow', 'shallow'],
    sides: '+−−+',
    legs: ['A', 'B', 'C', 'B', 'E'],
    sameTurn: [[0, 1, 2, 3]],
    length: { A: 1, B: 2, C: 1, E: 1 },
    rough: true,
    status: 'from memory',
  },
  {
    code: '47',
    bends: ['half', 'right', 'right', 'half'],
    sides: '++++',
    legs: ['C', 'A', 'B', 'A', 'C'],
    length: { A: 2, B: 1, C: 2, r: 1.5, d: -3 },
    status: 'from memory',
  },
  {
    code: '48',
    bends: ['135', 'right', 'right', '135'],
    sides: '++++',
    legs: ['C', 'A', 'B', 'A', 'C'],
    length: null,
    status: 'from memory',
  },
  {
    code: '51',
    bends: right(5),
    sides: '+++++',
    legs: ['C', 'B', 'A', 'B', 'A', 'C'],
    length: { A: 2, B: 2, C: 2, r: -2.5, d: -5 },
    status: 'from memory',
  },
  {
    code: '52',
    bends: ['135', 'right', 'right', 'right', '135'],
    sides: '+++++',
    legs: ['C', 'B', 'A', 'B', 'A', 'C'],
    length: null,
    status: 'from memory',
  },
  {
    code: '63',
    bends: right(6),
    sides: '++++++',
    legs: ['C', 'B', 'A', 'B', 'A', 'B', 'C'],
    length: { A: 2, B: 3, C: 2, r: -3, d: -6 },
    status: 'from memory',
  },
]
