/** Grades by longitudinal lines that run five rib spaces or more. */
const BY_LINES: Readonly<Record<number, readonly string[]>> = {
  1: ['60'],
  2: ['75'],
  3: ['80', '100'],
  4: ['120'],
}

const COUNTED = /(?:^| )(\d+) (?:longitudinal )?lines?(?= |$)/
const NAMED = /(?:^| )(?:longitudinal )?lines?(?= |$)/g

export function gradesByLines(lines: number): readonly string[] {
  return BY_LINES[lines] ?? []
}

/** Longitudinal lines that the words tell: `2 lines`, or `line line`; null where they tell none. */
export function lineCount(words: readonly string[]): number | null {
  const counted = COUNTED.exec(words.join(' '))
  if (counted) return Number(counted[1])
  const single = words.filter((word) => word === 'line').length
  return single > 0 ? single : null
}

/** The words without those that tell the lines. */
export function withoutLines(words: readonly string[]): string[] {
  const rest = words.join(' ').replace(COUNTED, ' ').replace(NAMED, ' ')
  return rest.split(' ').filter((word) => word !== '')
}
