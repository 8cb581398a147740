import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { type DrawnBar, panelOf, parseDrawing } from '@castwright/engine/panel'
import { planSteel, shortLegs } from '@castwright/engine/steel'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addBars } from './add-bars.ts'
import { barsOf, wholeList } from './bars-of.ts'
import { mapOf } from './map-of.ts'
import { readTable } from './read-table.ts'
import { type PanelSchedule, type ScheduleTable, scheduleTable } from './schedule-table.ts'
import { writeCsv } from './write-csv.ts'
import { writeXlsx } from './write-xlsx.ts'

const BARE = {
  format: 'castwright.drawing/1' as const,
  mark: 'W1',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
}

const STEEL: Record<FamilyId, { readonly grades: readonly string[]; readonly diameters: readonly number[] }> =
  {
    nz: { grades: ['300E', '500E'], diameters: [6, 10, 12, 16, 25] },
    au: { grades: ['500N'], diameters: [10, 12, 16, 36] },
    eu: { grades: ['B500A', 'B500B', 'B500C'], diameters: [8, 12, 20, 32] },
    us: { grades: ['40', '60'], diameters: [12.7, 15.875, 25.4] },
  }

const thousandths = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: from * 1000, max: to * 1000 }).map((value) => value / 1000)

/** Marks as people write them, and as nobody should: formulas, quotes, signs of the list itself. */
const mark = fc
  .oneof(
    { weight: 3, arbitrary: fc.stringMatching(/^[A-Z]{1,2}[0-9]{1,3}$/) },
    fc.constantFrom(
      '=1+1',
      "'=A1",
      '@x',
      '-4',
      '+B2',
      "''@",
      'a,b',
      'a;b',
      'a"b',
      '1,200',
      '007',
      '3-4',
      'ΦÅ—',
      'a\nb',
      '_x0041_',
    ),
    fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme-ascii' }),
  )
  .map((text) => text.trim())
  .filter((text) => text !== '')

function drawnBar(family: FamilyId): fc.Arbitrary<Omit<DrawnBar, 'bar'>> {
  const { grades, diameters } = STEEL[family]
  return fc
    .record({
      diameter: fc.constantFrom(...diameters),
      grade: fc.constantFrom(...grades),
      role: fc.constantFrom('main' as const, 'stirrup' as const),
      legs: fc.array(thousandths(1, 6000), { minLength: 1, maxLength: 7 }),
      turn: fc.array(
        fc.integer({ min: 1, max: 1_800_000 }).map((value) => value / 10_000),
        { minLength: 6, maxLength: 6 },
      ),
      inside: thousandths(1, 400),
      count: fc.integer({ min: 1, max: 2000 }),
    })
    .map(({ legs, turn, inside, ...rest }) => {
      const turns = turn.slice(0, legs.length - 1)
      return { ...rest, legs, ...(turns.length > 0 ? { turns, inside } : {}) }
    })
    .filter(
      ({ diameter, legs, turns = [], inside = null }) =>
        (legs.length > 1 || (legs[0] ?? 0) >= diameter) &&
        shortLegs({ diameter, inside, legs, turns }).length === 0,
    )
}

const listed = fc.constantFrom<FamilyId>('nz', 'au', 'eu', 'us').chain((family) =>
  fc
    .tuple(
      fc.uniqueArray(mark, { minLength: 1, maxLength: 8 }),
      fc.array(drawnBar(family), { minLength: 8, maxLength: 8 }),
    )
    .map(([marks, bars]) => ({
      family,
      bars: marks.map((bar, index): DrawnBar => ({ bar, ...(bars[index] as Omit<DrawnBar, 'bar'>) })),
    })),
)

/** The schedule that the engine makes of listed bars. */
function scheduleOf(bars: readonly DrawnBar[], family: FamilyId): PanelSchedule {
  const { drawing } = addBars({ drawing: parseDrawing({ ...BARE, code: family }), bars, family })
  const plan = planSteel({ panel: panelOf(drawing), yard: null, family: codeFamily(family) })
  return { job: '=Job, "1"', panel: 'W1', family, bars: plan.bars, unknown: [] }
}

function sorted(bars: readonly DrawnBar[]): readonly DrawnBar[] {
  return [...bars].sort((a, b) => (a.bar < b.bar ? -1 : 1))
}

describe.each([
  ['CSV', (table: ScheduleTable) => writeCsv(table)],
  ['CSV with a byte-order mark', (table: ScheduleTable) => writeCsv(table, { bom: true })],
  ['XLSX', writeXlsx],
] as const)('a schedule written as %s', (_, write) => {
  it('reads back as the same listed bars', async () => {
    await fc.assert(
      fc.asyncProperty(listed, async ({ bars, family }) => {
        const rules = codeFamily(family).steel
        const table = await readTable({
          bytes: await write(scheduleTable([scheduleOf(bars, family)])),
          name: 'list',
        })
        const list = barsOf({ table, rules })
        expect(list.errors).toEqual([])
        expect(list.warnings.filter(({ name }) => name === 'Cut length, mm')).toEqual([])
        expect(sorted(wholeList(list))).toEqual(sorted(bars))
        // The map that was found reads it again in the same way.
        expect(wholeList(barsOf({ table, rules, map: mapOf(list.columns) }))).toEqual(wholeList(list))
      }),
      { numRuns: 60 },
    )
  })

  it('of a whole job gives each panel its own bars', async () => {
    const one: DrawnBar = { bar: 'B1', diameter: 12, grade: '500E', role: 'main', legs: [600], count: 2 }
    const other: DrawnBar = { ...one, legs: [900] }
    const panels = [scheduleOf([one], 'nz'), { ...scheduleOf([other], 'nz'), panel: 'W2' }]
    const table = await readTable({ bytes: await write(scheduleTable(panels)), name: 'job' })
    const rules = codeFamily('nz').steel
    expect(barsOf({ table, rules }).panels).toEqual(['W1', 'W2'])
    expect(wholeList(barsOf({ table, rules, panel: 'W1' }))).toEqual([one])
    expect(wholeList(barsOf({ table, rules, panel: 'W2' }))).toEqual([other])
  })
})
