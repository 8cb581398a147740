import { describe, expect, it } from 'vitest'
import { checkDoor, type Door } from './settings.ts'

const door: Door = { host: '127.0.0.1', port: 4870, tls: null, origin: null }

describe('the door', () => {
  it.each(['127.0.0.1', 'localhost', '::1', '127.9.9.9'])(
    'is plain HTTP on this machine itself: %s',
    (host) => {
      expect(checkDoor({ ...door, host })).toEqual({ ...door, host })
    },
  )

  it.each(['0.0.0.0', '::', '192.168.1.20', 'office.local', '127.evil.example'])(
    'on %s needs TLS and says why',
    (host) => {
      expect(() => checkDoor({ ...door, host })).toThrow(
        /--host: found .* without TLS, expected --cert and --key/,
      )
      expect(() => checkDoor({ ...door, host, tls: { cert: 'c', key: 'k' } })).not.toThrow()
      expect(() => checkDoor({ ...door, host, origin: 'https://yard.example' })).not.toThrow()
    },
  )

  it.each(['http://yard.example', 'https://yard.example/app', 'yard.example', 'https://', '*'])(
    'refuses the origin %s',
    (origin) => {
      expect(() => checkDoor({ ...door, origin })).toThrow(/--origin: found/)
    },
  )

  it.each([-1, 65_536, 1.5, Number.NaN])('refuses the port %s', (port) => {
    expect(() => checkDoor({ ...door, port })).toThrow(/--port: found/)
  })
})
