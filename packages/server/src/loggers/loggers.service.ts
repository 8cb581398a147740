import { randomBytes } from 'node:crypto'
import type { Person, YardState } from '@castwright/record'
import type { Logger } from '@castwright/record/store'
import type { z } from '@hono/zod-openapi'
import type { YardLog } from '../entries/yard-log.ts'
import { Problem } from '../problem.ts'
import { keyHash, randomKey } from './logger-key.ts'
import type {
  keyedLoggerSchema,
  loggerChangeSchema,
  loggerSchema,
  newLoggerSchema,
} from './loggers.schema.ts'

export type ShownLogger = z.output<typeof loggerSchema>
type KeyedLogger = z.output<typeof keyedLoggerSchema>

const HOUR = 3_600_000

/** Who a logger's entries are by. Its id is at random, so that no account's id can be the same. */
export function personOfLogger({ id, name }: Pick<Logger, 'id' | 'name'>): Person {
  return { id: `logger-${id}`, name: `Logger ${name}`, role: 'floor' }
}

export async function listLoggers(log: YardLog): Promise<ShownLogger[]> {
  const [loggers, state] = [await log.store.loggers.list(), await log.state()]
  const last = lastReadings(state)
  return loggers.map((logger) => shown(logger, last))
}

/** Makes a logger with a key, which this answer alone tells. @throws Problem 409 where the name is taken, 422 for a panel that is not there. */
export function addLogger(
  log: YardLog,
  by: Person,
  { name, panel = null }: z.output<typeof newLoggerSchema>,
): Promise<KeyedLogger> {
  return log.turn(async () => {
    const { loggers } = log.store
    if ((await loggers.list()).some((one) => one.active && one.name === name)) {
      throw new Problem('conflict', `A logger ${name} is here already; close it or take another name.`)
    }
    const state = await log.state()
    expectPanel(state, panel)
    const key = randomKey()
    const id = randomBytes(5).toString('hex')
    const made = { id, name, keyHash: keyHash(key), panel, since: null, active: true, madeBy: by.id }
    if (!(await loggers.add(made))) throw new Error(`found logger id ${id} taken, expected a new one`)
    return { ...shown({ ...made, created: log.now() }, new Map()), key }
  })
}

/**
 * Moves a logger to a panel, closes or opens it, or gives it a new key. What it read up to leaving a panel is not of the next one. A closed logger reads for none.
 *
 * @throws Problem 403, 404, 409 for a closed logger, 422 for a panel that is not there.
 */
export function changeLogger(
  log: YardLog,
  by: Person,
  id: string,
  change: z.output<typeof loggerChangeSchema>,
): Promise<KeyedLogger> {
  return log.turn(async () => {
    const { loggers } = log.store
    const logger = await loggers.find(id)
    if (logger === null) throw new Problem('not-found', `No logger ${id} is here.`)
    expectEntitled(by, change)
    const state = await log.state()
    expectPanel(state, change.panel ?? null)
    const active = change.active ?? logger.active
    if (!active && change.panel) throw new Problem('conflict', `Logger ${logger.name} is closed.`)
    const panel = !active ? null : change.panel === undefined ? logger.panel : change.panel
    const since = logger.panel !== null && panel !== logger.panel ? log.now() : logger.since
    const key = change.newKey ? randomKey() : undefined
    const now = { active, panel, since, ...(key === undefined ? {} : { keyHash: keyHash(key) }) }
    await loggers.change(id, now)
    return { ...shown({ ...logger, ...now }, lastReadings(state)), ...(key === undefined ? {} : { key }) }
  })
}

function expectEntitled(by: Person, { active, newKey }: z.output<typeof loggerChangeSchema>): void {
  if (by.role === 'viewer') throw new Problem('not-entitled', `Moving a logger is not for a ${by.role}.`)
  if (by.role !== 'lead' && (active !== undefined || newKey !== undefined)) {
    throw new Problem(
      'not-entitled',
      `Closing a logger and giving it a new key is for lead; ${by.name} is ${by.role}.`,
    )
  }
}

function expectPanel(state: YardState, panel: string | null): void {
  if (panel === null || state.panels.has(panel)) return
  throw new Problem('wrong-input', 'Some fields do not fit.', {
    issues: [{ path: 'panel', found: JSON.stringify(panel), expected: 'a panel in the record, as job/mark' }],
  })
}

type Last = NonNullable<ShownLogger['last']>

/** Latest reading of every maker of logs, by the maker's id. */
function lastReadings(state: YardState): ReadonlyMap<string, Last> {
  const last = new Map<string, Last>()
  for (const [panel, { cast, temperatures }] of state.panels) {
    if (cast === null) continue
    for (const { by, channel, readings, broken = [] } of temperatures) {
      for (const reading of [readings.at(-1), broken.at(-1)]) {
        if (reading === undefined) continue
        const at = new Date(Date.parse(cast.at) + Math.round(reading[0] * HOUR)).toISOString()
        const before = last.get(by.id)
        if (before === undefined || at > before.at)
          last.set(by.id, { at, panel, channel, celsius: reading[1] })
      }
    }
  }
  return last
}

function shown(logger: Logger, last: ReadonlyMap<string, Last>): ShownLogger {
  const { id, name, panel, active, madeBy, created } = logger
  return { id, name, panel, active, madeBy, created, last: last.get(personOfLogger(logger).id) ?? null }
}
