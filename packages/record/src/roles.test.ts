import { describe, expect, it } from 'vitest'
import { ENTRY_KINDS, type EntryKind, ROLES } from './entry.ts'
import { entitledTo, mayMake, mayOpen } from './roles.ts'

describe('who may make what', () => {
  it('lets a viewer make nothing', () => {
    for (const kind of ENTRY_KINDS) expect(mayMake('viewer', kind)).toBe(false)
  })

  it.each<[EntryKind, string]>([
    ['request', 'lead'],
    ['design', 'engineer'],
    ['difference', 'engineer'],
    ['limit', 'engineer'],
    ['gear', 'lead'],
    ['disposition', 'engineer lead'],
    ['decision', 'engineer lead'],
    ['drawing', 'engineer lead'],
    ['yard', 'engineer lead'],
    ['job', 'engineer lead'],
    ['value', 'engineer floor lead'],
    ['photo', 'engineer floor lead'],
    ['cast', 'engineer floor lead'],
    ['docket', 'engineer floor lead'],
    ['docket-decision', 'engineer lead'],
    ['specimen', 'engineer floor lead'],
    ['specimen-set', 'engineer floor lead'],
    ['defect', 'engineer floor lead'],
  ])('lets %s be made by: %s', (kind, roles) => {
    expect(
      ROLES.filter((role) => mayMake(role, kind))
        .sort()
        .join(' '),
    ).toBe(roles)
    expect([...entitledTo(kind)].sort().join(' ')).toBe(roles)
  })

  it('lets nobody make an opening; the record makes it for a lead', () => {
    for (const role of ROLES) expect(mayMake(role, 'opening')).toBe(false)
    expect(ROLES.filter(mayOpen)).toEqual(['lead'])
  })

  it('lets a correction be made by who may make what it corrects', () => {
    expect(mayMake('floor', 'correction', { kind: 'value' })).toBe(true)
    expect(mayMake('floor', 'correction', { kind: 'limit' })).toBe(false)
    expect(mayMake('engineer', 'correction', { kind: 'limit' })).toBe(true)
    expect(mayMake('lead', 'correction', { kind: 'difference' })).toBe(false)
    expect(mayMake('engineer', 'correction', { kind: 'difference' })).toBe(true)
    expect(mayMake('viewer', 'correction', { kind: 'value' })).toBe(false)
  })
})
