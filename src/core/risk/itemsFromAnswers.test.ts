import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { findingFills, itemExclusions } from '../../content/findingFills.ts';
import { riskItems } from '../../content/protocols/items.ts';
import { questions } from '../../content/questions.ts';
import type { Answer, AnswerValue } from '../visit/answer.ts';
import type { Question } from '../visit/question.ts';
import type { Finding } from '../visit/types.ts';
import { applyFill, type ItemsInput, itemsFromAnswers } from './itemsFromAnswers.ts';

const onDate = '2026-11-25';
const settings = { stimulatedFlowLowAtMostMlPerMin: 0.7 } as const;

function itemsOf(values: Readonly<Record<string, AnswerValue>>, over: Partial<ItemsInput> = {}) {
  const answers = Object.fromEntries(
    Object.entries(values).map(([id, value]): [string, Answer] => [id, { how: 'asked', value, askedOn: onDate }]),
  );
  return itemsFromAnswers({
    answers,
    findings: [],
    allExamined: undefined,
    questions,
    findingFills,
    exclusions: itemExclusions,
    ageYears: 40,
    onDate,
    settings,
    ...over,
  }).items;
}

test('nothing answered, nothing examined: no item is known', () => {
  for (const ageYears of [0, 5, 6, 7, 14, 15, 40]) expect(itemsOf({}, { ageYears })).toEqual({});
});

describe('answers', () => {
  test.each([
    [0, false, false],
    [1, true, false],
    [2, true, true],
    [3, true, true],
  ])('%i brushings a day: once %s, twice %s', (times, once, twice) => {
    expect(itemsOf({ paste_times_per_day: times })).toMatchObject({ toothpaste_f_once_daily: once, toothpaste_f_twice_daily: twice });
  });

  test('several sources: true if any says true, false only if all say false', () => {
    expect(itemsOf({ water_fluoridated: true }).fluoride_any_exposure).toBe(true);
    const none = { water_fluoridated: false, paste_times_per_day: 0, professional_fluoride: 'none' };
    expect(itemsOf(none).fluoride_any_exposure).toBe(undefined);
    expect(itemsOf({ ...none, home_extras: [] }).fluoride_any_exposure).toBe(false);
    expect(itemsOf({ ...none, home_extras: ['other'] }).fluoride_any_exposure).toBe(undefined);
  });

  test('a medicine of unknown class leaves "dries the mouth" open; a known one settles it', () => {
    expect(itemsOf({ medicines: [] }).medicine_saliva_reducing).toBe(false);
    expect(itemsOf({ medicines: ['insulin'] }).medicine_saliva_reducing).toBe(false);
    expect(itemsOf({ medicines: ['insulin', 'other'] }).medicine_saliva_reducing).toBe(undefined);
    expect(itemsOf({ medicines: ['other', 'diuretic'] }).medicine_saliva_reducing).toBe(true);
  });

  test('radiotherapy of the head sets both items, chemotherapy one', () => {
    expect(itemsOf({ conditions: ['head-neck-radiotherapy'] })).toMatchObject({
      chemo_radiotherapy: true,
      saliva_reducing_condition: true,
    });
    expect(itemsOf({ conditions: ['chemotherapy'] })).toMatchObject({ chemo_radiotherapy: true, saliva_reducing_condition: false });
  });

  test('any appliance counts, none is none', () => {
    expect(itemsOf({ appliance: ['bonded-retainer'] }).appliance_orthodontic_or_removable).toBe(true);
    expect(itemsOf({ appliance: [] }).appliance_orthodontic_or_removable).toBe(false);
  });

  test('an answer that does not count today fills nothing', () => {
    const stale: Answer = { how: 'carried', value: 5, askedOn: '2026-05-24' };
    expect(itemsOf({}, { answers: { snacks_per_day: stale } })).toEqual({});
    expect(itemsOf({}, { answers: { snacks_per_day: { ...stale, askedOn: '2026-05-25' } } })).toEqual({ snacks_between_meals_per_day: 5 });
    expect(itemsOf({}, { answers: { snacks_per_day: { how: 'does-not-know' } } })).toEqual({});
  });

  test('an answer of the wrong kind is refused by the name of its question', () => {
    expect(() => itemsOf({ paste_times_per_day: true })).toThrow(/paste_times_per_day/);
    expect(() => itemsOf({ medicines: 'diuretic' })).toThrow(/medicines/);
    expect(() => itemsOf({ snacks_per_day: ['4'] })).toThrow(/snacks_per_day/);
    expect(() => itemsOf({ professional_fluoride: 3 })).toThrow(/professional_fluoride/);
  });
});

