// Finds a Chromium for the end-to-end tests, and on Debian installs the distribution's own where there is none.
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
]

export function findChromium() {
  const named = process.env.CASTWRIGHT_CHROMIUM
  if (named !== undefined && existsSync(named)) return named
  const place = PLACES.find((path) => existsSync(path))
  if (place !== undefined) return place
  const found = spawnSync('which', ['chromium', 'chromium-browser', 'google-chrome'], { encoding: 'utf8' })
  const first = found.stdout?.split('\n').find((line) => line !== '')
  return first ?? null
}

/** Path of a Chromium. Installs Debian's where apt-get is there and may be used; throws saying what to do otherwise. */
export function ensureChromium() {
  const found = findChromium()
  if (found !== null) return found
  if (!existsSync('/usr/bin/apt-get')) {
    throw new Error('No Chromium found. Install one, or name it in CASTWRIGHT_CHROMIUM.')
  }
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n']
  console.log('Chromium is missing: installing the distribution’s own with apt-get.')
  for (const args of [
    ['update'],
    ['install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'],
  ]) {
    const [command, ...rest] = [...sudo, 'apt-get', ...args]
    execFileSync(command, rest, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  }
  const installed = findChromium()
  if (installed === null)
    throw new Error('apt-get brought no Chromium. Install one, or name it in CASTWRIGHT_CHROMIUM.')
  return installed
}
