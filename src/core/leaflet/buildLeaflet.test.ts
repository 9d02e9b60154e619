import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { caseInput } from '../../../test/leaflet/buildCase.ts';
import { caseTable } from '../../../test/leaflet/caseTable.ts';
import { caseShelf, type LeafletCase, planLine } from '../../../test/leaflet/leafletCases.ts';
import type { PlanLine } from '../regimen/types.ts';
import { SLOT_ORDER } from './buildDaySteps.ts';
import { buildLeaflet, type LeafletInput } from './buildLeaflet.ts';
import { LEAFLET_LANGUAGES } from './languages.ts';
import { catalogOf } from './leafletTable.ts';
import type { LeafletLanguage } from './types.ts';

const base: LeafletCase = { name: 'adult', person: { name: 'Ida Sand', ageYears: 40 }, items: ['paste', 'strong'], signed: [] };
const inputOf = (changes: Partial<LeafletCase> = {}, language: LeafletLanguage = 'en') =>
  caseInput({ ...base, ...changes }, language, caseTable);
const buildWith = (changes: Partial<LeafletCase>, language: LeafletLanguage = 'en', more: Partial<LeafletInput> = {}) =>
  buildLeaflet({ ...inputOf(changes, language), ...more });
const textsOf = (value: unknown): string =>
  typeof value === 'string' ? value : typeof value === 'object' && value !== null ? Object.values(value).map(textsOf).join('\n') : '';

describe('what needs a signature', () => {
  test('is nowhere on the page while it waits', () => {
    const leaflet = buildWith({});
    expect(textsOf(leaflet)).not.toMatch(/strong/i);
    expect(leaflet.cautions).not.toContain('Only for you.');
    expect(leaflet.signedBy).toEqual([]);
    expect(leaflet.monthlyCost).toBe('About £2.70.');
  });

  test('is printed once signed, with the name of who signed', () => {
    const leaflet = buildWith({ signed: ['strong'] });
    expect(leaflet.day.map(({ when, text }) => `${when} ${text}`)).toContain('bedtime Strong fluoride toothpaste: do the same again.');
    expect(leaflet.signedBy).toEqual(['Strong fluoride toothpaste: signed by Dr. Ahlgren.']);
    expect(leaflet.cautions[0]).toBe('Only for you.');
  });

  test.each([
    ['the line says proposed', { state: 'proposed' }],
    ['nobody is named', { state: 'signed', signedBy: undefined }],
    ['the name is blank', { state: 'signed', signedBy: { name: ' ', at: '2026-11-25' } }],
  ] as const)('is not released when %s', (_, change) => {
    const input = inputOf({ items: ['strong'] });
    const lines = input.plan.lines.map((line): PlanLine => ({ ...line, ...change }));
    expect(textsOf(buildLeaflet({ ...input, plan: { ...input.plan, lines } }))).not.toMatch(/strong/i);
  });
});

test.each(['declined', 'not-affordable'] as const)('%s: not on the page and not in the cost', (answer) => {
  const leaflet = buildWith({ items: ['paste', 'rinse'], agreed: { items: { rinse: answer } } });
  expect(textsOf(leaflet)).not.toMatch(/rinse with|mouth rinse/i);
  expect(leaflet.monthlyCost).toBe('About £2.70.');
});

test('an item off the shelf is a mistake of the caller', () => {
  expect(() => buildLeaflet({ ...inputOf(), shelf: [] })).toThrow('paste');
});

