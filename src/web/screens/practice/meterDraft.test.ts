import { expect, test } from 'vitest';
import { MeterSchema } from '../../../api/visitSchema.ts';
import { demoPractice } from '../../../content/demo/practice.ts';
import { buildMeter, draftOfMeter, emptyMeter, type MeterDraft, sayMeter } from './meterDraft.ts';

const [meter] = demoPractice.meters;
if (!meter) throw new Error('the invented practice has a meter');
const draft = draftOfMeter(meter);
const problems = (part: Partial<MeterDraft>) => {
  const built = buildMeter({ ...draft, ...part }, () => meter.id);
  return built.ok ? [] : Object.keys(built.problems);
};

test('a meter stays itself when it is opened and saved unchanged, and the server takes it', () => {
  const built = buildMeter(draft, () => meter.id);
  expect(built).toEqual({ ok: true, meter });
  expect(MeterSchema.safeParse(meter).success).toBe(true);
});

test('a new meter has nothing filled in, above all no cut-off', () => {
  expect(problems(emptyMeter).sort()).toEqual(['countdown', 'cutoff', 'dayNoise', 'highest', 'lowest', 'name', 'swabNoise']);
});

test.each([
  ['cutoff', { cutoff: '40' }],
  ['cutoff', { cutoff: '60000' }],
  ['cutoff', { cutoff: '4,200' }],
  ['lowest', { lowest: '-1' }],
  ['swabNoise', { swabNoise: '0' }],
  ['swabNoise', { swabNoise: '201' }],
  ['dayNoise', { dayNoise: '501' }],
  ['name', { name: ' ' }],
] as const)('%s is asked for by name: %j', (field, part) => {
  expect(problems(part)).toEqual([field]);
});

test('in words, with assumed and measured told apart', () => {
  const said = Object.fromEntries(sayMeter({ ...meter, cvAnalyticalAssumed: false }));
  expect(said).toMatchObject({ 'Swab noise': '25 %, measured here', 'Day to day': '35 %, assumed', 'Cut-off': '4,200 RLU' });
});
