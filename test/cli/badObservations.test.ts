import { describe, expect, test } from 'vitest';
import { runCli } from '../../src/cli/runCli.ts';
import { cliIoOf } from '../cliIo.ts';

async function calc(name: string, input: unknown) {
  const io = cliIoOf(JSON.stringify(input));
  const code = await runCli(['calc', name], io);
  return { code, out: io.out.join('\n'), err: io.err.join('\n') };
}

const crossed = ['A', 'B'].flatMap((part, i) =>
  ['X', 'Y'].flatMap((operator, j) => [100, 140].map((rlu) => ({ part, operator, value: rlu * (1 + i) * (1 + 0.1 * j) }))),
);
const nested = crossed.map(({ part, operator, value }) => ({ group: part, member: operator, value }));
const trend = ['a', 'b'].flatMap((subject, i) => [1, 2, 4].map((time) => ({ subject, time, value: 100 + 30 * i + time ** 2 })));
const constant = <T extends object>(list: readonly T[]) => list.map((one) => ({ ...one, value: 9 }));
const withZero = <T extends object>(list: readonly T[]) => list.map((one, i) => (i === 2 ? { ...one, value: 0 } : one));
const points = (pairs: readonly (readonly [number, number])[]) => ({ points: pairs.map(([level, value]) => ({ level, value })) });

type Case = readonly [what: string, calculator: string, input: unknown, path: string, says: RegExp];

const refused: readonly Case[] = [
  ['nothing at all', 'gauge-crossed', { observations: [] }, 'observations', /second part/],
  ['a single operator', 'gauge-crossed', { observations: crossed.filter((x) => x.operator === 'X') }, 'observations', /second person/],
  ['unbalanced', 'gauge-crossed', { observations: crossed.slice(1) }, 'observations', /part "A" by operator "X"/],
  ['no repeats', 'gauge-crossed', { observations: crossed.filter((_, i) => i % 2 === 0) }, 'observations', /at least twice/],
  ['constant values', 'gauge-crossed', { observations: constant(crossed) }, 'observations', /same value/],
  ['a zero on the log scale', 'gauge-crossed', { observations: withZero(crossed), log: true }, 'observations.2.value', /above 0/],
  ['a single group', 'gauge-nested', { observations: nested.filter((x) => x.group === 'A') }, 'observations', /second group/],
  ['unbalanced', 'gauge-nested', { observations: nested.slice(1) }, 'observations', /member "X" in group "A"/],
  ['constant values', 'gauge-nested', { observations: constant(nested) }, 'observations', /same value/],
  ['a zero on the log scale', 'gauge-nested', { observations: withZero(nested), log: true }, 'observations.2.value', /above 0/],
  ['nothing at all', 'reading-trend', { observations: [] }, 'observations', /empty/],
  ['a single person', 'reading-trend', { observations: trend.slice(0, 3) }, 'observations', /two subjects/],
  ['a single time', 'reading-trend', { observations: trend.map((x) => ({ ...x, time: 1 })) }, 'observations', /two different times/],
  ['constant values', 'reading-trend', { observations: constant(trend) }, 'observations', /scatter about the lines/],
  ['a single operator', 'reading-trend', { observations: trend.map((x) => ({ ...x, operator: 'X' })) }, 'observations', /two operators/],
  ['a zero on the log scale', 'reading-trend', { observations: withZero(trend), log: true }, 'observations.2.value', /above 0/],
  ['nothing at all', 'detection-limit', { blanksRlu: [], lows: [] }, 'blanksRlu', /at least 1/],
  ['a reading too large to square', 'detection-limit', { blanksRlu: [1e308, 1], lows: [] }, 'blanksRlu.0', /1e\+100/],
  ['nothing at all', 'dilution-linearity', { points: [] }, 'points', /at least three/],
  ['a single level', 'dilution-linearity', points([1, 2, 3].map((value) => [1, value])), 'points', /at least two levels/],
  ['constant values', 'dilution-linearity', points([1, 2, 3].map((level) => [level, 1])), 'points', /differ in their values/],
  ['a zero on the log scale', 'dilution-linearity', points([1, 0, 3].map((value) => [1, value])), 'points.1.value', /above 0/],
  ['too few', 'control-chart', { values: [5] }, 'values', /fewer than two.*add a target/],
  ['constant values', 'control-chart', { values: [5, 5, 5] }, 'values', /all the same.*add a target/],
  ['a target without spread', 'control-chart', { values: [5, 5], target: { mean: 5, sd: 0 } }, 'target.sd', /above 0/],
  ['lists of unlike length', 'method-agreement', { a: [1, 2, 3], b: [1, 2] }, 'b', /./],
  ['a zero on the log scale', 'method-agreement', { a: [1, 0, 3], b: [1, 2, 3], log: true }, 'a.1', /above 0/],
  ['one rater', 'rater-agreement-many', { counts: [[1, 0]] }, 'counts.0', /two raters/],
  ['raters come and go', 'rater-icc', { matrix: [[1, 2], [1]] }, 'matrix.1', /at least 2/],
  ['nothing at all', 'censored-summary', { readings: [] }, 'readings', /at least 1/],
  ['a zero on the log scale', 'censored-summary', { readings: [{ rlu: 0 }] }, 'readings.0.rlu', /above 0/],
  ['nothing at all', 'cutoff-study', { cases: [] }, 'cases', /at least 1/],
  [
    'a count beyond counting',
    'diagnostic-table',
    { truePositive: 1e15, falseNegative: 0, falsePositive: 1, trueNegative: 1 },
    'truePositive',
    /at most/,
  ],
];

