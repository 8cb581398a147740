import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  drawingOf,
  ENGINEER,
  FLOOR,
  LEAD,
  type TestVisitor,
  type TestYard,
  testYard,
  VIEWER,
  YARD,
} from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
beforeEach(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
})
afterEach(() => yard.end())

const JOB = {
  format: 'castwright.job/1',
  mark: 'J1',
  yard: 'Mill End',
  drawings: [drawingOf('W1', { revision: 'A' }), drawingOf('W2', { revision: 'A' })],
  due: { W1: '2026-04-01' },
} as const

const bring = (body: unknown, visitor = lead) => visitor.post('/api/import', body)
const issues = (body: Record<string, unknown>) =>
  body.issues as { path: string; found: string; expected: string }[]

describe('import', () => {
  it('takes a yard, and the app is set up then', async () => {
    expect((await lead.get('/api/session')).body.needsSetup).toBe(true)
    const { status, body } = await bring(YARD)
    expect(status).toBe(200)
    expect(body).toMatchObject({ stored: 1, known: 0, assumed: [] })
    expect((await lead.get('/api/session')).body.needsSetup).toBe(false)
    const state = await yard.log.state()
    expect(state.yard.yard).toEqual(YARD)
    expect(state.flags).toEqual([])
  })

  it('takes a job with its drawings, and again nothing of what is there just so', async () => {
    const { body } = await bring(JOB)
    expect(body).toMatchObject({ stored: 3, known: 0 })
    expect((body.ids as string[]).length).toBe(3)
    expect((await bring(JOB)).body).toMatchObject({ stored: 0, known: 3, ids: [] })
    const engineer = await yard.enter(ENGINEER)
    const next = { ...JOB, drawings: [drawingOf('W1', { revision: 'B', thickness: 160 }), JOB.drawings[1]] }
    expect((await bring(next, engineer)).body).toMatchObject({ stored: 1, known: 2 })
    const state = await yard.log.state()
    expect(state.panels.get('J1/W1')).toMatchObject({ revision: 'B', drawing: { thickness: 160 } })
    expect(state.flags).toEqual([])
  })

  it('takes a drawing without job and revision, and says what it took in their place', async () => {
    const { body } = await bring(drawingOf('W9'))
    expect(body).toMatchObject({ stored: 1 })
    expect(body.assumed).toEqual([
      { field: 'job', value: 'loose', unit: '', why: expect.stringMatching(/names no job/) },
      { field: 'revision', value: '1', unit: '', why: expect.stringMatching(/no revision/) },
    ])
    expect((await bring(drawingOf('W9'))).body).toMatchObject({ stored: 0, known: 1 })
    const changed = await bring(drawingOf('W9', { thickness: 200 }))
    expect(changed.status).toBe(422)
    expect(issues(changed.body)).toEqual([expect.objectContaining({ path: 'revision', found: 'nothing' })])
    expect((await bring(drawingOf('W9', { thickness: 200, revision: '2' }))).body).toMatchObject({
      stored: 1,
    })
  })

  it('takes all or nothing, and names each fault by its place', async () => {
    const crossing = {
      ...drawingOf('W3'),
      outline: [
        [0, 0],
        [1000, 1000],
        [1000, 0],
        [0, 1000],
      ],
    }
    const pieces = {
      ...drawingOf('W4'),
      openings: [
        {
          mark: 'O',
          outline: [
            [2000, -1],
            [2100, -1],
            [2100, 3001],
            [2000, 3001],
          ],
        },
      ],
    }
    const { status, body } = await bring({
      ...JOB,
      drawings: [...JOB.drawings, crossing, pieces, drawingOf('W1'), { ...drawingOf('W6'), colour: 'red' }],
    })
    expect(status).toBe(422)
    expect(issues(body).map(({ path }) => path)).toEqual([
      expect.stringMatching(/^drawings\[2\]\.outline\[\d\]$/),
      'drawings[3].openings',
      'drawings[4].mark',
      'drawings[5].colour',
    ])
    expect(await yard.store.size()).toBe(0)
  })

  it.each([
    [{ format: 'castwright.drawing/2' }, 'format'],
    [[], 'format'],
    [null, 'format'],
    [{ ...YARD, timezone: 'Mars/Base' }, 'timezone'],
    [{ ...YARD, people: [] }, 'people'],
    [{ ...JOB, mark: 'J/1' }, 'mark'],
    [{ ...drawingOf('W1'), thickness: -1 }, 'thickness'],
    [{ ...drawingOf('W1'), thickness: '150' }, 'thickness'],
    [{ ...JOB, drawings: [drawingOf('W1', { job: 'J2' })] }, 'drawings[0].job'],
  ])('refuses %j and names %s', async (body, path) => {
    const answer = await bring(body)
    expect(answer.status).toBe(422)
    expect(issues(answer.body).map((issue) => issue.path)).toContain(path)
    expect(await yard.store.size()).toBe(0)
  })

  it('refuses a job of another yard', async () => {
    await bring(YARD)
    expect(issues((await bring({ ...JOB, yard: 'Elsewhere' })).body)).toEqual([
      expect.objectContaining({ path: 'yard', found: '"Elsewhere"' }),
    ])
  })

  it('is for leads and engineers', async () => {
    for (const person of [FLOOR, VIEWER]) {
      expect((await bring(YARD, await yard.enter(person))).status).toBe(403)
    }
    expect((await bring(YARD, yard.visitor())).status).toBe(401)
  })

  it('takes a large job and no larger file than it may', async () => {
    const drawings = Array.from({ length: 1000 }, (_, i) => drawingOf(`P${i}`, { revision: 'A' }))
    expect((await bring({ ...JOB, drawings })).body).toMatchObject({ stored: 1001 })
    const { status } = await bring({ ...JOB, mark: 'x'.repeat(33 * 1024 * 1024) })
    expect(status).toBe(413)
  })
})

describe('export', () => {
  it('gives the drawings in force in a form that can be brought in again', async () => {
    await bring(JOB)
    await bring({ ...JOB.drawings[0], job: 'J1', revision: 'B', thickness: 170 })
    const { status, body, headers } = await lead.get('/api/export/J1')
    expect(status).toBe(200)
    expect(headers.get('content-disposition')).toBe('attachment; filename="J1.json"')
    expect(body).toMatchObject({ format: 'castwright.job/1', mark: 'J1', yard: 'Mill End', due: JOB.due })
    const marks = (body.drawings as { mark: string; revision: string }[]).map(
      (one) => `${one.mark} ${one.revision}`,
    )
    expect(marks).toEqual(['W1 B', 'W2 A'])
    expect((await bring(body)).body).toMatchObject({ stored: 0, known: 3 })
  })

  it('says when there is no such job', async () => {
    expect((await lead.get('/api/export/J7')).status).toBe(404)
    expect((await yard.visitor().get('/api/export/J1')).status).toBe(401)
  })
})
