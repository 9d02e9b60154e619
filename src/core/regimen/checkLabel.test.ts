import { describe, expect, it, test } from 'vitest';
import { agents } from '../../content/agents.ts';
import { checkLabel, type FluorideLabel } from './checkLabel.ts';

const doubtsOf = (label: FluorideLabel) => checkLabel(label, agents);
const idsOf = (label: FluorideLabel) => doubtsOf(label).map((d) => d.id);

describe('misprints that stand on real labels and in print', () => {
  it('a rinse labelled 0.2 % fluoride ion beside 0.05 % sodium fluoride', () => {
    const [doubt, ...rest] = doubtsOf({ form: 'rinse', compound: 'NaF', percent: 0.05, fluorideIonPercent: 0.2 });
    expect(rest).toEqual([]);
    expect(doubt).toMatchObject({ id: 'strengths-differ', field: 'fluorideIonPercent', countWith: 2_000 });
    expect(doubt?.says).toContain('0.05 % sodium fluoride holds 226.2 ppm');
  });

  it('the same rinse with the fluoride ion alone', () => {
    const [doubt] = doubtsOf({ form: 'rinse', fluorideIonPercent: 0.2 });
    expect(doubt).toMatchObject({ id: 'no-such-strength', field: 'fluorideIonPercent' });
    expect(doubt?.says).toBe(
      'No rinse in the tables holds 2,000 ppm fluoride. Some do: a decimal place away, 200 ppm; 0.2 % of sodium fluoride, 904.9 ppm. Read the active ingredient again.',
    );
  });

  it('a gel printed with 0.05 instead of 0.5 % fluoride', () => {
    expect(doubtsOf({ form: 'gel', fluorideIonPercent: 0.05 })[0]?.says).toContain('a decimal place away, 5,000 ppm');
  });

  it('a 51 g tube of 5,000 ppm with 225 mg', () => {
    const label = { form: 'paste', fluoridePpm: 5_000, packAmount: { value: 51, unit: 'g' }, packFluorideMg: 225 } as const;
    expect(doubtsOf(label)).toMatchObject([{ id: 'pack-differs', field: 'packFluorideMg', countWith: 255 }]);
  });

  it('0.75 mL of varnish with 16.75 mg', () => {
    const label = { form: 'varnish', fluoridePpm: 22_600, useMl: 0.75, useFluorideMg: 16.75 } as const;
    expect(doubtsOf(label)).toMatchObject([{ id: 'use-differs', field: 'useFluorideMg' }]);
    expect(doubtsOf(label)[0]?.countWith).toBeCloseTo(16.95, 9);
  });
});

describe('labels that are right', () => {
  test.each<[string, FluorideLabel]>([
    ['a rinse with its fluoride rounded to one figure', { form: 'rinse', compound: 'NaF', percent: 0.05, fluorideIonPercent: 0.02 }],
    ['a paste by weight and by volume', { form: 'paste', compound: 'NaF', percent: 0.243, fluorideIonPercent: 0.15 }],
    [
      '75 mL of 2,800 ppm paste with 280 mg',
      { form: 'paste', fluoridePpm: 2_800, packAmount: { value: 75, unit: 'mL' }, packFluorideMg: 280 },
    ],
    ['51 g of 5,000 ppm with 255 mg', { form: 'paste', fluoridePpm: 5_000, packAmount: { value: 51, unit: 'g' }, packFluorideMg: 255 }],
    ['0.4 mL of varnish with 9.04 mg', { form: 'varnish', fluoridePpm: 22_600, useMl: 0.4, useFluorideMg: 9.04 }],
    ['a paste without fluoride', { form: 'paste', fluoridePpm: 0 }],
    ['a gum, which holds none', { form: 'gum', fluorideIonPercent: 0.2 }],
    ['nothing printed', { form: 'rinse' }],
    ['a percentage of an unknown compound', { form: 'rinse', percent: 0.2 }],
  ])('%s', (_what, label) => expect(idsOf(label)).toEqual([]));
});

it('names the number that is out of range', () => {
  expect(() => doubtsOf({ form: 'rinse', fluorideIonPercent: 101 })).toThrow('fluorideIonPercent must be 0..100: 101');
  expect(() => doubtsOf({ form: 'rinse', packFluorideMg: Number.NaN })).toThrow('packFluorideMg must be 0..1000000: NaN');
});
