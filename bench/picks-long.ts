import { type Effort, type Picks, picks, USUAL } from '@castwright/engine/lift'
import { PICK_PANELS } from './picks-panels.ts'

/**
 * The usual search of four picks beside a long one of our own (many starts from several seeds, each moved on from) on invented panels.
 * Run by hand: `npx tsx bench/picks-long.ts`. Some minutes.
 */
const LONG: Effort = { places: 200, random: 30, descents: 12, firstRounds: 40, finished: 12, rounds: 40 }
const SEEDS = [11, 12]

let worst = 0
for (const [name, panel] of PICK_PANELS) {
  const usual = picks({ panel, count: 4, effort: USUAL })
  const from = performance.now()
  const tries = SEEDS.map((seed): Picks => picks({ panel, count: 4, symmetric: false, effort: LONG, seed }))
  const seconds = (performance.now() - from) / 1000
  const best = Math.min(usual.peak.stress, ...tries.map(({ peak }) => peak.stress))
  const ratio = usual.peak.stress / best
  worst = Math.max(worst, ratio)
  console.log(
    `${name.padEnd(26)} usual ${usual.peak.stress.toFixed(4)} MPa, long ${best.toFixed(4)} MPa in ${seconds.toFixed(0)} s (seeds ${SEEDS.join(', ')}), ratio ${ratio.toFixed(4)}`,
  )
}
console.log(`worst ratio ${worst.toFixed(4)}; goal 1.03`)