describe('observations that give no answer: exit 2, the field by name, and what would make it work', () => {
  test.each(refused)('%s: %s', async (_what, calculator, input, path, says) => {
    const { code, out, err } = await calc(calculator, input);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ error: { path, message: expect.stringMatching(says) } });
    expect(err).toMatch(new RegExp(`^${path}\\b`));
    expect(`${out}${err}`).not.toMatch(/NaN|Infinity|\bat .*:\d+:\d+/);
  });
});

const partly: readonly (readonly [what: string, calculator: string, input: unknown, says: readonly RegExp[]])[] = [
  [
    'all below the scale',
    'censored-summary',
    { readings: [40, 40].map((rlu) => ({ rlu, bound: 'at-most' })) },
    [/^readings .*two different numbers/],
  ],
  [
    'all beyond the scale',
    'censored-summary',
    { readings: [60_000, 60_000].map((rlu) => ({ rlu, bound: 'at-least' })) },
    [/^readings .*two different numbers/],
  ],
  ['a single reading', 'censored-summary', { readings: [{ rlu: 40 }] }, [/^readings .*second, different/]],
  ['constant blanks', 'detection-limit', { blanksRlu: [3, 3, 3], lows: [] }, [/^blanksRlu .*same/, /^blanksRlu .*ten/]],
  [
    'constant low readings',
    'detection-limit',
    { blanksRlu: [3, 4, 5], lows: [1, 1].map((level) => ({ level, rlu: 9 })) },
    [/ten/, /^lows .*same/],
  ],
  ['no replicates', 'dilution-linearity', points([1, 2, 4].map((x) => [x, x ** 1.1 + 0.1])), [/two values of one level/, /three/]],
  ['constant pairs', 'method-agreement', { a: [1, 1, 1], b: [1, 1, 1] }, [/^a and b do not vary/, /some interval/]],
  ['two pairs', 'method-agreement', { a: [1, 2], b: [1, 2] }, [/three pairs/, /some interval/]],
  [
    'no units',
    'rater-agreement',
    {
      table: [
        [0, 0],
        [0, 0],
      ],
    },
    [/^table is empty/],
  ],
  [
    'one category',
    'rater-agreement',
    {
      table: [
        [4, 0],
        [0, 0],
      ],
    },
    [/^table .*second category/],
  ],
  ['one unit', 'rater-agreement-many', { counts: [[2, 1]] }, [/^counts .*two units/]],
  [
    'no pairs',
    'rater-alpha',
    {
      ratings: [
        [null, 1],
        [1, null],
      ],
      metric: 'nominal',
    },
    [/^ratings .*two ratings/],
  ],
  [
    'constant values',
    'rater-icc',
    {
      matrix: [
        [1, 1],
        [1, 1],
      ],
    },
    [/^matrix .*units that differ/],
  ],
  ['nobody without the outcome', 'cutoff-study', { cases: [{ value: 1, positive: true }] }, [/^cases .*not positive/]],
  ['no shift to see', 'run-length', { chart: 'shewhart', limit: 50, sides: 1, shiftsSd: [0] }, [/^shiftsSd\.0/]],
];

describe('observations that give a part of the answer: null with a sentence for each reason', () => {
  test.each(partly)('%s: %s', async (_what, calculator, input, says) => {
    const { code, out } = await calc(calculator, input);
    expect(code).toBe(0);
    expect(out).not.toMatch(/NaN|Infinity/);
    const { wouldHelp } = JSON.parse(out) as { wouldHelp: readonly string[] };
    expect(wouldHelp).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
  });

  test('where all is there, there is nothing to say', async () => {
    const { out } = await calc('censored-summary', { readings: [{ rlu: 40 }, { rlu: 90 }] });
    expect(JSON.parse(out)).toMatchObject({ notDefined: null, wouldHelp: [] });
  });
});
