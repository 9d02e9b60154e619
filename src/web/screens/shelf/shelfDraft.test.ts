import { describe, expect, test } from 'vitest';
import { ShelfItemSchema } from '../../../api/visitSchema.ts';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { content } from '../../content.ts';
import {
  buildShelfItem,
  chooseAgent,
  draftOf,
  emptyDraft,
  listLabelDoubts,
  ppmOf,
  releaseOf,
  type ShelfDraft,
  sayFluorideSums,
  sayStrength,
  suggestLeafletName,
  suggestName,
} from './shelfDraft.ts';

const makeId = (name: string) => `id of ${name}`;
const paste: ShelfDraft = {
  ...chooseAgent(emptyDraft, 'F_PASTE_STD'),
  compound: 'NaF',
  percent: '0.32',
  often: '2',
  amount: 'as the label says',
};

const built = (draft: ShelfDraft) => {
  const result = buildShelfItem(draft, makeId);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.item;
};
const problems = (draft: ShelfDraft) => {
  const result = buildShelfItem(draft, makeId);
  return result.ok ? {} : result.problems;
};

describe('an item of the shelf', () => {
  test.each(demoShelf.map((item) => [item.id, item] as const))('%s stays itself when it is opened and saved unchanged', (id, item) => {
    const again = built(draftOf(item));
    expect(JSON.parse(JSON.stringify({ ...again, id }))).toEqual(JSON.parse(JSON.stringify(item)));
  });

  test('is what the server takes', () => {
    expect(ShelfItemSchema.safeParse(JSON.parse(JSON.stringify(built(paste)))).error).toBeUndefined();
  });

  test('of every kind takes its needs, its least release and a name without a number nobody typed', () => {
    for (const agent of content.regimen.agents) {
      const draft = chooseAgent(emptyDraft, agent.id);
      expect(draft.meets).toEqual(agent.meets);
      expect(releaseOf(draft)).toBe(agent.release);
      expect(suggestName(draft)).not.toMatch(/\d/);
    }
  });
});

describe('units of a kind', () => {
  const unitsOf = ({ packUnit, amountUnit }: ShelfDraft) => [packUnit, amountUnit];

  test('are those that its packs are measured in', () => {
    const kinds = ['F_PASTE_STD', 'F_RINSE_005', 'F_VARNISH', 'XYLITOL'];
    expect(kinds.map((id) => unitsOf(chooseAgent(emptyDraft, id)))).toEqual([
      ['g', 'g'],
      ['mL', 'mL'],
      ['mL', 'mL'],
      ['piece', 'g'],
    ]);
  });

  test('stay where a number was typed', () => {
    expect(unitsOf(chooseAgent({ ...emptyDraft, packValue: '500', amountValue: '10' }, 'F_RINSE_005'))).toEqual(['g', 'g']);
  });
});

describe('unknown stays unknown', () => {
  test('a pack that was not checked has no list of what is in it; a checked one with nothing ticked has an empty list', () => {
    expect(built(paste).traits).toBeUndefined();
    expect(built({ ...paste, traits: ['alcohol'] }).traits).toBeUndefined();
    expect(built({ ...paste, isPackChecked: true }).traits).toEqual([]);
    expect(built({ ...paste, isPackChecked: true, traits: ['alcohol'] }).traits).toEqual(['alcohol']);
  });

  test('nothing typed is no zero', () => {
    expect(built({ ...paste, percent: '' })).toMatchObject({ percent: undefined, fluoridePpm: undefined, pH: undefined });
    expect(built(paste)).toMatchObject({
      packAmount: undefined,
      priceCents: undefined,
      use: { amountG: undefined, courseDays: undefined },
    });
  });
});

describe('strength', () => {
  // Mass of F in NaF is 45.25 % (atomicMasses); 0.32 % is 1,448 ppm, 0.22 % is 995 ppm. Tolerance: half a ppm.
  test.each([
    ['NaF', '0.32', '', 1448],
    ['NaF', '0,22', '', 995],
    ['NaF', '', '', undefined],
    ['', '0.32', '', undefined],
    ['NaF', '0.32', '1450', 1450],
    ['', '', '1450', 1450],
    ['NaF', '101', '', undefined],
  ] as const)('%s %s %% with "%s" ppm', (compound, percent, ppm, expected) => {
    const value = ppmOf({ compound, percent, ppm });
    if (expected === undefined) expect(value).toBeUndefined();
    else expect(Math.abs((value ?? 0) - expected)).toBeLessThanOrEqual(0.5);
  });

  test('says what keeps the item from being proposed', () => {
    expect(sayStrength(paste)).toEqual({ isOpen: false, text: '1,448 ppm fluoride, worked out.' });
    expect(sayStrength({ ...paste, percent: '' })).toMatchObject({ isOpen: true });
    expect(sayStrength({ ...paste, ppm: '5000' })?.text).toMatch(/does not fit this kind \(850 to 1,600 ppm\)/);
    expect(sayStrength(chooseAgent(emptyDraft, 'XYLITOL'))).toBeUndefined();
  });
});

