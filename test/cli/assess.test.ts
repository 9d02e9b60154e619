import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { runCli } from '../../src/cli/runCli.ts';
import { demoPractice } from '../../src/content/demo/practice.ts';
import { cliIoOf } from '../cliIo.ts';
import { readPdf } from '../leaflet/readPdf.ts';

const example = () => JSON.parse(readFileSync('examples/01-returning-adult.json', 'utf8')) as VisitJson;

/** As much of a visit file as these tests change. */
interface VisitJson {
  [field: string]: unknown;
  practice: unknown;
  person: { [field: string]: unknown };
  visit: {
    [field: string]: unknown;
    answers: Record<string, unknown>;
    reading: { [field: string]: unknown };
    confirmed: { [field: string]: unknown };
  };
}

function changed(change: (file: VisitJson) => void): string {
  const file = example();
  change(file);
  return JSON.stringify(file);
}

async function run(argv: readonly string[], input: string | readonly string[], over: Parameters<typeof cliIoOf>[1] = {}) {
  const io = cliIoOf(input, over);
  return { code: await runCli(argv, io), ...io };
}

describe('bad input is one sentence that names the field, exit 2', () => {
  test.each<[string, (file: VisitJson) => void, string, RegExp]>([
    ['a letter for a number', (f) => Object.assign(f.visit.reading, { rlu: 'x' }), 'visit.reading.rlu', /must be a number/],
    ['a reading of -5', (f) => Object.assign(f.visit.reading, { rlu: -5 }), 'visit.reading.rlu', /cannot be below 0/],
    [
      'a reading beyond the meter',
      (f) => Object.assign(f.visit.reading, { rlu: 60_001 }),
      'visit.reading.rlu',
      /outside what Demo meter A can show, 40 to 60000 RLU/,
    ],
    [
      'a birthday tomorrow',
      (f) => Object.assign(f.person, { birthDate: '2026-11-26' }),
      'person.birthDate',
      /2026-11-26 is after the visit on 2026-11-25/,
    ],
    [
      'a visit before birth',
      (f) => Object.assign(f.visit, { onDate: '1980-01-01', pastReadings: [], reading: {} }),
      'person.birthDate',
      /after the visit on 1980-01-01/,
    ],
    [
      'an unknown item',
      (f) => Object.assign(f.visit.answers, { shoe_size: { how: 'asked', value: 42 } }),
      'visit.answers.shoe_size',
      /not a question/,
    ],
    ['an unknown field', (f) => Object.assign(f.visit, { colour: 'blue' }), 'visit.colour', /not a known field/],
    ['an unknown lot', (f) => Object.assign(f.visit.reading, { lotId: 'lot-oak' }), 'visit.reading.lotId', /"lot-oak" is not one of/],
    [
      'a yes-no answered with a number',
      (f) => Object.assign(f.visit.answers, { plaque_heavy: { how: 'asked', value: 3 } }),
      'visit.answers.plaque_heavy.value',
      /true or false/,
    ],
    [
      'more snacks than the question takes',
      (f) => Object.assign(f.visit.answers, { snacks_per_day: { how: 'asked', value: 40 } }),
      'visit.answers.snacks_per_day.value',
      /40 is above 9/,
    ],
    [
      'an unknown medicine',
      (f) => Object.assign(f.visit.answers, { medicines: { how: 'asked', value: ['tea'] } }),
      'visit.answers.medicines.value',
      /"tea" is not one of/,
    ],
    ['no such day', (f) => Object.assign(f.visit, { onDate: '2026-02-30' }), 'visit.onDate', /must be a date/],
    [
      'a changed level without a reason',
      (f) => Object.assign(f.visit.confirmed, { changedFrom: 'low' }),
      'visit.confirmed.reason',
      /needs a reason/,
    ],
    ['another format', (f) => Object.assign(f, { ebbline: 'visit-7' }), 'ebbline', /must be "visit-1"/],
  ])('%s', async (_, change, path, message) => {
    const { code, out, err } = await run(['assess'], changed(change));
    expect(code).toBe(2);
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(message);
    expect(err[0]?.startsWith(`${path}: `)).toBe(true);
    expect(JSON.parse(out.join())).toEqual({ error: { code: 'INPUT_INVALID', path, message: expect.stringMatching(message) } });
    expect(out.join() + err.join()).not.toMatch(/\.ts:\d|node_modules|Error:/);
  });

  test('a file that is no file', async () => {
    expect(await run(['assess', 'examples/99.json'], '')).toMatchObject({
      code: 2,
      err: ['examples/99.json: cannot be read: there is no such file'],
    });
    expect((await run(['assess', 'examples'], '')).err.join()).toMatch(/^examples: is a folder/);
  });

  test('other fields that are wrong are named too', async () => {
    const { err } = await run(
      ['assess'],
      changed((f) => Object.assign(f.visit, { onDate: 1, signed: null })),
    );
    expect(err).toEqual(['visit.onDate: must be a date like 2026-11-25 (also wrong: visit.signed)']);
  });
});

