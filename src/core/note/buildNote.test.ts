import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { content } from '../../content/allContent.ts';
import { demoPractice } from '../../content/demo/practice.ts';
import { assessVisit } from '../visit/assessVisit.ts';
import type { VisitInput } from '../visit/types.ts';
import { buildNote, type NoteInput } from './buildNote.ts';
import { DEFAULT_NOTE, NOTE_SECTIONS } from './noteSections.ts';

const [paste, varnish, gum] = demoPractice.shelf;
if (!paste || !varnish || !gum) throw new Error('the invented shelf is too short');

const visit = (part: Partial<VisitInput['visit']> = {}): VisitInput => ({
  practice: demoPractice,
  person: { name: 'Ana Thorn', birthDate: '1984-03-02', newPatient: false },
  visit: { onDate: '2026-11-25', language: 'en', answers: {}, findings: [], pastReadings: [], signed: [], ...part },
});
const noteOf = (input: VisitInput, options: Partial<NoteInput> = {}) =>
  buildNote({ input, assessment: assessVisit(input, content), tables: content, ...options });

test('what is not known is said so, and nothing reads as no, none or normal', () => {
  expect(noteOf(visit()).split('\n')).toEqual([
    'Ana Thorn, born 2 March 1984. Visit of 25 November 2026, Tern Quay Dental (an invented practice).',
    'Level: not confirmed; Four-level, 2019 proposes moderate, low, high, extreme not excluded.',
    'Findings, new: none noted (whether the whole mouth was examined is not noted).',
    'Swab reading: No swab today.',
    expect.stringMatching(/^Mouth: Natural teeth: not recorded/),
    'Home care: nothing offered.',
    'Next visit: no date agreed.',
    'Last bitewings: date not known (not asked); next: the level is not confirmed yet.',
  ]);
});

test('findings, level, reading, words on each item, goals and the next date, each on its line', () => {
  const input = visit({
    findings: [
      { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true },
      { tooth: '46', kind: 'restoration', isNew: false },
    ],
    allExamined: true,
    confirmed: {
      level: 'high',
      protocol: 'four_level_6plus_2019',
      edition: '2019',
      by: 'Ines Marrow',
      at: '2026-11-25T23:30:00+00:00',
      reason: 'two new spots',
      changedFrom: 'moderate',
    },
    reading: { notTaken: 'declined' },
    agreed: {
      items: { [paste.id]: 'declined', [varnish.id]: 'not-affordable', [gum.id]: 'declined' },
      declinedWhy: { [paste.id]: 'taste' },
      instead: { [paste.id]: varnish.id, [gum.id]: gum.id },
    },
    goals: ['keep my own teeth'],
    acidDay: { days: [{ wakeMinute: 400, sleepMinute: 1380, events: [] }] },
    speaker: { who: 'guardian', name: 'Bo Thorn' },
    nextOn: '2027-02-25',
    pastCare: [{ shelfItemId: paste.id, name: paste.name, since: '2026-05-09' }],
    used: { [paste.id]: { adherence: 'less-often', why: 'time' } },
    pastGoals: [{ id: 'g', text: 'fresh breath', since: '2026-05-09' }],
  });
  const note = noteOf(input);
  expect(note).toContain(
    'Level: high, by Four-level, 2019 (edition 2019), confirmed by Ines Marrow on 25 November 2026, changed from moderate, because two new spots.',
  );
  expect(note).toContain('Findings, new: 13 facial white spot, active (whole mouth examined).');
  expect(note).toContain('Findings, from before: 46 restoration.');
  expect(note).toContain('Swab reading: No swab today: declined.');
  expect(note).toContain(`Declined: ${paste.name} (taste; instead ${varnish.name}); ${gum.name} (reason not noted).`);
  expect(note).toContain(`Not affordable: ${varnish.name}.`);
  expect(note).toContain(`Since last time: ${paste.name}: less often (time).`);
  expect(note).toContain(`Goals of earlier visits: "fresh breath": not asked.\nGoals, in the patient's words: "keep my own teeth".`);
  expect(note).toContain('Day as told: eating or drinking 0 times; awake from 06:40 to 23:00.');
  expect(note).toContain('Spoke for the visit: guardian, Bo Thorn; interpreter not asked.');
  expect(note).toContain('Next visit: 25 February 2027.');
});

