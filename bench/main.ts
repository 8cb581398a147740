import { findChromium } from '../scripts/chromium.mjs'
import { compaction } from './compact.ts'
import { cutting } from './cutting.ts'
import { committedEntries } from './entries.ts'
import { firstLoad } from './first-load.ts'
import { gain } from './gain.ts'
import { heatBench } from './heat.ts'
import { heats } from './heats.ts'
import { layout } from './layout.ts'
import { printLines } from './line.ts'
import { picksBench } from './picks.ts'
import { plans } from './plans.ts'
import { plate } from './plate.ts'
import { stages } from './stages.ts'
import { startUp } from './start-up.ts'
import { usableCard } from './usable-card.ts'

const short = process.argv.includes('--short')
printLines('Plan', plans(short ? 100 : 1000))
printLines('Plate', plate(short))
printLines('Stages of handling', stages(short ? 60 : 1000))
printLines('Picks', picksBench(short))
printLines('Layout', layout(short))
printLines('Cutting', await cutting(short))
printLines('Place and compact', compaction(short))
printLines('Heat of a panel', heatBench(short))
printLines('Strength gain', gain(short))
printLines('Steel on record', await heats(short))
printLines('Record', await committedEntries(short ? 300 : 2000))
printLines('Command line', startUp())
const chromium = findChromium()
printLines('App', [
  ...firstLoad(),
  ...(chromium === null
    ? [{ what: 'to a usable card', value: 'no Chromium', beside: 'not measured' }]
    : await usableCard(chromium)),
])
