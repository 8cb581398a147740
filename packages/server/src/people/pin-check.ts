import type { Account, People } from '@castwright/record/store'
import type { Clock } from '../door/clock.ts'
import { Tries } from '../guard/tries.ts'
import { Problem } from '../problem.ts'
import { isNobodysPin, isPin } from './pin.ts'

const SECOND = 1000
const MINUTE = 60 * SECOND
const HOUR = 60 * MINUTE

/** Wrong PINs of one person: five free, then 5 s, 10 s, 20 s … up to a quarter of an hour. */
const BY_PERSON = { free: 5, first: 5 * SECOND, most: 15 * MINUTE, forget: 24 * HOUR }
/** Wrong PINs from one address, whoever they were for: a shared tablet must not be shut by one tired hand. */
const BY_ADDRESS = { free: 20, first: 5 * SECOND, most: 15 * MINUTE, forget: HOUR }

export interface PinTry {
  readonly person: string
  readonly pin: string
  readonly address: string
}

/** Whether a PIN is its person's, with a limit on tries by person and by address. */
export class PinCheck {
  private readonly people: People
  private readonly byPerson: Tries
  private readonly byAddress: Tries

  constructor({ people, clock }: { readonly people: People; readonly clock: Clock }) {
    this.people = people
    this.byPerson = new Tries(clock, BY_PERSON)
    this.byAddress = new Tries(clock, BY_ADDRESS)
  }

  /**
   * The account whose PIN it is.
   *
   * @throws Problem 401 where they do not fit, the same for nobody, no PIN and an account that is closed; 429 after tries.
   */
  async check({ person, pin, address }: PinTry): Promise<Account> {
    const wait = Math.max(this.byPerson.wait(person), this.byAddress.wait(address))
    if (wait > 0) {
      const seconds = Math.ceil(wait / SECOND)
      throw new Problem('too-many-tries', `Try again in ${seconds} s.`, {
        headers: { 'retry-after': String(seconds) },
      })
    }
    this.byPerson.count(person)
    this.byAddress.count(address)
    const account = await this.people.find(person)
    const fits =
      account?.active && account.pinHash !== null
        ? await isPin(account.pinHash, pin)
        : await isNobodysPin(pin)
    if (account === null || !fits) throw new Problem('wrong-pin', 'Person and PIN do not fit.')
    this.byPerson.clear(person)
    this.byAddress.takeBack(address)
    return account
  }
}
