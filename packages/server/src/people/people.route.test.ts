import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ENGINEER, FLOOR, LEAD, OTHER_LEAD, PIN, START, type TestYard, testYard, VIEWER } from '../testing.ts'

let yard: TestYard
beforeAll(async () => {
  yard = await testYard()
})
afterAll(() => yard.end())

describe('session', () => {
  it('answers without anyone signed in', async () => {
    const { status, body } = await yard.visitor().get('/api/session')
    expect(status).toBe(200)
    expect(body).toEqual({
      person: null,
      device: null,
      yard: 'test-yard',
      now: new Date(yard.now).toISOString(),
      demo: false,
      needsSetup: true,
    })
  })

  it('starts with the right PIN and a cookie that no script reads', async () => {
    const visitor = yard.visitor()
    const { status, body, headers } = await visitor.post('/api/session', { person: FLOOR.id, pin: PIN })
    expect(status).toBe(200)
    expect(body.person).toEqual(FLOOR)
    expect(headers.get('set-cookie')).toMatch(
      /^castwright_session=[A-Za-z0-9_-]{43}; Max-Age=1209600; Path=\/; HttpOnly; SameSite=Strict$/,
    )
    expect((await visitor.get('/api/session')).body.person).toEqual(FLOOR)
  })

  it('puts Secure on the cookie under TLS, also a proxy’s', async () => {
    const secure = await testYard({ origin: 'https://yard.example' })
    try {
      const { headers } = await secure
        .visitor()
        .post('/api/session', { person: FLOOR.id, pin: PIN }, { origin: 'https://yard.example' })
      expect(headers.get('set-cookie')).toMatch(/; Secure/)
      expect(headers.get('strict-transport-security')).toMatch(/max-age=\d+/)
    } finally {
      await secure.end()
    }
  })

  it('gives the same answer for a wrong PIN and for nobody', async () => {
    const wrong = await yard.visitor().post('/api/session', { person: VIEWER.id, pin: '00000000' })
    const nobody = await yard.visitor().post('/api/session', { person: 'nobody', pin: '00000000' })
    expect(wrong.status).toBe(401)
    expect(nobody.body).toEqual(wrong.body)
    expect(wrong.headers.get('content-type')).toBe('application/problem+json')
  })

  it.each([
    [{ person: LEAD.id }, 'pin'],
    [{ person: LEAD.id, pin: 12345678 }, 'pin'],
    [{ person: '', pin: PIN }, 'person'],
    [{ person: LEAD.id, pin: PIN, role: 'lead' }, 'role'],
    [[], ''],
  ])('refuses the body %j and names %s', async (body, path) => {
    const answer = await yard.visitor().post('/api/session', body)
    expect(answer.status).toBe(422)
    expect((answer.body.issues as { path: string }[]).map((issue) => issue.path)).toContain(path)
  })

  it('ends at sign-out, and the old cookie opens nothing', async () => {
    const visitor = await yard.enter(FLOOR)
    const old = visitor.cookie
    expect((await visitor.ask('DELETE', '/api/session')).body.person).toBeNull()
    visitor.cookie = old
    expect((await visitor.get('/api/session')).body.person).toBeNull()
    expect((await visitor.get('/api/entries')).status).toBe(401)
  })

  it('ends two weeks after the sign-in', async () => {
    const other = await testYard()
    try {
      const visitor = await other.enter(FLOOR)
      other.now = START + 14 * 86_400_000 - 1
      expect((await visitor.get('/api/session')).body.person).toEqual(FLOOR)
      other.now += 1
      expect((await visitor.get('/api/session')).body.person).toBeNull()
    } finally {
      await other.end()
    }
  })

  it('is another one after a second sign-in on the same device', async () => {
    const visitor = await yard.enter(FLOOR)
    const old = visitor.cookie
    await visitor.post('/api/session', { person: LEAD.id, pin: PIN })
    expect((await visitor.get('/api/session')).body.person).toEqual(LEAD)
    const back = yard.visitor()
    back.cookie = old
    expect((await back.get('/api/session')).body.person).toBeNull()
  })

  it('of a cookie that was made up is nobody’s', async () => {
    for (const cookie of [
      'castwright_session=x',
      `castwright_session=${'A'.repeat(43)}`,
      'castwright_session=',
    ]) {
      const visitor = yard.visitor()
      visitor.cookie = cookie
      expect((await visitor.get('/api/session')).body.person).toBeNull()
    }
  })
})

