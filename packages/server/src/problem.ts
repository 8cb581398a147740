import type { InputIssue } from '@castwright/engine/working'
import { z } from '@hono/zod-openapi'

/** Every kind of problem that the API answers with, its status and its title. Closed: a new one is added here. */
export const PROBLEMS = {
  'bad-request': { status: 400, title: 'The request cannot be read' },
  'not-signed-in': { status: 401, title: 'Nobody is signed in' },
  'wrong-pin': { status: 401, title: 'Person and PIN do not fit' },
  'wrong-key': { status: 401, title: 'No logger has that key' },
  'not-entitled': { status: 403, title: 'This person may not do that' },
  'closed-logger': { status: 403, title: 'This logger is closed' },
  'wrong-origin': { status: 403, title: 'The request comes from another site' },
  'not-found': { status: 404, title: 'There is nothing here' },
  'wrong-method': { status: 405, title: 'This address does not take that method' },
  conflict: { status: 409, title: 'This does not fit what is in the record' },
  'too-large': { status: 413, title: 'The request is too large' },
  'wrong-type': { status: 415, title: 'This content type is not taken here' },
  'wrong-host': { status: 421, title: 'This server does not answer for that host' },
  'wrong-input': { status: 422, title: 'The input is wrong' },
  'too-many-tries': { status: 429, title: 'Too many tries' },
  defect: { status: 500, title: 'A defect of ours' },
  'not-available': { status: 503, title: 'Not available here' },
} as const

export type ProblemCode = keyof typeof PROBLEMS

export const issueSchema = z
  .strictObject({
    path: z.string().openapi({ description: 'Field as one would write it: `openings[1].outline[3]`' }),
    found: z.string(),
    expected: z.string(),
  })
  .openapi('Issue')

/** Problem details after RFC 9457, with what is wrong field by field where the input is at fault. */
export const problemSchema = z
  .strictObject({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    issues: z.array(issueSchema).optional(),
  })
  .openapi('Problem')

export type ProblemBody = z.output<typeof problemSchema>

/** The request is refused; turned into a response in one place, `problemResponse`. */
export class Problem extends Error {
  readonly code: ProblemCode
  readonly issues: readonly InputIssue[]
  readonly headers: Readonly<Record<string, string>>

  constructor(
    code: ProblemCode,
    detail: string,
    more: {
      readonly issues?: readonly InputIssue[]
      readonly headers?: Readonly<Record<string, string>>
    } = {},
  ) {
    super(detail)
    this.name = 'Problem'
    this.code = code
    this.issues = more.issues ?? []
    this.headers = more.headers ?? {}
  }
}

export function problemResponse(problem: Problem): Response {
  const { status, title } = PROBLEMS[problem.code]
  const body: ProblemBody = {
    type: `urn:castwright:problem:${problem.code}`,
    title,
    status,
    detail: problem.message,
    ...(problem.issues.length > 0 ? { issues: [...problem.issues] } : {}),
  }
  return new Response(JSON.stringify(body), {
    status,
    headers: {
      'content-type': 'application/problem+json',
      'cache-control': 'no-store',
      ...problem.headers,
    },
  })
}