test('private answers stand in their own part alone, and only where it is chosen', () => {
  const asked = (value: string | readonly string[]) => ({ how: 'asked', value, askedOn: '2026-11-25' }) as const;
  const answers = { pregnant: asked('pregnant'), private_conditions: asked(['eating-disorder']) };
  const note = noteOf(visit({ answers }));
  expect(note).not.toMatch(/pregnan|eating|breast|private/i);
  expect(noteOf(visit({ answers }), { sections: NOTE_SECTIONS.filter((s) => s !== 'private') })).toBe(note);
  expect(noteOf(visit({ answers }), { sections: [...DEFAULT_NOTE, 'private'] })).toMatch(
    /\nPrivate: .*Pregnant or breast-feeding: pregnant/,
  );
});

test('the order is the practice’s own, what is left out is left out, and a text field can hold it', () => {
  const input = visit({ goals: ['one\nline\tonly'], nextOn: '2027-02-25' });
  expect(noteOf(input, { sections: ['next', 'goals'] })).toBe(
    `Ana Thorn, born 2 March 1984. Visit of 25 November 2026, Tern Quay Dental (an invented practice).\nNext visit: 25 February 2027.\nGoals, in the patient's words: "one line only".`,
  );
  const corrections = [{ at: '2026-11-30T09:00:00Z', on: '2026-11-30', by: 'Ines Marrow', reason: 'wrong line', changes: [] }];
  expect(noteOf(input, { sections: [], corrections })).toMatch(/\nCorrected on 30 November 2026 by Ines Marrow: wrong line\.$/);
});

test('who signed against a rule stands in the note with the rule and the reason', () => {
  const input = visit();
  const assessment = assessVisit(input, content);
  const signedBy = { name: 'Dr. Ahlgren', at: '2026-11-25T10:00:00Z', override: { ruleId: 'C02', reason: 'no attack for ten years' } };
  const [item] = demoPractice.shelf;
  if (!item) throw new Error('the demonstration has an empty shelf');
  const said = { meets: [], because: [], warnings: [], sources: [] };
  const line = { shelfItemId: item.id, name: 'Varnish', state: 'signed' as const, signedBy, use: { ...item.use, atVisit: true }, ...said };
  const forHome = {
    ...line,
    name: 'Paste',
    use: { ...item.use, atVisit: false },
    signedBy: { ...signedBy, packs: 3, until: '2027-02-01' },
  };
  const plan = { ...assessment.plan, lines: [line, forHome] };
  const note = buildNote({ input, assessment: { ...assessment, plan }, tables: content });
  expect(note).toContain('Signed: Varnish, by Dr. Ahlgren, against rule C02, because no attack for ten years.');
  expect(note).toContain('Signed: Paste, by Dr. Ahlgren, for 3 packs in all, to 1 February 2027, against rule C02,');
});

test.each(readdirSync('examples').filter((file) => file.endsWith('.json')))(
  '%s gives a note that names no unsigned item as signed',
  (file) => {
    const { person, visit: given } = JSON.parse(readFileSync(`examples/${file}`, 'utf8')) as Pick<VisitInput, 'person' | 'visit'>;
    const input = { practice: demoPractice, person, visit: given };
    const assessment = assessVisit(input, content);
    const note = buildNote({ input, assessment, tables: content });
    for (const line of assessment.plan.lines.filter((l) => l.state === 'waiting-for-signature')) {
      expect(note).not.toContain(`Signed: ${line.name}`);
      expect(note).toMatch(/\nWaiting for a signature: /);
    }
    expect(note).not.toMatch(/undefined|null|NaN|\[object|\n\n/);
  },
);
