import { describe, expect, it } from 'vitest'
import { faceRuns } from './face.ts'
import { Paper } from './paper.ts'

const MADE = '2026-05-12T09:00:00.000Z'

async function sample(rows: number): Promise<Uint8Array> {
  const paper = new Paper({ title: 'Sample', size: 'a4', made: MADE, foot: 'W1, drawing A' })
  paper.heading('Sample', 1)
  paper.cells([
    ['Mass', '6.75 t'],
    ['Size', '6.0 × 3.0 m'],
  ])
  paper.table(
    [
      { head: 'Mark', share: 1 },
      { head: 'Length, mm', share: 1, align: 'right' },
    ],
    Array.from({ length: rows }, (_, index) => [`T${index + 1}`, String(1000 + index)]),
  )
  paper.framed('Nobody under the panel.', 'The lead decides.')
  paper.signatures(['Lead', 'Engineer'])
  return paper.finish()
}

describe('a sheet of paper', () => {
  it('is tagged PDF with a title and a language', async () => {
    const text = Buffer.from(await sample(3)).toString('latin1')
    expect(text.startsWith('%PDF-1.7')).toBe(true)
    expect(text).toContain('/MarkInfo')
    expect(text).toContain('/StructTreeRoot')
    expect(text).toContain('pdfuaid')
  })

  it('is the same to the byte when made again', async () => {
    expect(Buffer.from(await sample(3)).equals(Buffer.from(await sample(3)))).toBe(true)
  })

  it('breaks a long table into pages', async () => {
    const pages = (bytes: Uint8Array): number =>
      (
        Buffer.from(bytes)
          .toString('latin1')
          .match(/\/Type \/Page\b/g) ?? []
      ).length
    expect(pages(await sample(3))).toBe(1)
    expect(pages(await sample(120))).toBeGreaterThan(2)
  })
})

describe('faces', () => {
  it('keeps letters of other alphabets of Europe and names signs that no face has', () => {
    expect(faceRuns('Łódź', false).map((run) => run.face)).toContain('regular-ext')
    expect(faceRuns('日', true)).toEqual([{ face: 'bold', text: '[U+65E5]' }])
  })
})