test('an expired lot is no error: the reading is not counted, and says why', async () => {
  const { code, out } = await run(
    ['assess', '--parts', 'reading'],
    changed((f) => Object.assign(f.visit.reading, { lotId: 'lot-alder' })),
  );
  expect(code).toBe(0);
  expect(JSON.parse(out.join('\n'))).toMatchObject({
    reading: { state: 'void', counted: false, headline: expect.stringMatching(/^Not counted: .*(expired|date)/) },
  });
});

test('an age that no list of the practice takes: no level, and a sentence that says so', async () => {
  const practice = {
    ...demoPractice,
    settings: { ...demoPractice.settings, methodByAge: [{ fromAgeYears: 0, belowAgeYears: null, protocol: 'four_level_0_5_2010' }] },
  };
  const { code, out } = await run(
    ['assess', '--parts', 'risk'],
    changed((f) => Object.assign(f, { practice })),
  );
  expect(code).toBe(0);
  expect(JSON.parse(out.join('\n'))).toMatchObject({ proposed: null, proposedSentence: expect.stringMatching(/not for age 42/) });
});

describe('--lines', () => {
  const visits = Array.from({ length: 1_000 }, (_, i) => changed((f) => Object.assign(f.person, { name: `Invented ${i}` })));

  test('broken JSON on line 500 of 1,000: one sentence names it, the others are unharmed', async () => {
    const broken = visits.map((line, i) => (i === 499 ? line.slice(0, 700) : line));
    const { code, out, err } = await run(['assess', '--lines', '--parts', 'leaflet'], `${broken.join('\n')}\n`);
    expect(code).toBe(1);
    expect(out).toHaveLength(1_000);
    const answers = out.map((line) => JSON.parse(line) as { leaflet?: { personName: string }; error?: { path: string }; line?: number });
    expect(answers.map((answer) => answer.leaflet?.personName ?? `error on line ${answer.line}`)).toEqual(
      visits.map((__, i) => (i === 499 ? 'error on line 500' : `Invented ${i}`)),
    );
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(/^Line 500 is not valid JSON \(.+\), so it got no answer\. 999 of 1000 visits were answered\.$/);
  });

  test('a wrong field on a line is named with its line', async () => {
    const { code, err } = await run(
      ['assess', '-', '--lines'],
      [changed((f) => Object.assign(f.visit.reading, { rlu: 'x' })), '\n', visits[0] ?? ''],
    );
    expect(code).toBe(1);
    expect(err[0]).toMatch(/^Line 1, visit\.reading\.rlu: must be a number, so it got no answer\. 1 of 2 visits was answered\.$/);
  });

  test('draws a bar where somebody watches, and nothing where nobody does', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'ebbline-lines-'));
    const file = join(folder, 'visits.ndjson');
    writeFileSync(file, visits.slice(0, 60).join('\n'));
    const screen = new PassThrough();
    let drawn = '';
    screen.on('data', (chunk: Buffer) => {
      drawn += chunk.toString();
    });
    expect((await run(['assess', file, '--lines'], '', { progress: screen })).code).toBe(0);
    rmSync(folder, { recursive: true });
    expect(drawn).toMatch(/100 %, 60 visits/);
  });
});

