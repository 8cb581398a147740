import { writeSync } from 'node:fs'
import { ExampleDevice, YARD_NAME } from '../example-entries.ts'
import { sha256OfFile } from './files.ts'
import { openStore } from './open.ts'

/*
 * Runs in a process of its own that the kill test ends without warning. Says `ready`, then writes for ever and names each thing that
 * the record has acknowledged: `e <id>` an entry, `f <sha256>` a file.
 */
const [folder, name] = process.argv.slice(2)
if (folder === undefined || name === undefined) throw new Error('expected a folder and a device name')
const say = (line: string) => writeSync(1, `${line}\n`)

const store = await openStore({ folder, yard: YARD_NAME })
const device = new ExampleDevice(name)
say('ready')
for (let round = 0; ; round++) {
  const calls = Array.from({ length: 1 + (round % 4) }, (_, call) =>
    Array.from({ length: 1 + ((round + call) % 3) }, (_, index) =>
      device.value(`c${round}.${call}.${index}`, round),
    ),
  )
  const bytes = new TextEncoder().encode(`${name} ${round}`.padEnd(5000, '.'))
  const sha256 = sha256OfFile(bytes)
  await Promise.all([
    ...calls.map(async (entries) => {
      for (const result of await store.append(entries)) {
        if (result.status !== 'stored') throw new Error(`${result.id} is ${result.status}`)
        say(`e ${result.id}`)
      }
    }),
    store.files.put(sha256, bytes, 'text/plain').then(() => say(`f ${sha256}`)),
  ])
}
