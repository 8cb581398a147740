import { createHash } from 'node:crypto'
import type { Files } from '@castwright/record/store'
import { createRoute, z } from '@hono/zod-openapi'
import { personOf } from '../env.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, type Router, refusals, router } from '../router.ts'
import { FILE_TYPES, MOST_FILE_BYTES } from './file-types.ts'

const params = z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex') })

export const keptSchema = z
  .strictObject({ sha256: z.string(), size: z.number().int(), status: z.enum(['stored', 'known']) })
  .openapi('KeptFile')

/** Written as the document has it: a schema of ours would be held against the bytes. */
const binary = { schema: { type: 'string', format: 'binary' } } as const
const fileContent = Object.fromEntries(Object.keys(FILE_TYPES).map((type) => [type, binary]))

const putFile = createRoute({
  method: 'put',
  path: '/api/files/{sha256}',
  summary: 'Keep an attachment under its SHA-256',
  request: { params, body: { required: true, content: fileContent } },
  responses: {
    200: jsonAnswer(keptSchema, 'It was here already'),
    201: jsonAnswer(keptSchema, 'Stored, durably'),
    ...refusals('not-signed-in', 'not-entitled', 'wrong-origin', 'wrong-type', 'wrong-input'),
  },
})

const getFile = createRoute({
  method: 'get',
  path: '/api/files/{sha256}',
  summary: 'An attachment as it was stored',
  request: { params },
  responses: {
    200: { description: 'The bytes', content: fileContent },
    ...refusals('not-signed-in', 'not-found', 'wrong-input'),
  },
})

export function fileRoutes(files: Files): Router {
  return router()
    .openapi(putFile, async (c) => {
      const person = personOf(c)
      if (person.role === 'viewer') throw new Problem('not-entitled', 'A viewer reads and adds nothing.')
      const { sha256 } = c.req.valid('param')
      const type = bareType(c.req.header('content-type'))
      if (FILE_TYPES[type] === undefined) {
        throw new Problem(
          'wrong-type',
          `Found ${type === '' ? 'no content type' : type}; expected ${Object.keys(FILE_TYPES).join(', ')}.`,
        )
      }
      const bytes = await wholeBody(c.req.raw.body, sha256)
      const status = await files.put(sha256, bytes, type)
      const kept = { sha256, size: bytes.length, status }
      return status === 'stored' ? c.json(kept, 201) : c.json(kept, 200)
    })
    .openapi(getFile, async (c) => {
      personOf(c)
      const { sha256 } = c.req.valid('param')
      const file = await files.get(sha256)
      if (file === null) throw new Problem('not-found', `No file ${sha256} is kept here.`)
      const known = FILE_TYPES[file.type]
      const name = `${sha256.slice(0, 12)}.${known?.ending ?? 'bin'}`
      return c.body(new Uint8Array(file.bytes), 200, {
        'content-type': known === undefined ? 'application/octet-stream' : file.type,
        'content-length': String(file.size),
        'content-disposition': `${known?.shown ? 'inline' : 'attachment'}; filename="${name}"`,
        'content-security-policy': "default-src 'none'; sandbox; frame-ancestors 'none'",
        'cache-control': 'private, max-age=31536000, immutable',
      })
    })
}

/** Reads a body up to the limit, hashing as it comes. @throws Problem 413, or 422 where the hash is another. */
async function wholeBody(body: ReadableStream<Uint8Array> | null, sha256: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  const hash = createHash('sha256')
  let size = 0
  // Node's streams can be walked through; the platform's type does not say so everywhere.
  for await (const chunk of (body ?? []) as unknown as AsyncIterable<Uint8Array>) {
    size += chunk.length
    if (size > MOST_FILE_BYTES) {
      throw new Problem('too-large', `A file may have ${MOST_FILE_BYTES} bytes at most.`)
    }
    hash.update(chunk)
    chunks.push(chunk)
  }
  const found = hash.digest('hex')
  if (found !== sha256) throw hashProblem(found, sha256)
  return Buffer.concat(chunks)
}

export function hashProblem(found: string, expected: string): Problem {
  return new Problem('wrong-input', 'The bytes do not have that hash; nothing was stored.', {
    issues: [{ path: 'sha256', found, expected }],
  })
}

function bareType(header: string | undefined): string {
  return (header ?? '').split(';')[0]?.trim().toLowerCase() ?? ''
}
