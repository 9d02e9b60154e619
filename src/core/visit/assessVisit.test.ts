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

test('a position taken where sources disagree reaches the plan of a visit', () => {
  const none = asked([]);
  const answers = { medicines: none, allergies: none, conditions: none, private_conditions: none, pregnant: asked('no') };
  const confirmed = {
    level: 'low',
    protocol: 'four_level_6plus_2019',
    edition: '2019',
    by: 'Ines Marrow',
    at: '2026-11-25T10:00:00Z',
  } as const;
  const input = visitOf({ answers, confirmed });
  const warned = (disagreements?: Record<string, string>) =>
    assessVisit({ ...input, practice: { ...demoPractice, settings: { ...demoPractice.settings, disagreements } } }, content)
      .plan.lines.flatMap((line) => line.warnings.map((w) => w.ruleId))
      .filter((ruleId) => ruleId === 'C44');
  expect([warned(), warned({ 'brushing-after-acid': 'half-an-hour' })]).toEqual([[], ['C44']]);
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

describe('mouths that need another answer first', () => {
  const confirmed = {
    level: 'high',
    protocol: 'four_level_6plus_2019',
    edition: '2019',
    by: 'Ines Marrow',
    at: `${ON}T10:00:00Z`,
  } as const;
  const safe = { medicines: asked([]), allergies: asked([]), conditions: asked([]), private_conditions: asked([]) };

  test.each(['none', 'implants-only'])(
    '%s: nothing that is for teeth counts as missing, and a signed paste is kept out with its reason',
    (teeth) => {
      const signed = [{ shelfItemId: 'paste-naf-5000', by: 'Dr. Ahlgren', at: `${ON}T10:00:00Z` }];
      const it = assessVisit(visitOf({ answers: { ...safe, natural_teeth: asked(teeth) }, confirmed, signed }, '1950-03-03'), content);
      expect(it.unknownAnswers.map((u) => u.question)).toEqual(expect.arrayContaining(['dry_mouth', 'tobacco']));
      for (const { question } of it.unknownAnswers) expect(it.mouth.notAsked).not.toContain(question);
      expect(it.mouth.sentences.at(-1)).toMatch(/confirmed before this was recorded/);
      expect(it.plan.lines).toEqual([]);
      expect(it.plan.notOffered).toContainEqual(expect.objectContaining({ shelfItemId: 'paste-naf-5000', ruleId: 'P15', level: 'stop' }));
      expect(it.plan.bitewingsSentence).toBe('');
    },
  );

  test('what was answered before the teeth were lost stays, and counts again when that turns out wrong', () => {
    const answers = { ...safe, pits_deep: asked(true) };
    const item = (teeth: string) =>
      assessVisit(visitOf({ answers: { ...answers, natural_teeth: asked(teeth) }, allExamined: true }), content);
    expect(item('none').proposed).toBeNull();
    expect(item('has-teeth').proposed?.drivers.map((d) => d.item)).toContain('pits_fissures_deep');
    expect(item('overdenture-roots').proposed?.drivers.map((d) => d.item)).not.toContain('pits_fissures_deep');
  });

  test('roots under an overdenture: they show their surface, and no gum is chewed on the denture above', () => {
    const it = assessVisit(visitOf({ answers: { ...safe, natural_teeth: asked('overdenture-roots'), appliance: asked([]) } }), content);
    expect(it.proposed?.drivers.map((d) => d.item)).toContain('roots_exposed');
    expect(it.proposed?.missing.map((m) => m.item)).not.toEqual(expect.arrayContaining(['pits_fissures_deep']));
    expect(it.facts.dentures).toBe(true);
  });

  test('no teeth yet: nobody spits, nothing is proposed, the date is the first tooth', () => {
    const it = assessVisit(visitOf({ answers: { ...safe, natural_teeth: asked('none-yet'), weight_kg: asked(8) } }, '2026-02-01'), content);
    expect(it.facts.canSpit).toBe(false);
    expect([it.safetyUnknown, it.plan.lines]).toEqual([[], []]);
    expect(it.leaflet.nextDate).toBe('When the first tooth comes.');
    expect(it.leaflet.advice.length).toBeGreaterThan(0);
  });

  test('lost glands: enough on looking is no measurement, so low is not said and the flow counts as missing', () => {
    const answers = { ...safe, conditions: asked(['sjogren']), natural_teeth: asked('has-teeth'), saliva_look: asked('enough') };
    const before = assessVisit(visitOf({ answers, allExamined: true }), content);
    expect(before.unknownAnswers).toContainEqual({ question: 'resting_flow', kind: 'not-asked' });
    expect(before.proposed?.possibleLevels).toEqual(expect.arrayContaining(['moderate']));
    expect(before.mouth.sentences.join()).toMatch(/measure saliva first/);
    const after = assessVisit(visitOf({ answers: { ...answers, resting_flow: asked(0.05) }, allExamined: true }), content);
    expect(after.unknownAnswers.map((u) => u.question)).not.toContain('resting_flow');
    expect(after.mouth.sentences.join()).toMatch(/was measured, and is low/);
  });

  test('acid wear, told on the whole: advice, no item of any list, and no private matter on the leaflet', () => {
    const answers = { ...safe, pregnant: asked('no'), natural_teeth: asked('has-teeth'), tooth_wear: asked('acid') };
    const plain = assessVisit(visitOf({ answers: { ...answers, tooth_wear: asked('none') } }), content);
    const worn = assessVisit(visitOf({ answers }), content);
    expect(worn.proposed).toEqual(plain.proposed);
    expect(worn.leaflet.advice.join(' ')).toMatch(/straw/);
    const secret = assessVisit(
      visitOf({ answers: { ...answers, private_conditions: asked(['vomiting-often', 'eating-disorder']) } }),
      content,
    );
    expect(secret.leaflet.advice.join(' ')).not.toMatch(/straw|with a meal/);
    expect(secret.leaflet.advice).toContain('If acid or food ever comes up, tell your doctor and tell us.');
    expect(worn.leaflet.advice).toContain('If acid or food ever comes up, tell your doctor and tell us.');
  });
});

describe('the last bitewings', () => {
  const sentence = (answer?: Answer) =>
    assessVisit(visitOf({ answers: answer ? { bitewings_last: answer } : {} }), content).plan.bitewingsSentence;

  test('each kind of unknown is said, and unanswered it is no gap of the visit', () => {
    expect(sentence()).toMatch(/not asked/);
    expect(sentence({ how: 'declined' })).toMatch(/declined/);
    expect(sentence({ how: 'carried', value: '2023-05', askedOn: '2023-06-01' })).toMatch(/out of date/);
    expect(sentence({ how: 'carried', value: '2025-05', askedOn: '2025-06-01' })).toMatch(/^Last bitewings: May 2025/);
    expect(assessVisit(visitOf({}), content).unknownAnswers.map((u) => u.question)).not.toContain('bitewings_last');
  });
});
