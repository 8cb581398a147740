import type { InputIssue } from '@castwright/engine/working'
import type { Draft, YardState } from '@castwright/record'
import type { Logger } from '@castwright/record/store'
import type { z } from '@hono/zod-openapi'
import type { YardLog } from '../entries/yard-log.ts'
import { Problem } from '../problem.ts'
import { type KnownReadings, knownReadings } from './known-readings.ts'
import { wrongKey } from './logger-key.ts'
import type { readingsSchema, takenSchema } from './loggers.schema.ts'
import { personOfLogger } from './loggers.service.ts'

type Sent = z.output<typeof readingsSchema>['readings'][number]
type Taken = z.output<typeof takenSchema>

const HOUR = 3_600_000
/** A logger's clock may be so far ahead, ms: as much as is let pass unsaid of a device's. */
export const AHEAD = 120_000
const MOST_CHANNELS = 64
const MOST_ISSUES = 100

/**
 * Takes the readings of a logger into the record of the panel that it reads for: one `temperature` entry a channel, all of them or none. What is
 * there already is not stored again. The answer comes after the disk has them.
 *
 * @throws Problem 401 and 403 where the key ended or the logger was closed meanwhile, 409 without panel or pour, 422 naming each reading that does not fit.
 */
export function takeReadings(log: YardLog, asked: Logger, sent: readonly Sent[]): Promise<Taken> {
  return log.turn(async () => {
    const logger = await openLogger(log, asked)
    const state = await log.state()
    const pour = pourOf(logger, state)
    const { fresh, known, empty } = sortOut(sent, {
      logger,
      mixed: Date.parse(pour.mixed),
      now: log.clock(),
      known: knownReadings(state, personOfLogger(logger).id),
    })
    const channels = [...fresh].sort(([a], [b]) => (a < b ? -1 : 1))
    const drafts = channels.map(([channel, celsius]) => draftOf(pour, channel, celsius))
    const entries = drafts.length === 0 ? [] : await log.make(personOfLogger(logger), drafts)
    return {
      panel: pour.panel,
      stored: channels.reduce((sum, [, celsius]) => sum + celsius.size, 0),
      known,
      empty,
      entries: entries.map(({ id, index }, at) => ({
        id,
        index,
        channel: channels[at]?.[0] ?? '',
        readings: channels[at]?.[1].size ?? 0,
      })),
    }
  })
}

interface Pour {
  readonly panel: string
  /** UTC */
  readonly mixed: string
  readonly revision: string | null
}

function draftOf(
  { panel, mixed, revision }: Pour,
  channel: string,
  celsius: ReadonlyMap<number, number>,
): Draft {
  const readings = [...celsius]
    .sort(([a], [b]) => a - b)
    .map(([time, value]) => [(time - Date.parse(mixed)) / HOUR, value])
  return {
    kind: 'temperature',
    subject: { kind: 'panel', id: panel },
    step: 'cure',
    value: { channel, readings, mixed },
    unit: '°C',
    ...(revision === null ? {} : { revision }),
  }
}

/** The logger as it is now, within the turn: since its key was looked at it may have been moved, closed or given another. */
export async function openLogger(log: YardLog, asked: Logger): Promise<Logger> {
  const logger = await log.store.loggers.find(asked.id)
  if (logger === null || logger.keyHash !== asked.keyHash) throw wrongKey()
  if (!logger.active)
    throw new Problem('closed-logger', `Logger ${logger.name} is closed; a lead opens it again.`)
  return logger
}

function pourOf({ name, panel }: Logger, state: YardState): Pour {
  if (panel === null)
    throw new Problem('conflict', `Logger ${name} reads for no panel: move it to one first.`)
  const facts = state.panels.get(panel)
  const mixed = facts?.cast?.at
  if (facts === undefined || mixed === undefined) {
    throw new Problem('conflict', `${panel} has no pour on record: hours from mixing are not known.`)
  }
  return { panel, mixed, revision: facts.revision }
}

interface Bounds {
  readonly logger: Logger
  /** ms since 1970 */
  readonly mixed: number
  readonly now: number
  readonly known: KnownReadings
}

interface SortedOut {
  /** °C by time, ms since 1970, by channel. */
  readonly fresh: ReadonlyMap<string, ReadonlyMap<number, number>>
  readonly known: number
  readonly empty: number
}

/** What is new, what was there, and what gave nothing. @throws Problem 422 where any reading does not fit. */
function sortOut(sent: readonly Sent[], bounds: Bounds): SortedOut {
  const fresh = new Map<string, Map<number, number>>()
  const issues: InputIssue[] = []
  let [known, empty] = [0, 0]
  for (const [index, { channel, at, celsius }] of sent.entries()) {
    const time = Date.parse(at)
    if (celsius === null) {
      empty += 1
      continue
    }
    const there = fresh.get(channel)?.get(time) ?? bounds.known(channel, time)
    if (there === celsius) known += 1
    else if (there !== null) {
      const expected = `${there} °C, as sent before for ${channel} at that time`
      issues.push({ path: `readings[${index}].celsius`, found: `${celsius}`, expected })
    } else {
      const expected = timeExpected(time, bounds)
      if (expected !== null) issues.push({ path: `readings[${index}].at`, found: at, expected })
      else fresh.set(channel, (fresh.get(channel) ?? new Map<number, number>()).set(time, celsius))
    }
  }
  if (fresh.size > MOST_CHANNELS) {
    issues.push({ path: 'readings', found: `${fresh.size} channels`, expected: `at most ${MOST_CHANNELS}` })
  }
  if (issues.length > 0) throw unfit(issues)
  return { fresh, known, empty }
}

/** What the time of a reading should have been, or null where it is good. */
function timeExpected(time: number, { logger, mixed, now }: Bounds): string | null {
  const instant = (ms: number): string => new Date(ms).toISOString()
  if (!Number.isFinite(time)) return 'an ISO instant'
  if (time < mixed) return `a time not before mixing at ${instant(mixed)}`
  if (logger.since !== null && time <= Date.parse(logger.since)) {
    return `a time after ${logger.since}, when the logger left the panel before`
  }
  return time > now + AHEAD
    ? `a time not more than two minutes after ${instant(now)}, now by the server`
    : null
}

export function unfit(issues: readonly InputIssue[]): Problem {
  const count = issues.length === 1 ? 'One reading does' : `${issues.length} readings do`
  const more = issues.length > MOST_ISSUES ? ` The first ${MOST_ISSUES} are named.` : ''
  return new Problem('wrong-input', `${count} not fit; nothing of this sending was stored.${more}`, {
    issues: issues.slice(0, MOST_ISSUES),
  })
}