describe('amounts and ways of use', () => {
  const firstStep = (changes: Partial<LeafletCase>, language: LeafletLanguage = 'en', more: Partial<LeafletInput> = {}) =>
    buildWith(changes, language, more).day[0];

  test.each([
    [1, 'smear', undefined, 'a smear, like a grain of rice'],
    [2, 'smear', undefined, 'a smear, like a grain of rice'],
    [3, 'pea', undefined, 'as big as a pea'],
    [6, 'pea', undefined, 'as big as a pea'],
    [7, 'ribbon', 1.5, 'a strip 1 to 2\u00a0cm long'],
  ] as const)('paste at %i years is a %s', (ageYears, kind, value, text) => {
    expect(firstStep({ person: { name: 'Bo', ageYears }, items: ['paste'] })?.amount).toEqual({ kind, text, ...(value && { value }) });
  });

  test('strong paste has the ribbon of the British label there, and the plain one elsewhere', () => {
    const strong = { items: ['strong'], signed: ['strong'] };
    expect(firstStep(strong)?.amount?.value).toBe(2);
    expect(firstStep(strong, 'en', { practice: { name: 'x', invented: true, jurisdiction: 'US' } })?.amount?.value).toBe(1.5);
  });

  test('nobody is told to spit who cannot, or is small and was not asked', () => {
    const textAt = (ageYears: number, canSpit?: boolean) =>
      firstStep({ person: { name: 'Bo', ageYears }, items: ['paste'], ...(canSpit !== undefined && { canSpit }) })?.text;
    expect(textAt(40)).toMatch(/spit/i);
    expect(textAt(4, true)).toMatch(/spit/i);
    expect(textAt(40, false)).not.toMatch(/spit/i);
    expect(textAt(5)).not.toMatch(/spit/i);
  });

  test('rinse: mL, one minute, the label wait of the place, a grown-up below 12, another time than brushing', () => {
    expect(firstStep({ person: { name: 'Bo', ageYears: 11 }, items: ['rinse'] })).toEqual({
      when: 'evening',
      text: 'Fluoride mouth rinse: swish, then spit it all out. Swish for 1 minute. A grown-up must watch. Then wait 15 minutes to eat or drink. If you need food for your health, do not wait.',
      amount: { kind: 'mL', value: 10, text: '10\u00a0mL' },
    });
    const american = firstStep({ person: { name: 'Bo', ageYears: 12 }, items: ['rinse'] }, 'en', {
      practice: { name: 'x', invented: true, jurisdiction: 'US' },
    });
    expect(american?.when).toBe('bedtime');
    expect(american?.text).toMatch(/wait 30 minutes/);
    expect(american?.text).not.toMatch(/grown-up/);
  });

  test('a waiting time that is only remembered is not printed', () => {
    expect(firstStep({ items: ['strong'], signed: ['strong'] })?.text).not.toMatch(/\d/);
  });

  test('course, pieces, a pea of cream, times a day', () => {
    expect(firstStep({ items: ['cream'] })?.amount).toEqual({ kind: 'pea', isOnFinger: true, text: 'as big as a pea' });
    expect(firstStep({ items: ['spray'] })?.text).toBe('Mouth spray: use it when your mouth feels dry, by day or by night.');
    expect(firstStep({ items: ['germs'], signed: ['germs'] })?.text).toMatch(/Swish for 30 seconds\. Use it for 7 days, then stop\./);
    expect(firstStep({ items: ['gum'] })).toMatchObject({
      when: 'after-meals',
      text: expect.stringMatching(/3 times a day/),
      amount: { kind: 'piece', value: 2 },
    });
  });

  test('home use without times a day is refused', () => {
    const input = inputOf({ items: ['rinse'] });
    const lines = input.plan.lines.map((line) => ({ ...line, use: { ...line.use, timesPerDay: 0 } }));
    expect(() => buildLeaflet({ ...input, plan: { ...input.plan, lines } })).toThrow('timesPerDay');
  });

  test('less than once a day stands under once a week; an agent without a row as it was shown', () => {
    const input = inputOf({ items: ['rinse'] });
    const weekly = input.plan.lines.map((line) => ({ ...line, use: { ...line.use, timesPerDay: 1 / 7 } }));
    expect(buildLeaflet({ ...input, plan: { ...input.plan, lines: weekly } }).day[0]?.when).toBe('weekly');
    expect(buildLeaflet({ ...input, texts: { ...caseTable, uses: [] } }).day[0]?.text).toMatch(
      /^Fluoride mouth rinse: use it the way we showed you\./,
    );
  });
});

