import type { Context, Handler } from 'hono'
import type { ServerEnv } from '../env.ts'
import { Problem } from '../problem.ts'
import { type AppFile, type AppFiles, codingOf } from './app-files.ts'

/**
 * The built app. An address without a file is one of the app's own pages and gets `index.html`; one that ends like a file
 * is not there.
 */
export function webRoute(files: AppFiles | null): Handler<ServerEnv> {
  return async (c) => {
    const address = new URL(c.req.url).pathname
    if (files === null) throw new Problem('not-found', 'The app is not built here; the API is under /api.')
    const file = files.at(address === '/' ? '/index.html' : address)
    if (file !== null) return fileAnswer(c, file)
    const isPage = !/\.[a-z0-9]{1,12}$/i.test(address)
    const page = isPage ? files.at('/index.html') : null
    if (page === null) throw new Problem('not-found', `No file at ${address}.`)
    return fileAnswer(c, page)
  }
}

async function fileAnswer(c: Context<ServerEnv>, file: AppFile): Promise<Response> {
  const coding = file.squeezed ? codingOf(c.req.header('accept-encoding')) : 'identity'
  const etag = coding === 'identity' ? file.etag : file.etag.replace(/"$/, `-${coding}"`)
  const headers = new Headers({
    'content-type': file.type,
    etag,
    'cache-control': file.immutable ? 'public, max-age=31536000, immutable' : 'no-cache',
    ...(file.squeezed ? { vary: 'accept-encoding' } : {}),
  })
  if (matches(c.req.header('if-none-match'), etag)) return new Response(null, { status: 304, headers })
  if (coding !== 'identity') headers.set('content-encoding', coding)
  const bytes = await file.bytes(coding)
  headers.set('content-length', String(bytes.length))
  return new Response(c.req.method === 'HEAD' ? null : bytes, { status: 200, headers })
}

function matches(header: string | undefined, etag: string): boolean {
  if (header === undefined) return false
  return header.split(',').some((part) => part.trim() === '*' || part.trim().replace(/^W\//, '') === etag)
}