describe('what comes out', () => {
  test('JSON unless a terminal watches; then a page', async () => {
    const file = 'examples/01-returning-adult.json';
    expect(JSON.parse((await run(['assess', file], '')).out.join('\n'))).toHaveProperty('plan');
    expect((await run(['assess', file], '', { isTerminal: true })).out.join('\n')).toMatch(/SAFETY CHECK/);
    expect(JSON.parse((await run(['assess', file, '--json'], '', { isTerminal: true })).out.join('\n'))).toHaveProperty('plan');
  });

  test('--parts gives those and no other', async () => {
    const fieldsOf = async (parts: string) => {
      const { out } = await run(['assess', 'examples/01-returning-adult.json', '--parts', parts], '');
      return Object.keys(JSON.parse(out.join('\n')) as object);
    };
    expect(await fieldsOf('leaflet, reading')).toEqual(['reading', 'leaflet', 'leaflets', 'versions']);
    expect(await fieldsOf('plan')).toEqual(['facts', 'confirmed', 'needs', 'plan', 'versions']);
    expect(await fieldsOf('explain')).toEqual(['compare', 'couldChange', 'versions']);
  });

  test.each([
    [['assess', '--parts', 'risk,horoscope'], /no part "horoscope"\. The parts are: reading, risk, plan, explain, leaflet/],
    [['assess', '--lines', '--parts', 'needs'], /no part "needs"/],
    [['assess', '--parts', ' , '], /--parts: names no part/],
    [['assess', '--text', '--lines'], /--text stands alone/],
    [['assess', '--nonsense'], /unknown option '--nonsense'/],
    [['frobnicate'], /unknown command 'frobnicate'/],
    [['leaflet', 'examples/01-returning-adult.json'], /required option '--pdf/],
    [['leaflet', 'examples/01-returning-adult.json', '--pdf', 'x.pdf', '--language', 'de'], /--language: must be one of: en, es, fr, ar/],
  ])('%j is refused with exit 2', async (argv, sentence) => {
    const { code, err } = await run(argv, '');
    expect(code).toBe(2);
    expect(err.join('\n')).toMatch(sentence);
  });

  test('--schema prints the schema that a visit file is held to', async () => {
    const { code, out } = await run(['assess', '--schema'], '');
    expect(code).toBe(0);
    const schema = JSON.parse(out.join('\n')) as { required: string[]; additionalProperties: boolean };
    expect(schema.required).toEqual(['ebbline', 'practice', 'person', 'visit']);
    expect(schema.additionalProperties).toBe(false);
  });

  test.each([['--help'], ['assess', '--help'], ['--version']])('%s is exit 0', async (...argv) => {
    expect((await run(argv, '')).code).toBe(0);
  });
});

describe('leaflet', () => {
  test.each([
    [[], /A4/],
    [['--letter', '--language', 'es'], /Letter/],
  ])('is written as PDF %j', async (options, page) => {
    const folder = mkdtempSync(join(tmpdir(), 'ebbline-leaflet-'));
    const pdf = join(folder, 'leaflet.pdf');
    const { code, out } = await run(['leaflet', 'examples/09-milk-allergy.json', '--pdf', pdf, ...options], '');
    const bytes = readFileSync(pdf);
    rmSync(folder, { recursive: true });
    expect(code).toBe(0);
    expect(out.join()).toMatch(page);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bytes.length).toBeGreaterThan(5_000);
  });

  test('for two homes is a file each, in the language of the home; with --language it is one page', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'ebbline-homes-'));
    const file = join(folder, 'visit.json');
    const pdf = join(folder, 'leaflet.pdf');
    const visit = JSON.parse(readFileSync('examples/07-teenager-with-parent.json', 'utf8'));
    visit.person = {
      ...visit.person,
      name: 'سارة العبد',
      homes: [
        { name: 'con su padre', language: 'es' },
        { name: 'with her mother', language: 'en' },
      ],
    };
    writeFileSync(file, JSON.stringify(visit));
    const homes = await run(['leaflet', file, '--pdf', pdf], '');
    const single = await run(['leaflet', file, '--pdf', pdf, '--language', 'en'], '');
    const texts = ['leaflet-1.pdf', 'leaflet-2.pdf', 'leaflet.pdf'].map((name) => readPdf(readFileSync(join(folder, name))).text);
    visit.person.homes[1] = { name: ' ', language: 'en' };
    writeFileSync(file, JSON.stringify(visit));
    const wrong = await run(['leaflet', file, '--pdf', pdf], '');
    rmSync(folder, { recursive: true });
    expect([homes.code, single.code, wrong.code]).toEqual([0, 0, 2]);
    expect(homes.out.join()).toContain('سارة العبد, Para la casa con su padre');
    expect(homes.out.join()).toContain('to be reviewed by a native-speaking clinician');
    expect(texts[0]).toContain('Para la casa con su padre');
    expect(texts[1]).toContain('For the home with her mother');
    expect(texts[2]).not.toMatch(/For the home|Para la casa/);
    expect(wrong.err.join()).toMatch(/person\.homes\.1\.name/);
  });

  test('says where it cannot write', async () => {
    const { code, err } = await run(['leaflet', 'examples/09-milk-allergy.json', '--pdf', '/nowhere/at/all/x.pdf'], '');
    expect(code).toBe(2);
    expect(err.join()).toMatch(/^\/nowhere\/at\/all\/x\.pdf: cannot be written/);
  });
});