describe('limit on tries', () => {
  it('makes a person wait longer with each wrong PIN, also with the right one', async () => {
    const other = await testYard()
    const attempt = (pin: string) => other.visitor().post('/api/session', { person: LEAD.id, pin })
    try {
      for (let i = 0; i < 5; i++) expect((await attempt('00000000')).status).toBe(401)
      const shut = await attempt(PIN)
      expect(shut.status).toBe(429)
      expect(shut.headers.get('retry-after')).toBe('5')
      // Somebody else at the same address still can.
      expect((await other.visitor().post('/api/session', { person: FLOOR.id, pin: PIN })).status).toBe(200)
      other.now += 5000
      expect((await attempt('00000000')).status).toBe(401)
      expect((await attempt(PIN)).headers.get('retry-after')).toBe('10')
      other.now += 10_000
      expect((await attempt(PIN)).status).toBe(200)
      expect((await attempt('00000000')).status).toBe(401)
      expect((await attempt(PIN)).status).toBe(200)
    } finally {
      await other.end()
    }
  })

  it('counts tries that come all at once', async () => {
    const other = await testYard()
    try {
      const answers = await Promise.all(
        Array.from({ length: 30 }, (_, i) =>
          other.visitor().post('/api/session', { person: LEAD.id, pin: String(10_000_000 + i) }),
        ),
      )
      expect(answers.filter(({ status }) => status === 401).length).toBe(5)
      expect(answers.filter(({ status }) => status === 429).length).toBe(25)
    } finally {
      await other.end()
    }
  })

  it('holds an address that tries many names, and no other address', async () => {
    const other = await testYard({ addressOf: (c) => c.req.header('x-test-address') ?? 'one' })
    try {
      for (let i = 0; i < 20; i++) {
        const { status } = await other
          .visitor()
          .post('/api/session', { person: `name-${i}`, pin: '00000000' })
        expect(status).toBe(401)
      }
      const here = await other.visitor().post('/api/session', { person: LEAD.id, pin: PIN })
      expect(here.status).toBe(429)
      const there = await other
        .visitor()
        .post('/api/session', { person: LEAD.id, pin: PIN }, { 'x-test-address': 'two' })
      expect(there.status).toBe(200)
    } finally {
      await other.end()
    }
  })
})

