import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  mjs: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  webmanifest: 'application/manifest+json',
  svg: 'image/svg+xml',
  png: 'image/png',
  ico: 'image/x-icon',
  woff2: 'font/woff2',
  woff: 'font/woff',
  wasm: 'application/wasm',
  txt: 'text/plain; charset=utf-8',
  pdf: 'application/pdf',
}

const SQUEEZED = new Set(['html', 'js', 'mjs', 'css', 'json', 'webmanifest', 'svg', 'wasm', 'txt'])

export type Coding = 'br' | 'gzip' | 'identity'

export interface AppFile {
  readonly type: string
  readonly etag: string
  /** Named by its content, so it may be kept for good. */
  readonly immutable: boolean
  readonly bytes: (coding: Coding) => Promise<Uint8Array<ArrayBuffer>>
  readonly squeezed: boolean
}

const PAGE = '/index.html'

/** The built app: its files by address, read and compressed once, when first asked for. */
export class AppFiles {
  private paths: ReadonlyMap<string, string>
  private readonly read = new Map<string, { readonly changed: number; readonly file: AppFile }>()

  constructor(private readonly root: string) {
    this.paths = addressesIn(root)
  }

  /** The file of an address, or null. Only listed files are found, so no address leads out of the folder. */
  at(address: string): AppFile | null {
    const path = this.paths.get(address)
    const changed = path === undefined ? undefined : statSync(path, { throwIfNoEntry: false })?.mtimeMs
    if (path === undefined || changed === undefined) return null
    const known = this.read.get(address)
    if (known !== undefined && known.changed === changed) return known.file
    // A page that has changed is a new build, and names files that were not there before.
    if (known !== undefined && address === PAGE) this.paths = addressesIn(this.root)
    const file = appFile(address, readFileSync(path))
    this.read.set(address, { changed, file })
    return file
  }
}

function addressesIn(root: string): ReadonlyMap<string, string> {
  return new Map(filesUnder(root).map((path) => [`/${relative(root, path).split(sep).join('/')}`, path]))
}

function appFile(address: string, plain: Buffer): AppFile {
  const ending = address.slice(address.lastIndexOf('.') + 1).toLowerCase()
  const kept = new Map<Coding, Promise<Uint8Array<ArrayBuffer>>>()
  return {
    type: TYPES[ending] ?? 'application/octet-stream',
    etag: `"${createHash('sha256').update(plain).digest('base64url').slice(0, 27)}"`,
    immutable: address.startsWith('/assets/'),
    squeezed: SQUEEZED.has(ending),
    bytes: (coding) => {
      const known = kept.get(coding)
      if (known !== undefined) return known
      const made = squeeze(plain, coding)
      kept.set(coding, made)
      return made
    },
  }
}

async function squeeze(plain: Buffer, coding: Coding): Promise<Uint8Array<ArrayBuffer>> {
  if (coding === 'br') {
    // Quality 9: the highest ones take seconds on the small computer of a yard office for one percent less.
    const params = { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: plain.length }
    return new Uint8Array(await promisify(brotliCompress)(plain, { params }))
  }
  if (coding === 'gzip') return new Uint8Array(await promisify(gzip)(plain, { level: 9 }))
  return new Uint8Array(plain)
}

/** The best coding that the reader takes: `br` before `gzip`. */
export function codingOf(accepted: string | undefined): Coding {
  const words = new Map(
    (accepted ?? '').split(',').map((part) => {
      const [name = '', ...params] = part.trim().toLowerCase().split(';')
      const weight = params.map((param) => /^\s*q=([\d.]+)\s*$/.exec(param)?.[1]).find((q) => q !== undefined)
      return [name, weight === undefined ? 1 : Number(weight)]
    }),
  )
  const takes = (name: string): boolean => (words.get(name) ?? words.get('*') ?? 0) > 0
  return takes('br') ? 'br' : takes('gzip') ? 'gzip' : 'identity'
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((item) => {
    const path = join(folder, item.name)
    return item.isDirectory() ? filesUnder(path) : item.isFile() ? [path] : []
  })
}
