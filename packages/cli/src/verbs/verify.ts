import { InputError } from '@castwright/engine/working'
import { problemText, verifyPassport } from '@castwright/record'
import type { Given } from '../given.ts'
import { textTable, type Verb } from '../verb.ts'

export const verifyVerb: Verb = {
  name: 'verify',
  file: { name: 'PASSPORT', about: 'passport file, castwright.passport/1' },
  options: [
    {
      flags: '--key <key>',
      about:
        'public key of the yard as the yard publishes it, 64 hex digits or a file that holds them; without it the verdict is unknown',
    },
  ],
  example: 'castwright verify docs/examples/wall.passport --key docs/examples/wall.key',
  async run(given) {
    const text = await given.fileText()
    const key = await readKey(given)
    const { verdict, problems, unknown, passport } = within(given.fileName, () =>
      verifyPassport(text, { key }),
    )
    return {
      json: { verdict, problems, ...(unknown.length > 0 ? { unknown } : {}) },
      verdict,
      table: () =>
        [
          ...(passport === null
            ? []
            : [
                textTable([
                  [
                    'Panel',
                    `${passport.panel.job}/${passport.panel.mark}, revision ${passport.panel.revision ?? 'none'}`,
                  ],
                  ['Yard', passport.yard.log],
                  ['Key', passport.yard.publicKey],
                  ['Made', passport.made],
                  ['Entries', `${passport.entries.length} of a log of ${passport.head.size}`],
                ]),
                '',
              ]),
          `Verdict: ${verdict}`,
          ...problems.map((problem) => `  ${problemText(problem)}`),
          ...unknown.map((gap) => `  ${gap}`),
          'A passport proves what was recorded and that it has not changed since. It does not judge the panel.',
        ].join('\n'),
    }
  },
}

async function readKey(given: Given): Promise<string | undefined> {
  const option = given.optionalText('key')
  if (option === undefined || isKey(option)) return option?.trim()
  const file = await given.optionFile('key').catch(() => undefined)
  if (file !== undefined && isKey(file.text)) return file.text.trim()
  throw given.fault(
    'key',
    file === undefined ? option : file.text,
    '64 hex digits, or a file that holds them',
  )
}

function isKey(text: string): boolean {
  return /^[0-9a-f]{64}$/i.test(text.trim())
}

function within<T>(from: string, act: () => T): T {
  try {
    return act()
  } catch (error) {
    throw error instanceof InputError ? error.within(from) : error
  }
}
