import type { DrawnSteel } from '@castwright/engine/panel'
import type { InputIssue } from '@castwright/engine/working'
import { describe, expect, it } from 'vitest'
import { emptyLaid, LAID_FORMS, type LaidForm, laidDraft, laidValue } from './laid-draft.ts'

const DRAWN: readonly DrawnSteel[] = [
  { edge: 'outer', form: 'u', diameter: 10, grade: 'B500B', spacing: 200, leg: 400 },
  {
    edge: 'D1',
    form: 'hook',
    layer: 'top',
    diameter: 10,
    grade: 'B500B',
    spacing: 200,
    leg: 400,
    inside: 40,
    mark: 'H',
  },
  {
    trim: 'all',
    layer: 'both',
    diameter: 16,
    grade: 'B500B',
    count: 2,
    beyond: 600,
    diagonals: { diameter: 12, grade: 'B500B', length: 1200, count: 1 },
  },
  { starters: 'top', layer: 'mould', diameter: 12, grade: 'B500B', spacing: 250, embed: 500, project: 700 },
  {
    starters: [
      [1000, 500],
      [5000, 500],
    ],
    diameter: 12,
    grade: 'B500B',
    spacing: 250,
    embed: 100,
    project: 700,
    foot: 200,
  },
  { ties: [[1000, 800]], across: 'x', diameter: 8, grade: 'B500B', width: 200, tail: 70 },
]

describe('steel by where it goes, as typed', () => {
  it('comes back the same when it is read again', () => {
    for (const steel of DRAWN) {
      const issues: InputIssue[] = []
      expect(laidValue(laidDraft(steel), 'steel[0]', issues)).toEqual(steel)
      expect(issues).toEqual([])
    }
  })

  it('names each field that is missing or cannot be read', () => {
    for (const form of Object.keys(LAID_FORMS) as LaidForm[]) {
      const issues: InputIssue[] = []
      laidValue(emptyLaid(form, 'B500B'), 'steel[3]', issues)
      const needed = LAID_FORMS[form].fields.filter(({ needed: must, name }) => must && name !== 'grade')
      expect(issues.map(({ path }) => path)).toEqual(needed.map(({ name }) => `steel[3].${name}`))
    }
    const issues: InputIssue[] = []
    const ties = {
      ...emptyLaid('ties', 'B500B').texts,
      ties: '1000 500; 2000',
      diameter: 'eight',
      width: '200',
    }
    laidValue({ kind: 'laid', form: 'ties', texts: ties }, 'steel[0]', issues)
    expect(issues.map(({ path }) => path)).toEqual(['steel[0].ties', 'steel[0].diameter'])
  })
})
