import { type Assumed, InputError, type Step } from '@castwright/engine/working'
import { Command, CommanderError } from 'commander'
import { Given } from './given.ts'
import { type Outcome, textTable, type Verb } from './verb.ts'
import { SUMMARIES, VERBS } from './verbs.ts'

/** How the command line reaches the world, so that tests can run a verb in process. */
export interface Console {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  readonly read: (path: string) => Promise<string>
}

/**
 * Runs one verb. 0: done, every check passes; 1: done, a check fails or is unknown; 2: the input is wrong, said on
 * `err`; 3: a defect of ours.
 */
export async function run(argv: readonly string[], io: Console): Promise<number> {
  const [name] = argv
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    io.out(verbList())
    return name === undefined ? 2 : 0
  }
  const load = Object.hasOwn(VERBS, name) ? VERBS[name] : undefined
  if (load === undefined) {
    io.err(`verb: found ${JSON.stringify(name)}, expected one of ${Object.keys(VERBS).join(', ')}\n`)
    return 2
  }
  try {
    return await runVerb(await load(), argv.slice(1), io)
  } catch (error) {
    if (error instanceof InputError) {
      io.err(`${error.message}\n`)
      return 2
    }
    io.err(
      `defect in castwright ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    )
    return 3
  }
}

async function runVerb(verb: Verb, args: readonly string[], io: Console): Promise<number> {
  const command = commandOf(verb, io)
  let parsed: { file: string | undefined; options: Record<string, unknown> } | undefined
  command.action((...received: unknown[]) => {
    const file = verb.file === undefined ? undefined : received[0]
    parsed = { file: typeof file === 'string' ? file : undefined, options: command.opts() }
  })
  try {
    await command.parseAsync([...args], { from: 'user' })
  } catch (error) {
    // Commander has written what is wrong; help ends with 0.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
    throw error
  }
  if (parsed === undefined) return 2
  const outcome = await verb.run(new Given(parsed.options, parsed.file, io.read))
  if (outcome.printed !== true) print(outcome, parsed.options, io)
  return outcome.verdict === undefined || outcome.verdict === 'pass' ? 0 : 1
}

function commandOf(verb: Verb, io: Console): Command {
  const command = new Command(`castwright ${verb.name}`)
    .description(SUMMARIES[verb.name] ?? '')
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .allowExcessArguments(false)
  if (verb.file !== undefined) {
    command.argument(
      verb.file.optional ? `[${verb.file.name}]` : `<${verb.file.name}>`,
      `${verb.file.about}; - for standard input`,
    )
  }
  for (const { flags, about, repeated } of verb.options) {
    if (repeated === true) {
      command.option(flags, about, (text: string, before: string[] = []) => [...before, text])
    } else command.option(flags, about)
  }
  if (!verb.options.some((option) => option.flags.startsWith('--code'))) {
    command.option('--code <family>', 'code family: nz, au, eu or us')
  }
  command.option('--json', 'one JSON document, numbers not rounded')
  command.option('--explain', 'the working: each step with its numbers and source')
  command.addHelpText('after', `\nExample:\n  ${verb.example}\n`)
  return command
}

function print(outcome: Outcome, options: Record<string, unknown>, io: Console): void {
  const working = outcome.working ?? []
  const assumed = outcome.assumed ?? []
  if (options.json === true) {
    const whole = {
      ...outcome.json,
      ...(assumed.length > 0 ? { assumed } : {}),
      ...(options.explain === true ? { working } : {}),
    }
    io.out(`${finiteJson(whole)}\n`)
    return
  }
  const parts = [outcome.table()]
  if (assumed.length > 0) parts.push(assumedTable(assumed))
  if (options.explain === true) parts.push(workingTable(working))
  io.out(`${parts.join('\n\n')}\n`)
}

/** JSON in which a number that is not finite is a defect, never a silent null. */
function finiteJson(value: unknown): string {
  return JSON.stringify(
    value,
    (key, item: unknown) => {
      if (typeof item === 'number' && !Number.isFinite(item)) throw new Error(`field ${key} is ${item}`)
      return item
    },
    2,
  )
}

function assumedTable(assumed: readonly Assumed[]): string {
  return `Assumed\n${textTable(assumed.map(({ field, value, unit, why }) => [`  ${field}`, `${value} ${unit}`.trim(), why]))}`
}

function workingTable(working: readonly Step[]): string {
  if (working.length === 0) return 'Working: none for this verb'
  const rows = working.map((step) => [
    `  ${step.symbol}`,
    `= ${step.formula}`,
    Object.entries(step.given)
      .map(([name, value]) => `${name} ${value}`)
      .join(', '),
    `= ${step.result} ${step.unit}`.trim(),
    `${`${step.source.standard} ${step.source.clause}`.trim()} (${step.source.status})`,
    step.note ?? '',
  ])
  return `Working\n${textTable(rows)}`
}

function verbList(): string {
  const rows = Object.keys(VERBS).map((name) => [`  ${name}`, SUMMARIES[name] ?? ''])
  return `castwright VERB [FILE] [options]\n\n${textTable(rows)}\n\ncastwright VERB --help says what each does, its options and an example.\n`
}