describe('saliva', () => {
  // CE96 (read): below 0.1 mL/min resting; at the limit counts as low (our reading). CE595 (read): normal from 0.25 resting and
  // 1.0 stimulated. The stimulated limit is a setting, 0.5 or 0.7 (memory). Exact, no tolerance.
  test.each([
    [{ resting_flow: 0.1 }, 0.7, true, false],
    [{ resting_flow: 0.11 }, 0.7, undefined, false],
    [{ resting_flow: 0.25 }, 0.7, undefined, true],
    [{ stimulated_flow: 0.7 }, 0.7, true, false],
    [{ stimulated_flow: 0.7 }, 0.5, undefined, false],
    [{ stimulated_flow: 0.5 }, 0.5, true, false],
    [{ stimulated_flow: 1 }, 0.7, undefined, true],
    [{ resting_flow: 0.3, stimulated_flow: 0.6 }, 0.7, true, false], // one low, one normal: low, and so not normal
    [{ saliva_look: 'inadequate' }, 0.7, true, false],
    [{ saliva_look: 'enough' }, 0.7, false, undefined], // looking never shows a normal flow
    [{ saliva_look: 'doubtful' }, 0.7, undefined, undefined], // doubt is not "no": measure
    [{ saliva_look: 'doubtful', resting_flow: 0.1 }, 0.7, true, false],
    [{ saliva_look: 'enough', resting_flow: 0.3 }, 0.7, false, true],
    [{ saliva_look: 'enough', resting_flow: 0.05 }, 0.7, true, false],
  ] as const)('%j, limit %f: low %s, normal %s', (values, stimulatedFlowLowAtMostMlPerMin, low, normal) => {
    const items = itemsOf(values as Record<string, AnswerValue>, { settings: { stimulatedFlowLowAtMostMlPerMin } });
    // A measured flow that is not low is no answer to "low, or clearly too little on looking" until somebody has looked.
    expect(items.saliva_flow_reduced_measured).toBe(low);
    expect(items.saliva_normal).toBe(normal);
  });
});

const finding = (over: Partial<Finding> & Pick<Finding, 'kind'>): Finding => ({ tooth: '16', isNew: true, ...over });
const found = (findings: readonly Finding[], allExamined: boolean | undefined, ageYears = 40, values = {}) =>
  itemsOf(values, { findings, allExamined, ageYears });

