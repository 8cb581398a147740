import { COLDEST_READING, HOTTEST_READING } from '@castwright/engine/cure'
import type { PanelFacts } from '@castwright/engine/steps'
import { figure } from '../look/index.ts'
import type { ListedLogger } from '../record/api.ts'

const MINUTE = 60_000
/** A logger that reads for a pour and gave nothing for so long stands out, ms. */
const SILENT = 60 * MINUTE

/** `12 min`, `3 h`, `2 d`: how long something is ago, whole units downwards. */
export function longText(ms: number): string {
  if (ms < 60 * MINUTE) return `${Math.max(0, Math.floor(ms / MINUTE))} min`
  if (ms < 48 * 60 * MINUTE) return `${Math.floor(ms / (60 * MINUTE))} h`
  return `${Math.floor(ms / (24 * 60 * MINUTE))} d`
}

export interface LoggerWords {
  /** A person must look: it should read and does not, or reads what is no temperature. */
  readonly look: boolean
  readonly text: string
}

/** What a logger last gave, and whether it should have given more by now. `poured`: its panel has a pour on record, so that readings can come in. */
export function loggerWords(
  { last, panel, active }: Pick<ListedLogger, 'last' | 'panel' | 'active'>,
  { poured, now }: { readonly poured: boolean; readonly now: Date },
): LoggerWords {
  const reads = active && panel !== null && poured
  if (last === null) return { look: reads, text: 'Nothing yet' }
  const ago = now.getTime() - Date.parse(last.at)
  const value = `${last.channel} ${figure(last.celsius)} °C`
  const where = last.panel === panel || panel === null ? '' : ` in ${last.panel}`
  if (reads && ago >= SILENT)
    return { look: true, text: `Nothing for ${longText(ago)}; last ${value}${where}` }
  const when = ago < MINUTE ? 'just now' : `${longText(ago)} ago`
  const broken = !(last.celsius >= COLDEST_READING && last.celsius <= HOTTEST_READING)
  const why = broken ? ': no sensor in concrete reads that' : ''
  return { look: reads && broken, text: `${value}${where}, ${when}${why}` }
}

/** Panels that a logger may be moved to: those that were poured and are not lifted, the latest first, then those that are not poured yet. */
export function panelsToRead(panels: ReadonlyMap<string, PanelFacts>): {
  readonly poured: readonly string[]
  readonly others: readonly string[]
} {
  const all = [...panels].filter(([, { drawing, steps }]) => drawing !== null && steps.strip.opening === null)
  const at = (facts: PanelFacts): string => facts.cast?.at ?? ''
  return {
    poured: all
      .filter(([, { cast }]) => cast !== null)
      .sort(([, a], [, b]) => (at(a) < at(b) ? 1 : -1))
      .map(([id]) => id),
    others: all.filter(([, { cast }]) => cast === null).map(([id]) => id),
  }
}