describe('cautions', () => {
  test('most urgent first, those of printed items and of the age, whatever the status of their source', () => {
    expect(buildWith({ person: { name: 'Bo', ageYears: 6 }, items: ['gum'] }).cautions).toEqual([
      'No gum for dogs.',
      'A grown-up helps.',
      'Lock it up.',
    ]);
    expect(buildWith({ items: ['paste'] }).cautions).toEqual(['Lock it up.']);
  });

  test('one about spitting is worded for a person who cannot', () => {
    const en = { ...caseTable.catalogs.en, 'caution.for-all': 'Spit it out.', 'caution.for-all/cannot-spit': 'Wipe it off.' };
    const texts = { ...caseTable, catalogs: { ...caseTable.catalogs, en } };
    const cautionsFor = (canSpit: boolean) => buildWith({ items: ['paste'], canSpit }, 'en', { texts }).cautions;
    expect(cautionsFor(true)).toEqual(['Spit it out.']);
    expect(cautionsFor(false)).toEqual(['Wipe it off.']);
  });

  test.each([
    [true, 'Tell us of a pregnancy.'],
    [undefined, 'Tell us of a pregnancy.'],
    [false, 'Tell us of an illness.'],
  ])('one about pregnancy, where it may apply is %s', (mayBePregnant, says) => {
    const en = {
      ...caseTable.catalogs.en,
      'caution.for-all': 'Tell us of a pregnancy.',
      'caution.for-all/no-pregnancy': 'Tell us of an illness.',
    };
    const texts = { ...caseTable, catalogs: { ...caseTable.catalogs, en } };
    expect(buildWith({ items: ['paste'] }, 'en', { texts, mayBePregnant }).cautions).toEqual([says]);
  });

  test('one that the plan asks for and that has no words stops the page', () => {
    const input = inputOf();
    const cautions = [{ id: 'not-worded', source: { key: 'leaflet-words', status: 'proposal' } as const }];
    expect(() => buildLeaflet({ ...input, plan: { ...input.plan, cautions } })).toThrow('not-worded');
  });
});

describe('goals', () => {
  const tryOf = (changes: Partial<LeafletCase>, language: LeafletLanguage = 'en', more: Partial<LeafletInput> = {}) =>
    buildWith(changes, language, more).tryThis;

  test('own words stand as typed; an id or the words of another language become words of this one', () => {
    expect(tryOf({ agreed: { tryThis: ' Tea without sugar. ' } })).toBe('Tea without sugar.');
    expect(tryOf({ agreed: { tryThis: 'sweet-drink-with-meal' } })).toBe('Keep sweet drinks for meals, not in between.');
    expect(tryOf({ agreed: { tryThis: 'Keep sweet drinks for meals, not in between.' } }, 'es')).toBe(
      'Deje las bebidas dulces para las comidas, no entre comidas.',
    );
  });

  test('a goal about food that is not allowed becomes what to do afterwards, with whom to ask', () => {
    for (const tryThis of ['sweet-drink-with-meal', 'Keep sweet drinks for meals, not in between.', undefined]) {
      expect(tryOf({ diet: 'after-only', agreed: { tryThis } })).toBe(
        'After a sweet drink or sweet food, rinse with water. Ask the doctor first if you want to change meals or snacks.',
      );
    }
  });

  test('a small child: only what is in the bottle or cup, or afterwards', () => {
    const toddler = { person: { name: 'Bo', ageYears: 2 } };
    expect(tryOf({ ...toddler, diet: 'sweet-bottle-only', agreed: { tryThis: 'water-after-night-brush' } })).toBe(
      'Put no sweet drink in the bottle or cup. Milk or water is fine.',
    );
    expect(tryOf({ ...toddler, diet: 'after-only', agreed: { tryThis: 'no-sweet-bottle' } })).toMatch(
      /^After a sweet drink or sweet food, wipe .* Ask the doctor/,
    );
  });

  test('without a need about food the first new item is the thing to try; without one, nothing', () => {
    expect(tryOf({ items: ['paste', 'gum'] }, 'en', { needs: [] })).toBe('Start with this: xylitol gum.');
    expect(tryOf({ items: ['paste', 'varnish'] }, 'en', { needs: [] })).toBeNull();
    const undecided = [{ kind: 'diet' as const, state: 'undecided' as const, because: '', sources: [] }];
    expect(tryOf({ items: ['paste', 'gum'] }, 'en', { needs: undecided })).toBe('Start with this: xylitol gum.');
  });

  test('the thing to keep is brushing, also while the paste of the plan waits for its signature', () => {
    expect(buildWith({ items: ['paste'] }).keep).toBe('Brush each morning and each night.');
    expect(buildWith({ items: ['strong', 'gum'] }).keep).toBe('Brush with fluoride paste each morning and each night.');
    expect(buildWith({ items: ['gum'] }).keep).toBe('Keep up the good care you give your mouth now.');
  });
});

