import fc from 'fast-check';
import { content } from '../../src/content/allContent.ts';
import { demoPractice } from '../../src/content/demo/practice.ts';
import type { Level } from '../../src/core/risk/types.ts';
import type { Answer } from '../../src/core/visit/answer.ts';
import { isDateOrMonth } from '../../src/core/visit/dateOrMonth.ts';
import type { Question } from '../../src/core/visit/question.ts';
import type { Finding, VisitInput } from '../../src/core/visit/types.ts';

const ON = '2026-11-25';
const MEMBER = 'Ines Marrow';

/** Birthdays on, just before and just after the limits of the lists and rules; else anybody. */
const birthDate = fc.oneof(
  fc.constantFrom(
    ...[0, 1, 2, 3, 5, 6, 7, 10, 12, 16, 18, 56].flatMap((years) =>
      ['11-25', '11-26', '11-24'].map((day) => `${2026 - years - (day > '11-25' ? 1 : 0)}-${day}`),
    ),
  ),
  fc
    .tuple(fc.integer({ min: 1930, max: 2025 }), fc.integer({ min: 1, max: 12 }))
    .map(([year, month]) => `${year}-${String(month).padStart(2, '0')}-15`),
);

function drawValue(question: Question): fc.Arbitrary<Answer['value']> {
  const ids = (question.choices ?? []).map((choice) => choice.id);
  const { min = 0, max = 9 } = question;
  switch (question.kind) {
    case 'yes-no':
      return fc.boolean();
    case 'count':
      return fc.oneof(fc.constantFrom(min, max, Math.min(max, 3), Math.min(max, 4)), fc.integer({ min, max }));
    case 'measure':
      return fc.oneof(fc.constantFrom(min, max), fc.double({ min, max, noNaN: true }));
    case 'choice':
      return fc.constantFrom(...ids);
    case 'list':
      return fc.oneof(
        { weight: 3, arbitrary: fc.constant<string[]>([]) },
        { weight: 1, arbitrary: fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 3 }) },
      );
    case 'date':
      return fc.constantFrom('2026-11-25', '2026-11', '2025-06-14', ...ids);
  }
}

/** Mostly known, so that most visits get as far as a plan; every kind of unknown occurs. */
const answerTo = (question: Question): fc.Arbitrary<Answer | undefined> =>
  fc.oneof(
    { weight: 12, arbitrary: drawValue(question).map((value): Answer => ({ how: 'asked', value, askedOn: ON })) },
    {
      weight: 2,
      arbitrary: fc
        .tuple(drawValue(question), fc.constantFrom('2026-11-25', '2026-05-25', '2026-05-24', '2024-11-25'))
        .map(([value, askedOn]): Answer => ({ how: 'carried', value, askedOn })),
    },
    { weight: 1, arbitrary: fc.constantFrom<Answer>({ how: 'declined' }, { how: 'does-not-know' }, { how: 'not-asked' }) },
    { weight: 1, arbitrary: fc.constant(undefined) },
  );

const answers = fc
  .tuple(...content.questions.map(answerTo))
  .map((given) => Object.fromEntries(content.questions.flatMap((question, i) => (given[i] ? [[question.id, given[i] as Answer]] : []))));

const finding: fc.Arbitrary<Finding> = fc.record({
  tooth: fc.constantFrom('11', '13', '36', '48', '55', '85'),
  surface: fc.constantFrom('occlusal', 'mesial', 'facial', 'root', undefined),
  kind: fc.constantFrom(
    'white-spot',
    'cavity',
    'dentine-radiograph',
    'enamel-radiograph',
    'root-lesion',
    'restoration',
    'acid-wear',
    'root-exposed',
  ),
  activity: fc.constantFrom('active', 'inactive', undefined),
  isNew: fc.boolean(),
});

const reading = fc.option(
  fc.record({
    rlu: fc.oneof(fc.constantFrom(40, 4_200, 60_000), fc.integer({ min: 40, max: 60_000 })),
    takenAt: fc.constant('2026-11-25T10:36:00Z'),
    beforeCleaning: fc.constantFrom(true, true, true, false),
    lotId: fc.constantFrom('lot-birch', 'lot-alder'),
  }),
  { nil: undefined },
);

/** A visit at the invented practice, any age, with every kind of unknown. */
export const visitArbitrary: fc.Arbitrary<VisitInput> = fc
  .record({
    birthDate,
    answers,
    findings: fc.array(finding, { maxLength: 3 }),
    allExamined: fc.constantFrom(true, true, false, undefined),
    reading,
    language: fc.constantFrom('en' as const, 'es' as const),
    jurisdiction: fc.constantFrom('UK' as const, 'US' as const, 'unknown' as const),
    level: fc.constantFrom<Level | undefined>('low', 'moderate', 'high', 'extreme', undefined),
    newPatient: fc.boolean(),
  })
  .map(({ birthDate: born, level, jurisdiction, newPatient, ...visit }) => {
    const datedAfterBirth = Object.fromEntries(
      Object.entries(visit.answers).map(([id, answer]) => [
        id,
        {
          ...answer,
          ...(answer.askedOn !== undefined && answer.askedOn < born && { askedOn: born }),
          ...(typeof answer.value === 'string' && isDateOrMonth(answer.value) && answer.value < born && { value: born }),
        },
      ]),
    );
    const protocol = born > '2020-11-25' ? 'four_level_0_5_2010' : 'four_level_6plus_2019';
    return {
      practice: { ...demoPractice, settings: { ...demoPractice.settings, jurisdiction } },
      person: { name: 'Somebody Invented', birthDate: born, newPatient },
      visit: {
        ...visit,
        answers: datedAfterBirth,
        onDate: ON,
        meterId: 'demo-meter-a',
        pastReadings: [],
        signed: [],
        ...(level ? { confirmed: { level, protocol, edition: 'as read', by: MEMBER, at: '2026-11-25T10:40:00Z' } } : {}),
      },
    };
  });
