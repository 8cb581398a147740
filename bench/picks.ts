import { picks } from '@castwright/engine/lift'
import { type BenchLine, median, seconds } from './line.ts'
import { PICK_PANELS } from './picks-panels.ts'

/** The search of four picks: warm, in this process. The long search beside it is `bench/picks-long.ts`, run by hand. */
export function picksBench(short: boolean): BenchLine[] {
  const [name, panel] = PICK_PANELS[1]!
  const runs = short ? 2 : 5
  const times = Array.from({ length: runs }, () => seconds(() => picks({ panel, count: 4 })))
  const one = picks({ panel, count: 4 })
  return [
    {
      what: `four picks, panel with ${name}`,
      value: `${(1000 * median(times)).toFixed(0)} ms`,
      beside: `peak ${one.peak.stress.toFixed(3)} MPa; goal about one second with the process; first run here ${(1000 * (times[0] ?? 0)).toFixed(0)} ms`,
    },
  ]
}