describe('people', () => {
  it('are named without a session and without anything secret', async () => {
    const { status, body } = await yard.visitor().get('/api/people')
    expect(status).toBe(200)
    expect(body).toContainEqual({ ...LEAD, active: true })
    expect(JSON.stringify(body)).not.toMatch(/argon2|pin/i)
  })

  it('are added by a lead, and sign in at once', async () => {
    const lead = await yard.enter(LEAD)
    const { status, body } = await lead.post('/api/people', {
      name: 'Zoë Núñez',
      role: 'engineer',
      pin: '90817263',
    })
    expect(status).toBe(201)
    expect(body).toEqual({ id: 'zoe-nunez', name: 'Zoë Núñez', role: 'engineer', active: true })
    const again = await lead.post('/api/people', { name: 'Zoe Nunez', role: 'floor', pin: '90817263' })
    expect(again.body.id).toBe('zoe-nunez-2')
    const entered = await yard.visitor().post('/api/session', { person: 'zoe-nunez', pin: '90817263' })
    expect(entered.status).toBe(200)
  })

  it('are added by an engineer only as floor or viewer, and by nobody else', async () => {
    const engineer = await yard.enter(ENGINEER)
    const added = (role: string) => engineer.post('/api/people', { name: 'New One', role, pin: '90817263' })
    expect((await added('floor')).status).toBe(201)
    expect((await added('viewer')).status).toBe(201)
    expect((await added('engineer')).status).toBe(403)
    expect((await added('lead')).status).toBe(403)
    for (const person of [FLOOR, VIEWER]) {
      const visitor = await yard.enter(person)
      const { status } = await visitor.post('/api/people', { name: 'X', role: 'viewer', pin: '90817263' })
      expect(status).toBe(403)
    }
    const nobody = await yard.visitor().post('/api/people', { name: 'X', role: 'viewer', pin: '90817263' })
    expect(nobody.status).toBe(401)
  })

  it.each([
    [{ name: '', role: 'floor', pin: '90817263' }, 'name'],
    [{ name: 'X', role: 'boss', pin: '90817263' }, 'role'],
    [{ name: 'X', role: 'floor', pin: '12345' }, 'pin'],
    [{ name: 'X', role: 'floor', pin: 'secret' }, 'pin'],
    [{ name: 'X', role: 'floor', pin: '90817263', id: 'x' }, 'id'],
  ])('are refused as %j, naming %s', async (body, path) => {
    const lead = await yard.enter(LEAD)
    const answer = await lead.post('/api/people', body)
    expect(answer.status).toBe(422)
    expect(answer.body.issues).toEqual([expect.objectContaining({ path })])
  })

  it('change their own PIN with the old one; other devices are signed out', async () => {
    const other = await testYard()
    try {
      const [here, there] = [await other.enter(FLOOR), await other.enter(FLOOR)]
      const path = `/api/people/${FLOOR.id}`
      expect((await here.json('PATCH', path, { pin: '11223344' })).status).toBe(422)
      expect((await here.json('PATCH', path, { pin: '11223344', current: '99999999' })).status).toBe(401)
      expect((await here.json('PATCH', path, { pin: '11223344', current: PIN })).status).toBe(200)
      expect((await here.get('/api/session')).body.person).toEqual(FLOOR)
      expect((await there.get('/api/session')).body.person).toBeNull()
      const attempt = (pin: string) => other.visitor().post('/api/session', { person: FLOOR.id, pin })
      expect((await attempt(PIN)).status).toBe(401)
      expect((await attempt('11223344')).status).toBe(200)
    } finally {
      await other.end()
    }
  })

  it('are shut out by a lead at once, and only by a lead', async () => {
    const other = await testYard()
    try {
      const [lead, floor, engineer] = [
        await other.enter(LEAD),
        await other.enter(FLOOR),
        await other.enter(ENGINEER),
      ]
      const path = `/api/people/${FLOOR.id}`
      expect((await engineer.json('PATCH', path, { active: false })).status).toBe(403)
      expect((await floor.json('PATCH', path, { active: false })).status).toBe(403)
      expect((await engineer.json('PATCH', path, { pin: '11223344', current: PIN })).status).toBe(403)
      expect((await lead.json('PATCH', path, { active: false })).body.active).toBe(false)
      expect((await floor.get('/api/entries')).status).toBe(401)
      expect((await other.visitor().post('/api/session', { person: FLOOR.id, pin: PIN })).status).toBe(401)
      expect((await lead.json('PATCH', path, { active: true })).status).toBe(200)
      await other.enter(FLOOR)
    } finally {
      await other.end()
    }
  })

  it('keep a last lead', async () => {
    const other = await testYard()
    try {
      const lead = await other.enter(LEAD)
      expect((await lead.json('PATCH', `/api/people/${OTHER_LEAD.id}`, { active: false })).status).toBe(200)
      expect((await lead.json('PATCH', `/api/people/${LEAD.id}`, { active: false })).status).toBe(409)
      expect((await lead.json('PATCH', '/api/people/nobody', { active: false })).status).toBe(404)
    } finally {
      await other.end()
    }
  })
})
