import { describe, expect, test } from 'vitest';
import {
  consentSentence,
  markAlone,
  permissionSentence,
  SPEAKER,
  type SpeakerPlace,
  saySpeaker,
  saySpeakerInFull,
  speakerAfter,
  speakerLines,
} from './speakerLines.ts';

const mai = { name: 'Mai Tran', relation: 'mother', mayConsent: true };
const duc = { name: 'Duc Tran', relation: 'uncle' };
const place = (part: Partial<SpeakerPlace> = {}): SpeakerPlace => ({ profile: {}, ageYears: 40, speaker: undefined, ...part });
const child = place({ ageYears: 15, profile: { guardians: [duc, mai] } });
const asked = (value: string) => ({ how: 'asked', value }) as const;

describe('who is asked who speaks', () => {
  test.each([
    ['an adult', place(), []],
    ['an adult who needs no interpreter', place({ profile: { interpreter: '' } }), []],
    ['somebody on the eighteenth birthday', place({ ageYears: 18 }), []],
    ['a child', place({ ageYears: 17 }), [SPEAKER]],
    ['an adult with a guardian', place({ profile: { guardians: [duc] } }), [SPEAKER]],
    ['an adult with an interpreter', place({ profile: { interpreter: 'Arabic' } }), [SPEAKER]],
    [
      'and then who interprets',
      place({ profile: { interpreter: 'Arabic' }, speaker: { who: 'patient' } }),
      [SPEAKER, 'speaker-interpreter'],
    ],
    ['and the name of a carer', place({ ageYears: 4, speaker: { who: 'carer' } }), [SPEAKER, 'speaker-name']],
  ])('%s', (_, at, ids) => {
    expect(speakerLines(at).map(({ id }) => id)).toEqual(ids);
  });

  test('once the visit is closed what is on record is shown, and a correction may say it of anybody, but nothing is asked for', () => {
    const told = { who: 'patient' } as const;
    expect(speakerLines(place({ isPast: true }))).toEqual([]);
    expect(speakerLines(place({ isPast: true, speaker: told })).map(({ label, text }) => `${label}: ${text}`)).toEqual([
      'Who spoke: the patient alone',
    ]);
    const [line] = speakerLines(place({ isPast: true, isCorrecting: true }));
    expect([line?.text, line?.wanted, line?.note]).toEqual(['not asked', false, undefined]);
  });

  test('one key each: the patient, every guardian by name, a carer; what is only thought is not said', () => {
    const [line] = speakerLines(child);
    if (line?.entry.kind !== 'choice') throw new Error('no choice');
    expect(line.entry.choices.map(({ label }) => label)).toEqual(['Mai Tran, mother', 'the patient alone', 'Duc Tran, uncle', 'a carer']);
    expect([line.text, line.tone, line.wanted, line.value]).toEqual(['not asked', 'unknown', true, undefined]);
    expect(line.note).toBe('perhaps Mai Tran, guardian; 1 says so');
    expect(speakerAfter(SPEAKER, asked(line.entry.choices[0]?.id ?? ''), child)).toEqual({ who: 'guardian', name: 'Mai Tran' });
  });
});

test('a change of the interpreter alone can be told from the words', () => {
  expect(saySpeakerInFull({ who: 'patient' })).toBe('the patient alone');
  expect(saySpeakerInFull({ who: 'carer', name: 'Ola', interpreter: 'needed-not-there' })).toBe(
    'Ola, carer; interpreter: needed and not there',
  );
});

test('an answer changes one part of who speaks and keeps the others', () => {
  const at = (speaker: SpeakerPlace['speaker']) => place({ profile: { interpreter: 'Arabic', guardians: [mai] }, speaker });
  expect(speakerAfter('speaker-interpreter', asked('family'), at({ who: 'guardian', name: 'Mai Tran' }))).toEqual({
    who: 'guardian',
    name: 'Mai Tran',
    interpreter: 'family',
  });
  expect(speakerAfter(SPEAKER, asked('patient'), at({ who: 'guardian', name: 'Mai Tran', interpreter: 'family' }))).toEqual({
    who: 'patient',
    interpreter: 'family',
  });
  expect(speakerAfter('speaker-name', asked(' Ola '), at({ who: 'carer' }))).toEqual({ who: 'carer', name: 'Ola' });
  expect(speakerAfter('speaker-interpreter', asked('family'), at(undefined))).toBeUndefined();
  expect(speakerAfter('pregnant', asked('no'), at({ who: 'patient' }))).toBeUndefined();
});

test.each([
  [{ who: 'patient' }, 'the patient alone'],
  [{ who: 'guardian', name: 'Mai Tran' }, 'Mai Tran, guardian'],
  [{ who: 'guardian' }, 'a parent or guardian'],
  [{ who: 'carer', name: 'Ola' }, 'Ola, carer'],
] as const)('%o is said as %s', (speaker, words) => {
  expect(saySpeaker(speaker)).toBe(words);
});

test.each([
  [{ who: 'patient' }, {}, { alone: true }],
  [{ who: 'guardian' }, {}, {}],
  [undefined, {}, {}],
  // Told alone once, it stays so until it is asked again of the person.
  [{ who: 'guardian' }, { pregnant: { how: 'carried', value: 'no', alone: true } }, { alone: true }],
] as const)('who speaks: %o, before: %o, so the answer is marked %o', (speaker, answers, mark) => {
  expect(markAlone({ speaker, answers }, 'pregnant')).toEqual(mark);
});

describe('who may say yes', () => {
  test.each([
    ['an adult', place(), false],
    ['a child, nobody said to be there', child, true],
    ['a child alone', { ...child, speaker: { who: 'patient' } }, true],
    ['a guardian of whom it was not asked', { ...child, speaker: { who: 'guardian', name: 'Duc Tran' } }, true],
    ['a guardian who may', { ...child, speaker: { who: 'guardian', name: 'Mai Tran' } }, false],
    ['a carer of that name', { ...child, speaker: { who: 'carer', name: 'Mai Tran' } }, true],
  ] as const)('%s', (_, at, isSaid) => {
    expect(consentSentence(at)?.startsWith('Nobody here who may say yes to care is recorded: local law decides.') ?? false).toBe(isSaid);
  });

  test('permission for care: not asked, not given and given are three things', () => {
    expect(permissionSentence({})).toBe('Permission for care: not asked.');
    expect(permissionSentence({ permissions: { care: { given: false, by: 'Mai Tran', on: '2026-03-04' } } })).toBe(
      'Permission for care: not given, said by \u2068Mai Tran\u2069 on 4 March 2026.',
    );
    expect(permissionSentence({ permissions: { care: { given: true, by: 'Mai Tran', on: '2026-03-04' } } })).toBeUndefined();
  });
});