describe('findings', () => {
  test.each([
    ['lesion_cavity_or_dentin_new', finding({ kind: 'cavity' })],
    ['lesion_cavity_or_dentin_new', finding({ kind: 'dentine-radiograph' })],
    ['lesion_cavity_or_dentin_new', finding({ kind: 'root-lesion', surface: 'root' })],
    ['lesion_white_spot_smooth_new', finding({ kind: 'white-spot', surface: 'facial' })],
    ['lesion_white_spot_smooth_new', finding({ kind: 'white-spot' })],
    ['lesion_enamel_radiographic_new', finding({ kind: 'enamel-radiograph' })],
    ['roots_exposed', finding({ kind: 'root-exposed', isNew: false })],
    ['restoration_defective', finding({ kind: 'restoration-defective', isNew: false })],
    ['restoration_interproximal', finding({ kind: 'restoration', surface: 'mesial', isNew: false })],
    ['restoration_for_decay_recent', finding({ kind: 'restoration' })],
  ])('%s is true with %j, examined or not', (item, one) => {
    expect(found([one], undefined)[item]).toBe(true);
    expect(found([one], true)[item]).toBe(true);
  });

  test.each([
    ['lesion_cavity_or_dentin_new', finding({ kind: 'cavity', isNew: false })],
    ['lesion_white_spot_smooth_new', finding({ kind: 'white-spot', surface: 'occlusal' })],
    ['roots_exposed', finding({ kind: 'acid-wear' })],
  ])('%s is not true with %j: false once all is examined, unknown before', (item, one) => {
    expect(found([one], undefined)[item]).toBe(undefined);
    expect(found([one], false)[item]).toBe(undefined);
    expect(found([one], true)[item]).toBe(false);
  });

  test('acid wear fills nothing', () => {
    expect(found([finding({ kind: 'acid-wear' })], undefined)).toEqual({});
  });

  test('looking cannot say that no filling was placed: the question decides', () => {
    expect(found([], true).restoration_for_decay_recent).toBe(undefined);
    expect(found([], true, 40, { filling_recent: false }).restoration_for_decay_recent).toBe(false);
    expect(found([finding({ kind: 'restoration' })], true, 40, { filling_recent: false }).restoration_for_decay_recent).toBe(true);
  });

  test('a young child: an old white spot leaves "new in 24 months" open, and defects are asked apart', () => {
    expect(found([finding({ tooth: '54', kind: 'white-spot', isNew: false })], true, 3).lesion_noncavitated_new_24m).toBe(undefined);
    expect(found([], true, 3).lesion_noncavitated_new_24m).toBe(false);
    expect(found([], true, 3).decay_or_white_spot_evident_child).toBe(undefined);
    expect(found([], true, 3, { enamel_defects: false }).decay_or_white_spot_evident_child).toBe(false);
    expect(found([finding({ tooth: '54', kind: 'white-spot', isNew: false })], true, 3).decay_or_white_spot_evident_child).toBe(true);
    expect(found([], true, 3, { filling_24m: false })).toMatchObject({
      cavitated_or_restored_24m: false,
      restoration_for_decay_recent: false,
    });
  });

  test('at 6 the two look-backs are kept apart', () => {
    expect(found([], true, 6, { filling_recent: false, filling_24m_at_6: true })).toMatchObject({
      restoration_for_decay_recent: false,
      cavitated_or_restored_24m: true,
    });
  });
});

describe('counts', () => {
  const between = (tooth: string) => finding({ tooth, kind: 'enamel-radiograph', surface: 'mesial' });

  test('lesions between teeth: one settles it, none needs everything examined; one surface counts once', () => {
    expect(found([], undefined).lesion_interproximal_count).toBe(undefined);
    expect(found([], true).lesion_interproximal_count).toBe(0);
    expect(found([between('16')], undefined).lesion_interproximal_count).toBe(1);
    expect(found([between('16'), finding({ kind: 'cavity', surface: 'mesial' }), between('26')], true).lesion_interproximal_count).toBe(2);
    expect(found([finding({ kind: 'enamel-radiograph' })], undefined).lesion_interproximal_count).toBe(1);
    expect(found([finding({ kind: 'cavity', surface: 'occlusal' })], true).lesion_interproximal_count).toBe(0);
  });

  test('lesions in three years: told or found, the larger; three found settle it', () => {
    const three = [between('16'), between('26'), between('36')];
    expect(found(three.slice(0, 2), true).lesions_or_restorations_count_36m).toBe(undefined);
    expect(found(three, undefined).lesions_or_restorations_count_36m).toBe(3);
    expect(found(three.slice(0, 2), true, 40, { lesions_3y: 0 }).lesions_or_restorations_count_36m).toBe(2);
    expect(found(three.slice(0, 2), true, 40, { lesions_3y: 5 }).lesions_or_restorations_count_36m).toBe(5);
  });

  test('milk teeth: counted by tooth, permanent teeth left out', () => {
    const a = finding({ tooth: '54', kind: 'restoration', surface: 'occlusal', isNew: false });
    expect(found([a, { ...a, surface: 'mesial' }], true, 4).dmft_total).toBe(undefined);
    expect(found([a, { ...a, tooth: '64' }], undefined, 4).dmft_total).toBe(2);
    expect(found([a, { ...a, tooth: '16' }], true, 5, { milk_teeth_dmf: 0 }).dmft_total).toBe(1);
  });
});

