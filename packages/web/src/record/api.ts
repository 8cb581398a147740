import { type InputIssue, issueSentence } from '@castwright/engine/working'
import type { Entry, Person, Role, StoredEntry } from '@castwright/record'

/** The server did not answer: no network, or it is down. What was to be sent is kept here. */
export class NoAnswer extends Error {
  constructor(cause: unknown) {
    super('The server does not answer.', { cause })
    this.name = 'NoAnswer'
  }
}

/** The server answered no: status and sentence of its problem details, with the fields that are wrong. */
export class Refused extends Error {
  readonly status: number
  readonly issues: readonly InputIssue[]

  constructor(status: number, sentence: string, issues: readonly InputIssue[] = []) {
    super(sentence)
    this.name = 'Refused'
    this.status = status
    this.issues = issues
  }

  /** Nothing is wrong with what was sent: the server could not take it just now. */
  get passing(): boolean {
    return this.status >= 500 || this.status === 408 || this.status === 429
  }
}

/** An error as a sentence for the screen, with the fields that are wrong. */
export function sentenceOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  const issues = error instanceof Refused ? error.issues.map((issue) => `${issueSentence(issue)}.`) : []
  return [error.message, ...issues].join(' ')
}

export interface SessionAnswer {
  readonly person: { readonly id: string; readonly name: string; readonly role: Role } | null
  readonly yard: string | null
  readonly now: string
  readonly demo: boolean
  readonly needsSetup: boolean
}

export interface SignedHead {
  readonly size: number
  readonly root: string
  readonly time: string
  readonly yard: string
  readonly signature: string
}

export interface EntriesAnswer {
  readonly entries: readonly StoredEntry[]
  readonly size: number
  readonly head: SignedHead | null
  readonly now: string
}

export interface PushResult {
  readonly id: string
  readonly status: 'stored' | 'known' | 'refused'
  readonly index?: number
  readonly stored?: string
  readonly reason?: string
  readonly issues?: readonly InputIssue[]
  /** Of a refused close: what it still waits for. */
  readonly missing?: readonly string[]
}

export interface PushAnswer {
  readonly results: readonly PushResult[]
  readonly size: number
  readonly now: string
}

export interface SignAnswer {
  readonly request: number
  readonly opened: boolean
  readonly opening?: StoredEntry
  readonly missing: readonly string[]
}

/** What came into the record from a file, and what was taken where the file said nothing. */
export interface BringAnswer {
  readonly stored: number
  readonly known?: number
  readonly ids: readonly string[]
  readonly assumed?: readonly {
    readonly field: string
    readonly value: string
    readonly unit: string
    readonly why: string
  }[]
}

export interface ListedPerson extends Person {
  readonly active: boolean
}

/** A logger that sends its readings itself, and what it last gave. */
export interface ListedLogger {
  readonly id: string
  readonly name: string
  /** `<job>/<mark>` that it reads for; null for none. */
  readonly panel: string | null
  readonly active: boolean
  readonly last: {
    readonly at: string
    readonly panel: string
    readonly channel: string
    readonly celsius: number
  } | null
}

/** `key`: told in this answer and never again. */
export interface KeyedLogger extends ListedLogger {
  readonly key?: string
}

export interface LoggerChange {
  readonly panel?: string | null
  readonly active?: boolean
  readonly newKey?: true
}

/** What the app asks of the server. Times out, so that a hanging network counts as none. */
export interface Api {
  session(): Promise<SessionAnswer>
  signIn(person: string, pin: string): Promise<SessionAnswer>
  signOut(): Promise<void>
  people(): Promise<readonly ListedPerson[]>
  addPerson(person: { name: string; role: Role; pin: string }): Promise<void>
  changePerson(id: string, change: { pin?: string; active?: boolean; current?: string }): Promise<void>
  loggers(): Promise<readonly ListedLogger[]>
  addLogger(logger: { name: string; panel: string | null }): Promise<KeyedLogger>
  changeLogger(id: string, change: LoggerChange): Promise<KeyedLogger>
  entries(after: number, limit: number): Promise<EntriesAnswer>
  push(entries: readonly Entry[]): Promise<PushAnswer>
  sign(entry: Entry, pin: string): Promise<SignAnswer>
  putFile(sha256: string, bytes: Blob, type: string): Promise<void>
  head(): Promise<SignedHead>
  key(): Promise<{ publicKey: string; yard: string }>
  bring(document: unknown): Promise<BringAnswer>
}

export interface ApiOptions {
  readonly base?: string
  readonly fetch?: typeof fetch
  /** ms until a request counts as unanswered. */
  readonly patience?: number
}

export function createApi({ base = '', fetch: ask = fetch, patience = 20_000 }: ApiOptions = {}): Api {
  const call = async (method: string, path: string, body?: unknown, type?: string): Promise<Response> => {
    let response: Response
    try {
      response = await ask(`${base}${path}`, {
        method,
        credentials: 'same-origin',
        cache: 'no-store',
        signal: AbortSignal.timeout(patience),
        ...(body === undefined
          ? {}
          : type === undefined
            ? { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }
            : { body: body as Blob, headers: { 'content-type': type } }),
      })
    } catch (error) {
      throw new NoAnswer(error)
    }
    if (!response.ok) throw await refusalOf(response)
    return response
  }
  const json = async <T>(method: string, path: string, body?: unknown): Promise<T> => {
    const response = await call(method, path, body)
    try {
      return (await response.json()) as T
    } catch (error) {
      throw new NoAnswer(error) // a page that is not ours answered: a captive portal, or half an answer
    }
  }
  return {
    session: () => json('GET', '/api/session'),
    signIn: (person, pin) => json('POST', '/api/session', { person, pin }),
    signOut: async () => {
      await call('DELETE', '/api/session')
    },
    people: () => json('GET', '/api/people'),
    addPerson: async (person) => {
      await call('POST', '/api/people', person)
    },
    changePerson: async (id, change) => {
      await call('PATCH', `/api/people/${encodeURIComponent(id)}`, change)
    },
    loggers: () => json('GET', '/api/loggers'),
    addLogger: (logger) => json('POST', '/api/loggers', logger),
    changeLogger: (id, change) => json('PATCH', `/api/loggers/${encodeURIComponent(id)}`, change),
    entries: (after, limit) => json('GET', `/api/entries?after=${after}&limit=${limit}`),
    push: (entries) => json('POST', '/api/entries', { entries }),
    sign: (entry, pin) => json('POST', '/api/sign', { entry, pin }),
    putFile: async (sha256, bytes, type) => {
      await call('PUT', `/api/files/${sha256}`, bytes, type)
    },
    head: () => json('GET', '/api/head'),
    key: () => json('GET', '/api/key'),
    bring: (document) => json('POST', '/api/import', document),
  }
}

/** Problem details (RFC 9457) as an error; anything else is told by its status. */
async function refusalOf(response: Response): Promise<Refused> {
  let sentence = `The server answered ${response.status}.`
  let issues: readonly InputIssue[] = []
  try {
    const problem: unknown = await response.json()
    if (typeof problem === 'object' && problem !== null) {
      const {
        detail,
        title,
        issues: given,
      } = problem as { detail?: unknown; title?: unknown; issues?: unknown }
      if (typeof detail === 'string' && detail !== '') sentence = detail
      else if (typeof title === 'string' && title !== '') sentence = title
      if (Array.isArray(given)) issues = given as readonly InputIssue[]
    }
  } catch {
    // not problem details: the status alone must do
  }
  return new Refused(response.status, sentence, issues)
}
