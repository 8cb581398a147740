import { createRoute, z } from '@hono/zod-openapi'
import { personOf } from '../env.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, type Router, refusals, router } from '../router.ts'
import { FILE_TYPES, type FileStore, MOST_FILE_BYTES } from './file-store.ts'

const params = z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex') })

export const keptSchema = z
  .strictObject({ sha256: z.string(), size: z.number().int(), status: z.enum(['stored', 'known']) })
  .openapi('KeptFile')

const binary = { schema: z.string().openapi({ format: 'binary' }) }
const fileContent = Object.fromEntries(Object.keys(FILE_TYPES).map((type) => [type, binary]))

const putFile = createRoute({
  method: 'put',
  path: '/api/files/{sha256}',
  summary: 'Keep an attachment under its SHA-256',
  request: { params },
  responses: {
    200: jsonAnswer(keptSchema, 'It was here already'),
    201: jsonAnswer(keptSchema, 'Stored'),
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

export function fileRoutes(files: FileStore): Router {
  return router()
    .openapi(putFile, async (c) => {
      const person = personOf(c)
      if (person.role === 'viewer') throw new Problem('not-entitled', 'A viewer reads and adds nothing.')
      const { sha256 } = c.req.valid('param')
      const type = (c.req.header('content-type') ?? '').split(';')[0]?.trim().toLowerCase() ?? ''
      if (FILE_TYPES[type] === undefined) {
        throw new Problem(
          'wrong-type',
          `Found ${type === '' ? 'no content type' : type}; expected ${Object.keys(FILE_TYPES).join(', ')}.`,
        )
      }
      const length = Number(c.req.header('content-length') ?? 0)
      const put =
        length > MOST_FILE_BYTES
          ? ({ outcome: 'too-large' } as const)
          : await files.put(sha256, type, c.req.raw.body)
      if (put.outcome === 'too-large') {
        throw new Problem('too-large', `A file may have ${MOST_FILE_BYTES} bytes at most.`)
      }
      if (put.outcome === 'differs') {
        throw new Problem('wrong-input', 'The bytes do not have that hash; nothing was stored.', {
          issues: [{ path: 'sha256', found: put.found, expected: sha256 }],
        })
      }
      const kept = { sha256, size: put.size, status: put.outcome }
      return put.outcome === 'stored' ? c.json(kept, 201) : c.json(kept, 200)
    })
    .openapi(getFile, async (c) => {
      personOf(c)
      const { sha256 } = c.req.valid('param')
      const file = await files.get(sha256)
      if (file === null) throw new Problem('not-found', `No file ${sha256} is kept here.`)
      const known = FILE_TYPES[file.type]
      const name = `${sha256.slice(0, 12)}.${known?.ending ?? 'bin'}`
      // The cast: the document's body is a string of bytes, what goes out is a stream of them.
      return new Response(file.body, {
        status: 200,
        headers: {
          'content-type': file.type,
          'content-length': String(file.size),
          'content-disposition': `${known?.shown ? 'inline' : 'attachment'}; filename="${name}"`,
          'content-security-policy': "default-src 'none'; sandbox; frame-ancestors 'none'",
          'cache-control': 'private, max-age=31536000, immutable',
        },
      }) as never
    })
}
