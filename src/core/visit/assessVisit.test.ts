import { describe, expect, test } from 'vitest';
import { content } from '../../content/allContent.ts';
import { demoPractice } from '../../content/demo/practice.ts';
import type { Answer } from './answer.ts';
import { assessVisit } from './assessVisit.ts';
import type { Finding, VisitInput } from './types.ts';

const ON = '2026-11-25';
const asked = (value: Answer['value']): Answer => ({ how: 'asked', value, askedOn: ON });
const visitOf = (part: Partial<VisitInput['visit']>, birthDate = '1980-01-02'): VisitInput => ({
  practice: demoPractice,
  person: { name: 'Somebody Invented', birthDate, newPatient: false },
  visit: { onDate: ON, language: 'en', answers: {}, findings: [], pastReadings: [], signed: [], meterId: 'demo-meter-a', ...part },
});
const whiteSpot: Finding = { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true };

test('nothing is known: no low, no plan, everything of the safety check is named', () => {
  const { proposed, plan, safetyUnknown, reading, confirmed } = assessVisit(visitOf({}), content);
  expect(proposed?.level).not.toBe('low');
  expect([plan.lines, confirmed, reading.state]).toEqual([[], null, 'not-taken']);
  expect(safetyUnknown).toEqual(['medicines', 'allergies', 'conditions', 'private_conditions', 'pregnant']);
});

describe('which list proposes', () => {
  test.each([
    ['2021-11-26', 'four_level_0_5_2010'],
    ['2020-11-26', 'four_level_0_5_2010'],
    ['2020-11-25', 'four_level_6plus_2019'],
  ])('born %s: %s', (birthDate, protocol) => {
    expect(assessVisit(visitOf({ findings: [whiteSpot] }, birthDate), content).proposed?.protocol).toBe(protocol);
  });

  test('no method for an age, or one that is not for it, is said and proposes nothing', () => {
    const input = visitOf({ findings: [whiteSpot] });
    const withMethod = (methodByAge: typeof demoPractice.settings.methodByAge): VisitInput => ({
      ...input,
      practice: { ...demoPractice, settings: { ...demoPractice.settings, methodByAge } },
    });
    const none = assessVisit(withMethod([]), content);
    expect([none.proposed, none.proposedSentence]).toEqual([null, 'No method is set for age 46: choose one under Rules.']);
    const wrong = assessVisit(withMethod([{ fromAgeYears: 0, belowAgeYears: null, protocol: 'four_level_0_5_2010' }]), content);
    expect([wrong.proposed, wrong.proposedSentence]).toEqual([
      null,
      'Four-level, young child, 2010 is not for age 46: choose another method under Rules.',
    ]);
  });
});

test('without natural teeth no level is proposed, and a confirmed one feeds nothing', () => {
  const confirmed = {
    level: 'high',
    protocol: 'four_level_6plus_2019',
    edition: '2019',
    by: 'Ines Marrow',
    at: '2026-11-25T10:00:00Z',
  } as const;
  const assessment = assessVisit(visitOf({ answers: { natural_teeth: asked('none') }, confirmed }), content);
  expect([assessment.proposed, assessment.compare, assessment.couldChange, assessment.confirmed]).toEqual([null, [], [], null]);
  expect(assessment.proposedSentence).toContain('caries level does not apply');
  expect(assessment.plan.lines).toEqual([]);
});

test('what could change the level never asks anybody to take up a risk', () => {
  const answers = {
    natural_teeth: asked('has-teeth'),
    private_conditions: asked([]),
    snacks_per_day: asked(1),
    paste_times_per_day: asked(2),
    plaque_heavy: asked(false),
  };
  const { couldChange, proposed } = assessVisit(visitOf({ answers, allExamined: true }), content);
  expect(proposed?.level).toBeDefined();
  const upwards = couldChange.filter(({ to }) => to === 'high' || to === 'extreme');
  expect(upwards.length).toBeGreaterThan(0);
  for (const { changes } of upwards) for (const change of changes) expect(change.from).toBeUndefined();
});

test('the reading stands beside the level and is in no item of it', () => {
  const reading = { rlu: 60_000, takenAt: '2026-11-25T10:36:00Z', beforeCleaning: true, lotId: 'lot-birch' };
  const base = visitOf({ findings: [whiteSpot], allExamined: true });
  const withReading = assessVisit({ ...base, visit: { ...base.visit, reading } }, content);
  expect(withReading.reading.verdict).toBe('above');
  expect(withReading.proposed).toEqual(assessVisit(base, content).proposed);
});

test('every source named is once in the list', () => {
  const { sources } = assessVisit(visitOf({ findings: [whiteSpot] }), content);
  const keys = sources.map((s) => `${s.key} ${s.status} ${s.note ?? ''}`);
  expect(new Set(keys).size).toBe(keys.length);
});
