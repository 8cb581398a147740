import { inputIssues } from '@castwright/engine/working'
import { OpenAPIHono, type RouteConfig, z } from '@hono/zod-openapi'
import type { ServerEnv } from './env.ts'
import { PROBLEMS, Problem, type ProblemCode, problemSchema } from './problem.ts'

export type Router = OpenAPIHono<ServerEnv>

/** A router that refuses bodies, paths and queries with the field, what came and what was expected. */
export function router(): Router {
  return new OpenAPIHono<ServerEnv>({
    defaultHook: (result) => {
      if (result.success) return
      const came = (result as unknown as { readonly data: unknown }).data
      throw new Problem('wrong-input', 'Some fields do not fit.', {
        issues: inputIssues(result.error, came),
      })
    },
  })
}

/** A request body of JSON that must be there. */
export function jsonBody<T extends z.ZodType>(
  schema: T,
): { required: true; content: { 'application/json': { schema: T } } } {
  return { required: true, content: { 'application/json': { schema } } }
}

/** An answer of JSON. */
export function jsonAnswer<T extends z.ZodType>(
  schema: T,
  description: string,
): { description: string; content: { 'application/json': { schema: T } } } {
  return { description, content: { 'application/json': { schema } } }
}

/** The refusals that a route documents, by status. Every route can also meet 413, 421 and 500. */
export function refusals(...codes: readonly ProblemCode[]): RouteConfig['responses'] {
  const all: readonly ProblemCode[] = [...codes, 'too-large', 'wrong-host', 'defect']
  const titles = new Map<number, string[]>()
  for (const code of all) {
    const { status, title } = PROBLEMS[code]
    titles.set(status, [...(titles.get(status) ?? []), title])
  }
  return Object.fromEntries(
    [...titles].map(([status, words]) => [
      status,
      {
        description: words.join('; '),
        content: { 'application/problem+json': { schema: problemSchema } },
      },
    ]),
  )
}

/** Any JSON value, drawn so that the document does not run in circles. */
export const anyJson = z.unknown().openapi({
  description: 'Any JSON value',
  // The generator's types know one type a field; the document may list several.
  type: ['object', 'array', 'string', 'number', 'boolean', 'null'] as never,
})