const answerTo = (question: Question): fc.Arbitrary<AnswerValue> => {
  const ids = question.choices?.map((c) => c.id) ?? [];
  switch (question.kind) {
    case 'yes-no':
      return fc.boolean();
    case 'count':
      return fc.oneof(fc.constantFrom(0, 1, 2, 3, 4, question.max ?? 9), fc.integer({ min: 0, max: question.max ?? 9 }));
    case 'measure':
      return fc.oneof(fc.constantFrom(question.min ?? 0, 0.1, 0.25, 0.5, 0.7, 1), fc.double({ min: 0, max: 5, noNaN: true }));
    case 'choice':
      return fc.constantFrom(...ids);
    case 'list':
      return fc.oneof(fc.constant([]), fc.subarray([...ids]));
    case 'date':
      return fc.constantFrom('2025-06-14', '2024-02', ...ids);
  }
};
const kinds: readonly Finding['kind'][] = [
  'white-spot',
  'cavity',
  'dentine-radiograph',
  'enamel-radiograph',
  'root-lesion',
  'restoration',
  'restoration-defective',
  'root-exposed',
  'acid-wear',
];
const anyFinding: fc.Arbitrary<Finding> = fc.record({
  tooth: fc.constantFrom('16', '41', '54', '85'),
  kind: fc.constantFrom(...kinds),
  surface: fc.constantFrom(undefined, 'occlusal', 'mesial', 'facial', 'root'),
  isNew: fc.boolean(),
});
const visit = fc.record({
  // Keys are left out, never present as undefined.
  values: fc.record(Object.fromEntries(questions.map((q) => [q.id, answerTo(q)])), { requiredKeys: [] }) as fc.Arbitrary<
    Record<string, AnswerValue>
  >,
  findings: fc.oneof(fc.constant([]), fc.array(anyFinding, { maxLength: 4 })),
  allExamined: fc.constantFrom(true, false, undefined),
  ageYears: fc.oneof(fc.constantFrom(0, 5, 6, 7, 14, 15, 18, 19), fc.nat(100)),
});

it('items have the type of their definition, and one answer less never turns an item into its opposite', () => {
  fc.assert(
    fc.property(visit, fc.constantFrom(...questions), ({ values, findings, allExamined, ageYears }, dropped) => {
      const items = itemsOf(values, { findings, allExamined, ageYears });
      for (const [id, value] of Object.entries(items)) {
        expect(typeof value).toBe(riskItems[id]?.valueType === 'count' ? 'number' : 'boolean');
      }
      expect(items.biofilm_bacteria_high).toBe(undefined);
      const { [dropped.id]: _, ...fewer } = values;
      const less = itemsOf(fewer, { findings, allExamined, ageYears });
      for (const { item } of dropped.optional ? [] : dropped.fills) {
        if (less[item] === undefined || item === 'lesions_or_restorations_count_36m' || item === 'dmft_total') continue;
        expect(less[item]).toBe(items[item] ?? less[item]);
      }
    }),
    { numRuns: 400 },
  );
});

it('no fill makes a "no" of an answer that says unknown', () => {
  fc.assert(
    fc.property(fc.constantFrom(...questions), (question) => {
      for (const how of ['declined', 'does-not-know', 'not-asked'] as const) {
        const age = question.fromAgeYears ?? 0;
        expect(itemsOf({}, { answers: { [question.id]: { how } }, ageYears: age })).toEqual({});
      }
    }),
  );
});

test('equals compares, oneOf holds', () => {
  expect(applyFill({ item: 'a', equals: 'x' }, 'y', 'q', settings)).toBe(false);
  expect(applyFill({ item: 'a', oneOf: ['x', 'y'] }, 'y', 'q', settings)).toBe(true);
  expect(applyFill({ item: 'a', atMost: 0.7 }, 0.7, 'q', settings)).toBe(true);
});
