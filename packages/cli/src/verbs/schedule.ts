import { codeFamily } from '@castwright/engine/codes'
import { panelOf, parseDrawing } from '@castwright/engine/panel'
import { planSteel, type SteelPlan } from '@castwright/engine/steel'
import { readJson } from '@castwright/engine/working'
import { parseYard } from '@castwright/engine/yard'
import { numberText, textTable, type Verb } from '../verb.ts'
import { SCHEDULE_FILES, writeScheduleFiles } from './schedule-file.ts'

export const scheduleVerb: Verb = {
  name: 'schedule',
  file: { name: 'DRAWING', about: 'drawing, castwright.drawing/1' },
  options: [
    {
      flags: '--yard <file>',
      about: 'yard, castwright.yard/1: its stock decides laps; without it bars are in one length',
    },
    ...SCHEDULE_FILES,
  ],
  example: 'castwright schedule docs/examples/wall.json --code nz',
  async run(given) {
    const drawing = parseDrawing(await given.fileJson(), given.fileName)
    const yardFile = await given.optionFile('yard')
    const yard =
      yardFile === undefined ? null : parseYard(readJson(yardFile.text, yardFile.path), yardFile.path)
    const family = codeFamily(given.code(drawing.code, yard?.code))
    const panel = panelOf(drawing, given.fileName)
    const plan = planSteel({ panel, yard, family })
    // Without a yard the bars are scheduled in one length: said as an assumption, not as a gap of the schedule.
    const unknown =
      yard === null ? plan.unknown.filter((gap) => !gap.includes(': yard: bar stock')) : plan.unknown
    const assumed =
      yard === null && plan.bars.length > 0
        ? [
            ...plan.assumed,
            { field: 'yard.stock', value: 'any length', unit: '', why: 'no yard given: bars are not lapped' },
          ]
        : plan.assumed
    await writeScheduleFiles(given, {
      job: drawing.job ?? '',
      panel: drawing.mark,
      family: family.id,
      bars: plan.bars,
      unknown,
    })
    return {
      json: {
        mark: drawing.mark,
        bars: plan.bars,
        mass: plan.mass,
        laps: plan.laps.map(({ mark, at, length }) => ({ mark, at, length })),
        ties: plan.ties,
        wire: plan.wire,
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working: plan.working,
      assumed,
      ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
      table: () => scheduleTable(plan, unknown),
    }
  },
}

function scheduleTable(plan: SteelPlan, unknown: readonly string[]): string {
  return [
    textTable([
      ['Mark', 'Shape', 'Bar', 'Count', 'Cut length, mm', 'Legs, mm', 'Mass, kg'],
      ...plan.bars.map((bar) => [
        bar.mark,
        bar.shape,
        `${bar.diameter} ${bar.grade}`,
        String(bar.count),
        numberText(bar.cutLength),
        bar.legs.map((leg) => numberText(leg)).join(' '),
        numberText(bar.mass),
      ]),
    ]),
    textTable([
      ['Mass in all', numberText(plan.mass, 'kg')],
      ['Laps', String(plan.laps.length)],
      ['Crossings to tie', numberText(plan.ties)],
      ['Tying wire', numberText(plan.wire, 'kg')],
    ]),
    ...unknown.map((gap) => `Not known: ${gap}`),
  ].join('\n')
}