describe('suggested names', () => {
  test.each([
    [paste, 'Paste, sodium fluoride 0.32 % (1,448 ppm F)'],
    [{ ...paste, compound: '', percent: '', ppm: '1450' }, 'Paste, fluoride (1,450 ppm F)'],
    [{ ...chooseAgent(emptyDraft, 'CHX_RINSE'), percent: '0.12' }, 'Rinse, chlorhexidine 0.12 %'],
    [{ ...chooseAgent(emptyDraft, 'SDF38'), percent: '38' }, /^Drops, silver diamine fluoride 38 % \(/],
    [{ ...chooseAgent(emptyDraft, 'F_RINSE_005'), percent: '0.02', percentOf: 'ion' }, 'Rinse, sodium fluoride (200 ppm F)'],
    [chooseAgent(emptyDraft, 'SEALANT'), 'Sealant'],
    [emptyDraft, ''],
  ] as const)('%#', (draft, expected) => {
    expect(suggestName(draft)).toEqual(typeof expected === 'string' ? expected : expect.stringMatching(expected));
  });

  test('a leaflet name fits the usual form only', () => {
    expect(suggestLeafletName(paste, 'es')).toBe('Pasta con flúor');
    expect(suggestLeafletName({ ...paste, form: 'gel' }, 'es')).toBe('');
    expect(problems({ ...paste, form: 'gel' })).toHaveProperty('leafletEs');
  });
});

describe('release', () => {
  test('is never below what the kind asks', () => {
    expect(releaseOf({ agentId: 'F_PASTE_5000', release: 'anyone' })).toBe('prescription');
    expect(releaseOf({ agentId: 'F_PASTE_5000', release: 'dentist' })).toBe('dentist');
    expect(releaseOf({ agentId: 'SDF38', release: null })).toBe('dentist');
  });
});

describe('use', () => {
  test('once a week, at the visit, and the unit of the amount', () => {
    expect(built({ ...paste, often: '1', oftenPer: 'week' }).use.timesPerDay).toBeCloseTo(1 / 7, 12);
    expect(built({ ...paste, atVisit: true, often: '' }).use).toMatchObject({ timesPerDay: 0, atVisit: true });
    expect(built({ ...paste, amountValue: '10', amountUnit: 'mL' }).use).toMatchObject({ amountMl: 10, amountG: undefined });
  });
});

test.each([
  ['agentId', { agentId: '' }],
  ['name', { name: '  ' }],
  ['leafletEn', { leafletEn: '' }],
  ['percent', { percent: '0' }],
  ['percent', { percent: '101' }],
  ['ppm', { ppm: '1,450' }],
  ['pH', { pH: '15' }],
  ['packValue', { packValue: '0' }],
  ['price', { price: 'free' }],
  ['often', { often: '' }],
  ['often', { often: '25' }],
  ['amount', { amount: ' ' }],
  ['amountValue', { amountValue: 'a pea' }],
  ['courseDays', { courseDays: '7.5' }],
] as const)('%s is asked for by name: %j', (field, part) => {
  expect(Object.keys(problems({ ...paste, ...part }))).toEqual([field]);
});

describe('the label', () => {
  const rinse: ShelfDraft = { ...chooseAgent(emptyDraft, 'F_RINSE_005'), compound: 'NaF', percent: '0.05', often: '1', amount: '10 mL' };

  test('flavour, minimum and strength by label come back as they were', () => {
    const typed = { ...rinse, flavour: 'mint', minimum: '0', percentOf: 'ion', percent: '0.0226', per: 'w/v' } as const;
    const item = built(typed);
    expect(item).toMatchObject({ flavour: 'mint', minimumLevel: 0, percent: undefined, label: { value: 0.0226, of: 'ion', per: 'w/v' } });
    expect(item.fluoridePpm).toBeCloseTo(226, 6);
    expect(built(draftOf(item))).toEqual({ ...item, id: expect.any(String) });
    expect(ShelfItemSchema.safeParse(JSON.parse(JSON.stringify(item))).error).toBeUndefined();
  });

  test('a rinse that is labelled with ten times its fluoride is asked about; a sound one is not', () => {
    expect(listLabelDoubts({ ...rinse, percentOf: 'ion', percent: '0.2' })).toHaveLength(1);
    expect(listLabelDoubts(rinse)).toEqual([]);
    expect(listLabelDoubts({ ...rinse, percent: 'x' })).toEqual([]);
  });

  test('milligrams in a use and in the pack, with what they rest on', () => {
    const amounts = { amountValue: '10', amountUnit: 'mL', packValue: '500', packUnit: 'mL' } as const;
    expect(sayFluorideSums({ ...rinse, ...amounts, per: 'w/v' })).toBe('2.26 mg fluoride in one use, 113 mg in the pack.');
    expect(sayFluorideSums({ ...rinse, ...amounts })).toMatch(/, if 1 mL weighs 1 g\.$/);
    expect(sayFluorideSums({ ...rinse, percent: '' })).toBeUndefined();
  });

  test.each([
    ['minimum', { minimum: '1.5' }],
    ['minimum', { minimum: '-1' }],
  ] as const)('%s is asked for by name: %j', (field, part) => {
    expect(Object.keys(problems({ ...paste, ...part }))).toEqual([field]);
  });
});
