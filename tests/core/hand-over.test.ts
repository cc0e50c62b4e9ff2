import { describe, expect, it } from 'vitest'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { readJobFile } from '../../shared-core/plan/read.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { plannedNumbers, shotAsPlanned } from '../../shared-core/notebook/asShot.ts'
import { handOverFiles, type HandOverParts } from '../../shared-core/notebook/handOver/handOver.ts'
import { asShotKey } from '../../shared-core/rig/asShot.ts'
import { standsOf } from '../../shared-core/stands/stand.ts'

const predict = createPredictor()

function handed(lookId: string, parts: Partial<HandOverParts> = {}): Readonly<Record<string, string>> {
  const files = handOverFiles({
    plan, lookId, prediction: predict(parts.plan ?? plan, lookId), asShot: {}, notes: [], locks: [], units: 'metric',
    pictureNames: ['Frame.png', 'A alone.png'], photographs: [], madeMs: Date.UTC(2026, 2, 14), ...parts,
  })
  return Object.fromEntries(files.map(({ name, text }) => [name, text]))
}

/** What a retoucher has to be able to read from the folder alone: the job's own list of it, as the trade has it. Common practice, no source. */
describe('the folder for retouch', () => {
  it('names every file and picture in the one that is read first', () => {
    const files = handed('dusk')
    const readme = files['READ ME FIRST.txt']!
    for (const name of [...Object.keys(files).filter((one) => one !== 'READ ME FIRST.txt'), 'Frame.png', 'A alone.png']) expect(readme).toContain(`- ${name}: `)
    expect(readme).toContain('Made 2026-03-14.')
  })

  it('says that a white background has to be white and that a cast of its gel is a fault', () => {
    const meant = handed('first-light')['What is meant.txt']!
    expect(meant).toContain('Background: pure white, into every corner. A pistachio cast or a grey corner is a FAULT.')
    expect(meant).toMatch(/^B and D, background: .*pistachio on .* is THE LOOK/m)
  })

  it('says that the violet and the glow are wanted, and that the lips are not to be tinted', () => {
    const files = handed('dusk')
    const meant = files['What is meant.txt']!
    expect(meant).toMatch(/^C, shadow side: violet on .*camera-right cheek.* is THE LOOK/m)
    expect(meant).toContain('a glow in moss')
    expect(meant).toMatch(/Lips: must read true\. .*FAULT\. Take its colour from the clean plate/)
    expect(files['Clean plates.txt']).toContain('lips: a frame by A alone')
  })

  it('tells an accepted snag as the look and one that nobody accepted as a fault', () => {
    const snag = predict(plan, 'dusk').snags.find(({ rule }) => rule === 'spill')!
    const { key, severity, value, message } = snag
    const dusk = plan.looks['dusk']!
    const accepting = { ...plan, looks: { ...plan.looks, dusk: { ...dusk, accepted: { [key]: { by: 'Pell', atMs: Date.UTC(2026, 2, 1), severity, value, message } } } } }
    expect(handed('dusk')['What is meant.txt']).toMatch(new RegExp(`is a FAULT:\\n(- .*\\n)*- ${message}`))
    const meant = handed('dusk', { plan: accepting })['What is meant.txt']!
    expect(meant).toContain(`Seen and wanted so (THE LOOK):\n- ${message} (Pell, 2026-03-01)`)
    expect(meant.split(message)).toHaveLength(2)
  })

  it('has the recipe of white balance, white point and contrast as the look keeps it', () => {
    const dusk = plan.looks['dusk']!
    const finished = { ...plan, looks: { dusk: { ...dusk, finish: { exposureStops: 0.3, whitePointStops: 0.5, contrast: 0.2, blackPoint: 0.01 } } } }
    const recipe = handed('dusk', { plan: finished })['Recipe.txt']!
    for (const words of ['5500 K, fixed', 'Exposure: +0.3 stops', 'pull white down by +0.5 stops', 'up by 20 % of the slope', '1 % of full scale']) expect(recipe).toContain(words)
  })

  it('has the plan as planned and as shot, both to be opened on a board, with that look alone', () => {
    const stand = standsOf(plan, 'dusk', predict(plan, 'dusk')).find(({ name }) => name === 'B')!
    const planned = plannedNumbers(stand)
    const asShot = { [asShotKey('dusk', 'b')]: { lookId: 'dusk', standId: 'b', by: { name: 'Tobin', atMs: 0 }, planned, shot: { ...planned, heightMetres: 1.9, energyJoules: 500 }, note: '' } }
    const files = handed('dusk', { asShot })
    const [was, is] = ['Plan as planned.halfstop.json', 'Plan as shot.halfstop.json'].map((name) => readJobFile(files[name]!))
    if (!was!.ok || !is!.ok) throw new Error('not readable')
    expect(Object.keys(was!.plan.looks)).toEqual(['dusk'])
    expect(was!.plan.looks['dusk']).toEqual(plan.looks['dusk'])
    expect(is!.plan.looks['dusk']!.lights['b']).toMatchObject({ energyJoules: 500, place: { zMetres: 1.9 } })
    expect(files['As shot.txt']).toContain('Otherwise: height: planned 1.75 m, as shot 1.90 m.')
    expect(files['As shot.txt']).toContain('A: not recorded at wrap')
  })

  it('says what a light reads only where somebody read it: a prediction is no reading', () => {
    const lights = standsOf(plan, 'dusk', predict(plan, 'dusk')).filter(({ kind }) => kind === 'light')
    const by = { name: 'Tobin', atMs: 0 }
    const asPlanned = Object.fromEntries(lights.map((stand) => [asShotKey('dusk', stand.id), { lookId: 'dusk', standId: stand.id, by, planned: plannedNumbers(stand), shot: shotAsPlanned(stand), note: '' }]))
    // What was to be read is kept beside it all the same.
    for (const { planned } of Object.values(asPlanned)) expect(planned.readingFNumber).not.toBeNull()
    const text = handed('dusk', { asShot: asPlanned })['As shot.txt']!
    expect(text.match(/As planned\./g)).toHaveLength(lights.length)
    expect(text).not.toMatch(/reads|reading/)
    const key = asShotKey('dusk', 'b')
    const read = { ...asPlanned, [key]: { ...asPlanned[key]!, shot: { ...asPlanned[key]!.shot, readingFNumber: 5.6 } } }
    expect(handed('dusk', { asShot: read })['As shot.txt']!.match(/reads f\/5\.6/g)).toHaveLength(1)
  })

  it('lists every photograph beside its stand, and names those that could not be had', () => {
    const photographs = [
      { standId: 'a', name: 'photographs/A-1.jpg', missing: null }, { standId: 'a', name: 'photographs/A-2.jpg', missing: 'the relay did not answer' },
      { standId: 'gone', name: 'photographs/a stand that is gone-1.jpg', missing: null },
    ]
    const files = handed('dusk', { photographs })
    const text = files['As shot.txt']!
    expect(text).toMatch(/^A: not recorded at wrap.*\n {2}Photograph: photographs\/A-1\.jpg\.\n {2}MISSING: photographs\/A-2\.jpg: the relay did not answer\.$/m)
    expect(text).toMatch(/no longer in the look:\n {2}Photograph: photographs\/a stand that is gone-1\.jpg/)
    expect(files['READ ME FIRST.txt']).toMatch(/^- photographs: 2 of the stands at wrap.*; 1 is MISSING, named in “As shot\.txt”$/m)
    expect(handed('dusk')['READ ME FIRST.txt']).not.toContain('photographs')
  })

  it('carries what was said, and who agreed to what', () => {
    const files = handed('dusk', {
      notes: [{ by: 'Pell', words: 'keep the rose here', where: 'camera-right jaw' }],
      locks: [{ number: 2, by: 'Ines', atMs: 0, conditions: 'flag at the jaw', stands: true, chainEnd: 'abc', yeses: [{ by: 'Saskia', words: 'lovely', atMs: 0 }] }],
    })
    expect(files['What is meant.txt']).toContain('- camera-right jaw: “keep the rose here” (Pell)')
    expect(files['Agreed.txt']).toMatch(/Lock 2, by Ines.*it stands\.\n {2}On condition: flag at the jaw\n {2}Yes from Saskia.*“lovely”\n {2}Seal: abc/)
    expect(handed('dusk')['Agreed.txt']).toContain('nobody’s yes is on record')
  })
})
