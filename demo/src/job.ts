import { type Job, parseJob } from '@castwright/engine/yard'
import { dueDay } from './calendar.ts'
import { DEMO_JOB, demoDrawings } from './drawings.ts'

/** The invented job with its drawings and the day each panel is due on site. */
export function demoJob(): Job {
  const drawings = demoDrawings()
  return parseJob({
    format: 'castwright.job/1',
    mark: DEMO_JOB,
    yard: 'Kettle Lane',
    drawings,
    due: Object.fromEntries(drawings.map((drawing, index) => [drawing.mark, dueDay(index)])),
  })
}
