/** Code families by their short names. Apart from the drawing schema, so that who needs only the names loads no schema. */
export const FAMILY_IDS = ['nz', 'au', 'eu', 'us'] as const