describe('dates, money and names', () => {
  const practice = (jurisdiction: 'US' | 'UK' | 'unknown') => ({ name: 'Tern Quay Dental', invented: false, jurisdiction });

  test.each([
    ['US', 'en', 'November 25, 2026', 'About $2.70.', 'Thursday, March 25, 2027'],
    ['UK', 'en', '25 November 2026', 'About £2.70.', expect.stringMatching(/^Thursday,? 25 March 2027$/)],
    ['US', 'es', '25 de noviembre de 2026', 'Cerca de $2.70.', 'jueves, 25 de marzo de 2027'],
    ['UK', 'es', '25 de noviembre de 2026', 'Cerca de 2,70\u00a0£.', 'jueves, 25 de marzo de 2027'],
    ['unknown', 'en', 'November 25, 2026', null, 'Thursday, March 25, 2027'],
  ] as const)('%s, %s', (jurisdiction, language, date, monthlyCost, nextDate) => {
    const leaflet = buildWith({ items: ['paste'], nextOn: '2027-03-25' }, language, { practice: practice(jurisdiction) });
    expect(leaflet).toMatchObject({ date, monthlyCost, nextDate, demoNotice: null });
  });

  test('without an agreed date the shorter end of the recall is suggested; without a recall, ask', () => {
    expect(buildWith({}).nextDate).toBe('In about 3 months (February 2027).');
    const input = inputOf();
    expect(buildLeaflet({ ...input, plan: { ...input.plan, recall: null } }).nextDate).toBe('Ask us for the date.');
  });

  test('a sum with an unknown part is at least; one without a known part is not printed', () => {
    expect(buildWith({ items: ['paste', 'gum'] }).monthlyCost).toBe('At least £2.70. Not all prices are known.');
    expect(buildWith({ items: ['gum', 'varnish'] }).monthlyCost).toBeNull();
    expect(buildWith({ items: ['paste', 'varnish'] }).monthlyCost).toBe('About £2.70.');
  });

  // 7 days of 15 mL from a bottle of 473 mL at 12.00: 105 / 473 * 1200 = 266.4 cents, rounded up; the rest of the month costs nothing.
  test('a course costs its own days', () => {
    expect(buildWith({ items: ['germs'], signed: ['germs'] }).monthlyCost).toBe('About £2.67.');
  });

  test('what to stop is named from the shelf or as typed; an invented practice says so', () => {
    const leaflet = buildWith({ stopUsing: ['rinse', 'lemon drops'] }, 'es');
    expect(leaflet.stopUsing).toEqual(['Enjuague con flúor', 'Lemon drops']);
    expect(leaflet.demoNotice).toMatch(/^Tern Quay Dental .* inventados/);
  });

  test.each(['2026-02-30', '25.11.2026', ''])('%s is not a date', (onDate) => {
    expect(() => buildWith({}, 'en', { onDate })).toThrow(RangeError);
  });
});

/** Every item under a name of its own that is part of no other, so that finding it means that it was printed. */
const markedShelf = caseShelf.map((item, i) => ({
  ...item,
  leafletName: { en: `zz${i}zz`, es: `zz${i}zz`, fr: `zz${i}zz`, ar: `zz${i}zz` },
}));

