import { type Assumed, readJson } from '@castwright/engine/working'
import { JOB_FORMAT, parseJob, parseYard, type Yard } from '@castwright/engine/yard'
import type { Given } from '../given.ts'
import type { Outcome, Verb } from '../verb.ts'
import { SCHEDULE_FILES, writeScheduleFiles } from './schedule-file.ts'
import { schedulePanel } from './schedule-panel.ts'

export const scheduleVerb: Verb = {
  name: 'schedule',
  file: { name: 'DRAWING', about: 'drawing, castwright.drawing/1, or a job with its drawings' },
  options: [
    {
      flags: '--yard <file>',
      about: 'yard, castwright.yard/1: its stock decides laps; without it bars are in one length',
    },
    ...SCHEDULE_FILES,
  ],
  example: 'castwright schedule docs/examples/wall.json --code nz',
  async run(given) {
    const input = await given.fileJson()
    const yardFile = await given.optionFile('yard')
    const yard =
      yardFile === undefined ? null : parseYard(readJson(yardFile.text, yardFile.path), yardFile.path)
    if (isJob(input)) return scheduleJob(input, given, yard)
    const panel = schedulePanel(input, { given, yard, from: given.fileName })
    await writeScheduleFiles(given, [panel.list])
    const { json, working, assumed, unknown, table } = panel
    return { json, working, assumed, ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}), table }
  },
}

function isJob(input: unknown): boolean {
  return input !== null && typeof input === 'object' && 'format' in input && input.format === JOB_FORMAT
}

/** Every panel of a job, one after the other; its mass is not known where that of one panel is not. */
async function scheduleJob(input: unknown, given: Given, yard: Yard | null): Promise<Outcome> {
  const job = parseJob(input, given.fileName)
  const panels = job.drawings.map((drawing, index) =>
    schedulePanel(drawing, { given, yard, from: `${given.fileName}: drawings[${index}]`, job: job.mark }),
  )
  await writeScheduleFiles(
    given,
    panels.map(({ list }) => list),
  )
  const masses = panels.flatMap(({ mass }) => mass ?? [])
  const unknown = panels.flatMap(({ list, unknown }) => unknown.map((gap) => `${list.panel}: ${gap}`))
  const assumed = new Map<string, Assumed>()
  for (const each of panels.flatMap((panel) => panel.assumed)) assumed.set(JSON.stringify(each), each)
  return {
    json: {
      job: job.mark,
      panels: panels.map(({ json }) => json),
      mass: masses.length === panels.length ? masses.reduce((sum, mass) => sum + mass, 0) : null,
      ...(unknown.length > 0 ? { unknown } : {}),
    },
    working: panels.flatMap(({ working }) => working),
    assumed: [...assumed.values()],
    ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
    table: () => panels.map(({ list, table }) => `${list.panel}\n${table()}`).join('\n\n'),
  }
}
