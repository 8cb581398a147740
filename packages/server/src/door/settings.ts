import { InputError, type InputIssue } from '@castwright/engine/working'
import { isLoopback } from '../guard/origin.ts'

/** How the server is reached. */
export interface Door {
  readonly host: string
  readonly port: number
  /** Certificate and key, PEM. */
  readonly tls: { readonly cert: string; readonly key: string } | null
  /** Where browsers see it, behind a proxy that ends TLS: `https://yard.example`. */
  readonly origin: string | null
}

export const DEFAULT_PORT = 4870
export const DEFAULT_HOST = '127.0.0.1'

/**
 * Holds the door to its rule: any host but this machine itself needs TLS, its own or a proxy's.
 *
 * @throws InputError naming the option.
 */
export function checkDoor(door: Door): Door {
  const issues: InputIssue[] = []
  if (!(Number.isInteger(door.port) && door.port >= 0 && door.port <= 65_535)) {
    issues.push({ path: '--port', found: String(door.port), expected: 'a whole number from 0 to 65535' })
  }
  if (door.host.trim() === '') {
    issues.push({ path: '--host', found: 'nothing', expected: 'a host name or address' })
  }
  if (door.origin !== null && !isHttpsOrigin(door.origin)) {
    issues.push({
      path: '--origin',
      found: door.origin,
      expected: 'an https origin without a path, such as https://yard.example',
    })
  }
  if (!isLoopback(door.host) && door.tls === null && door.origin === null) {
    issues.push({
      path: '--host',
      found: `${door.host} without TLS`,
      expected:
        '--cert and --key, or --origin behind a proxy that ends TLS: PINs and the record would travel in the clear, and phones grant offline use, storage and camera only over HTTPS',
    })
  }
  if (issues.length > 0) throw new InputError(issues, 'serve')
  return door
}

function isHttpsOrigin(text: string): boolean {
  try {
    const url = new URL(text)
    return url.protocol === 'https:' && url.origin === text.toLowerCase()
  } catch {
    return false
  }
}
