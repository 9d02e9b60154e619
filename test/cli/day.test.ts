import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runCalculator } from '../../src/calculators/calculator.ts';
import { acidDay } from '../../src/calculators/day/acidDay.ts';
import { runCli } from '../../src/cli/runCli.ts';
import { cliIoOf } from '../cliIo.ts';

const folder = mkdtempSync(join(tmpdir(), 'ebbline-day-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const EXAMPLE = 'examples/days/sipped-cola.json';
const example = JSON.parse(readFileSync(EXAMPLE, 'utf8')) as { events: { id: string; minutes: number }[]; person: object };
/** Enough draws to have a band, few enough to be quick. */
const QUICK = { samples: 4, mostMoves: 0 };
const picture = join(folder, 'day.svg');
const run = async (value: unknown) => {
  const io = cliIoOf(JSON.stringify(value));
  return { code: await runCli(['day', '-', '--svg', picture], io), out: io.out.join('\n'), err: io.err };
};

describe('ebbline day', () => {
  test('prints the example in honest words and draws it', async () => {
    const { code, out, err } = await run({ ...example, samples: 8 });
    expect({ code, err }).toEqual({ code: 0, err: [] });
    expect(out).toMatch(/^An invented day at a desk\n\nIn the model, roughly .+ a day on the acid side/);
    expect(out).toContain('This compares days; it does not measure teeth.');
    expect(out).toContain('for typical saliva (not measured)');
    expect(out).toContain('Starch is not in the model');
    expect(out).toMatch(/Water instead of the sipped cola: in the model, .+ less a day/);
    expect(out).not.toMatch(/µm|micromet|NaN/);
    const svg = readFileSync(picture, 'utf8');
    expect(svg).toMatch(/^<svg [^>]*role="img"/);
    expect(svg).toContain('<title id="title">An invented day at a desk</title>');
    expect(svg).toContain('>the sipped cola</text>');
    expect(svg).not.toMatch(/NaN|undefined/);
  });

  test('suggests nothing where nobody is named, and says why', async () => {
    const { person: _, ...nobody } = example;
    const { code, out } = await run({ ...nobody, ...QUICK, mostMoves: 1 });
    expect(code).toBe(0);
    expect(out).toContain('Food: nothing is suggested, because no person is named.');
    expect(out).not.toContain('less a day');
  });

  test.each([
    [{ ...example, events: example.events.map((event) => ({ ...event, minutes: 1500 })) }, 'events.0.minutes must be 0.1 to'],
    [{ ...example, events: [example.events[0], { ...example.events[0], id: 'again' }] }, 'events.1.startMinute must be'],
    [{ ...example, saliva: { restingFlowMlPerMin: 0 } }, 'saliva.restingFlowMlPerMin must be 0.01 to 5: 0'],
    [{ ...example, plaque: { thicknessMm: -1 } }, 'plaque.thicknessMm must be'],
    [{ ...example, wakeMinute: 2000 }, 'wakeMinute must be 0 to 1439: 2000'],
    [{ ...example, preset: undefined }, 'preset: is missing'],
    [{ ...example, teeth: 32 }, 'teeth: is not a known field'],
  ])('names the field that is wrong', async (value, message) => {
    const { code, err } = await run(value);
    expect(code).toBe(2);
    expect(err.join('\n')).toContain(message);
  });
});

describe('the acid-day calculator', () => {
  test('answers in its own schema, the same for the same seed', () => {
    const first = runCalculator(acidDay, { ...example, ...QUICK });
    expect(first).toMatchObject({ ok: true, output: { acidSide: 'saliva', changes: [], band: { samples: 4 } } });
    expect(first.ok && acidDay.output.safeParse(first.output).error).toBe(undefined);
    expect(first.ok && (first.output as { pH: number[] }).pH.length).toBe(1441);
    expect(runCalculator(acidDay, { ...example, ...QUICK })).toEqual(first);
    expect(runCalculator(acidDay, { ...example, ...QUICK, seed: 2 })).not.toEqual(first);
  });

  test('names a wrong field, and leaves long searches to the command line', () => {
    expect(runCalculator(acidDay, { ...example, ...QUICK, wakeMinute: -1 })).toMatchObject({ ok: false, error: { path: 'wakeMinute' } });
    expect(runCalculator(acidDay, { ...example, ...QUICK, mostMoves: 3 })).toMatchObject({ ok: false, error: { path: 'mostMoves' } });
    expect(runCalculator(acidDay, { ...example, samples: 5000 })).toMatchObject({ ok: false, error: { path: 'samples' } });
  });
});
