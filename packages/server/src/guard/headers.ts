import type { MiddlewareHandler } from 'hono'
import type { ServerEnv } from '../env.ts'

/**
 * What the app may load: its own files only, no script inside the page. `wasm-unsafe-eval` is for the solver, which is
 * WebAssembly; it allows compiling a module that was loaded from here and no script text.
 */
export const APP_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "img-src 'self' blob: data:",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ')

/** What an answer of the API may load when it is opened as a page: nothing. */
const API_POLICY = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

/** A sheet opened in the browser's own reader: that reader draws it with parts of its own. */
export const SHEET_POLICY = "default-src 'self'; script-src 'none'; base-uri 'none'; frame-ancestors 'none'"

/** Puts the guarding headers on each answer that has not chosen its own. */
export function guardingHeaders({ tls }: { readonly tls: boolean }): MiddlewareHandler<ServerEnv> {
  return async (c, next) => {
    await next()
    const headers = c.res.headers
    const api = c.req.path.startsWith('/api/')
    if (!headers.has('content-security-policy')) {
      headers.set('content-security-policy', api ? API_POLICY : APP_POLICY)
    }
    headers.set('x-content-type-options', 'nosniff')
    headers.set('referrer-policy', 'no-referrer')
    headers.set('cross-origin-opener-policy', 'same-origin')
    headers.set('cross-origin-resource-policy', 'same-origin')
    headers.set('permissions-policy', 'camera=(self), geolocation=(), microphone=()')
    if (tls) headers.set('strict-transport-security', 'max-age=31536000')
    if (api && !headers.has('cache-control')) headers.set('cache-control', 'no-store')
  }
}