const lineChange = fc.record({
  state: fc.constantFrom('proposed' as const, 'waiting-for-signature' as const, 'signed' as const),
  signedBy: fc.constantFrom(undefined, { name: '', at: '2026-11-25' }, { name: 'Dr. Ahlgren', at: '2026-11-25' }),
  answer: fc.constantFrom(undefined, 'agreed' as const, 'declined' as const, 'not-affordable' as const),
});
const goal = fc.option(fc.constantFrom(...caseTable.goals.map(({ id }) => id), 'own words'), { nil: undefined });
const anyInput = fc.record({
  ageYears: fc.oneof(fc.constantFrom(0, 2, 3, 5, 6, 7, 11, 12), fc.integer({ min: 0, max: 105 })),
  changes: fc.array(lineChange, { minLength: markedShelf.length, maxLength: markedShelf.length }),
  chosen: fc.oneof(fc.constant(markedShelf), fc.subarray(markedShelf)),
  diet: fc.constantFrom('any' as const, 'sweet-bottle-only' as const, 'after-only' as const),
  language: fc.constantFrom(...LEAFLET_LANGUAGES),
  jurisdiction: fc.constantFrom('US' as const, 'UK' as const, 'unknown' as const),
  canSpit: fc.constantFrom(undefined, true, false),
  keep: goal,
  tryThis: goal,
});

const NEVER = /RLU|\bATP\b|%|\brisk|riesgo|\{|\}|undefined|private words|\b(low|moderate|high|extreme) level/i;

it('whatever the plan, prints exactly what is released and never what is forbidden', () => {
  fc.assert(
    fc.property(anyInput, (g) => {
      const lines = g.chosen.map((item): PlanLine => {
        const { state, signedBy } = g.changes[markedShelf.indexOf(item)] ?? { state: 'proposed' };
        return { ...planLine(item, g.ageYears, false), state, signedBy };
      });
      const answerOf = (id: string) => g.changes[markedShelf.findIndex((item) => item.id === id)]?.answer;
      const answers = g.chosen.map(({ id }) => [id, answerOf(id)] as const);
      const items = Object.fromEntries(answers.flatMap(([id, answer]) => (answer ? [[id, answer] as const] : [])));
      const input = caseInput(
        { ...base, items: [], person: { name: 'Ida Sand', ageYears: g.ageYears }, diet: g.diet },
        g.language,
        caseTable,
        markedShelf,
      );
      const leaflet = buildLeaflet({
        ...input,
        plan: { ...input.plan, lines },
        practice: { ...input.practice, jurisdiction: g.jurisdiction },
        agreed: { keep: g.keep, tryThis: g.tryThis, items },
        facts: { canSpit: g.canSpit },
      });
      const { footPages: _, ...printed } = leaflet;
      const text = textsOf(printed);
      const catalog = catalogOf(caseTable, g.language);
      for (const [i, line] of lines.entries()) {
        const item = g.chosen[i];
        const signed = line.state === 'signed' && line.signedBy?.name === 'Dr. Ahlgren';
        const released =
          (signed || (line.state === 'proposed' && item?.release === 'anyone')) &&
          [undefined, 'agreed'].includes(answerOf(line.shelfItemId));
        expect(text.toLowerCase().includes(item?.leafletName.en ?? '')).toBe(released);
        expect(leaflet.signedBy.some((said) => said.toLowerCase().includes(item?.leafletName.en ?? ''))).toBe(released && signed);
      }
      expect(text).not.toMatch(NEVER);
      const forbidden = caseTable.goals.filter(
        ({ family }) => (family === 'food' && g.diet !== 'any') || (family === 'bottle-or-cup' && g.diet === 'after-only'),
      );
      for (const { id } of forbidden) expect(text).not.toContain(catalog[`goal.${id}`]);
      const slots = leaflet.day.map(({ when }) => SLOT_ORDER.indexOf(when));
      expect(slots).toEqual([...slots].sort((a, b) => a - b));
      expect(leaflet.cautions.includes(catalog['caution.gum-and-dogs'] ?? '')).toBe(/zz4zz/i.test(text));
    }),
  );
});
