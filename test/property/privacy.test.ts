import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { VisitBundle } from '../../src/api/bundles.ts';
import { content } from '../../src/content/allContent.ts';
import { demoShelf } from '../../src/content/demo/shelf.ts';
import { LEAFLET_LANGUAGES } from '../../src/core/leaflet/languages.ts';
import { catalogOf } from '../../src/core/leaflet/leafletTable.ts';
import { nameOnLeaflet } from '../../src/core/leaflet/nameOnLeaflet.ts';
import type { Leaflet, LeafletLanguage } from '../../src/core/leaflet/types.ts';
import type { Answer } from '../../src/core/visit/answer.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import type { VisitAssessment, VisitInput } from '../../src/core/visit/types.ts';
import { buildLines, type Privacy } from '../../src/web/screens/visit/buildLines.ts';
import { SCOPES } from '../../src/web/screens/visit/scopes.ts';
import { listLeafletTexts, listTimedTexts } from '../leaflet/listLeafletTexts.ts';
import { visitArbitrary } from './visitArbitrary.ts';

const seed = Number(process.env.EBBLINE_SEED ?? 20_261_125);
const PEOPLE = process.env.EBBLINE_LONG === '1' ? 20_000 : 200;
const TIMEOUT = PEOPLE > 200 ? 7_200_000 : 240_000;

const { questions } = content;
const privateQuestions = questions.filter((q) => q.private);
const medicines = questions.find(({ id }) => id === 'medicines');
const privateMedicines = (medicines?.choices ?? []).filter((c) => c.private).map((c) => c.id);
const HOMES = [
  { name: 'with her father', language: 'es' },
  { name: 'with her mother', language: 'en' },
] as const;

const asked = (value: Answer['value']): Answer => ({ how: 'asked', value, askedOn: '2026-11-25' });
type Said = Readonly<Record<string, Answer>>;

/** Half of the cases at the edges: everything private said, or all but one thing. */
const everything: Said = Object.fromEntries(
  privateQuestions.map(({ id, kind, choices = [] }) => [id, asked(kind === 'list' ? choices.map((c) => c.id) : choices[1]?.id)]),
);
const some = fc
  .tuple(
    ...privateQuestions.map(({ kind, choices = [] }) =>
      kind === 'list' ? fc.subarray(choices.map((c) => c.id)) : fc.constantFrom(...choices.map((c) => c.id)),
    ),
  )
  .map((values): Said => Object.fromEntries(privateQuestions.map(({ id }, i) => [id, asked(values[i] as Answer['value'])])));
const allButOne = fc
  .constantFrom(...privateQuestions)
  .map(({ id, kind }): Said => ({ ...everything, [id]: asked(kind === 'list' ? [] : 'no') }));
const privateAnswers = fc.oneof(
  { weight: 1, arbitrary: fc.constant(everything) },
  { weight: 1, arbitrary: allButOne },
  { weight: 2, arbitrary: some },
);

/** The same questions asked, and nothing to tell. */
const nothing: Said = Object.fromEntries(privateQuestions.map(({ id, kind }) => [id, asked(kind === 'list' ? [] : 'no')]));

const withSaid = (input: VisitInput, said: Said, language: LeafletLanguage = input.visit.language, extraMedicine?: string): VisitInput => {
  const taken = input.visit.answers['medicines']?.value;
  const list = [
    ...(Array.isArray(taken) ? taken.filter((id) => !privateMedicines.includes(id)) : []),
    ...(extraMedicine ? [extraMedicine] : []),
  ];
  return {
    ...input,
    person: { ...input.person, homes: HOMES },
    visit: { ...input.visit, language, answers: { ...input.visit.answers, ...said, medicines: asked(list) } },
  };
};

const strings = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : typeof value === 'object' && value !== null ? Object.values(value).flatMap(strings) : [];

/** Every sentence that stands ready for anybody: no answer has a part in its words. */
function vocabularyOf(language: LeafletLanguage): ReadonlySet<string> {
  const catalog = Object.entries(catalogOf(content.leaflet, language)).filter(([id]) => !id.startsWith('private.'));
  const words = Object.fromEntries(catalog);
  const steps = listLeafletTexts(content.leaflet, demoShelf, language).map(([, text]) => text);
  const timed = listTimedTexts(content.leaflet, demoShelf, language);
  const items = demoShelf.map((item) => nameOnLeaflet(item, language).text);
  const startWith = items.map((item) => `${words.startWith}`.replace('{item}', item));
  const withDoctor = catalog.flatMap(([id, goal]) => (id.startsWith('goal.') ? [`${goal} ${words.askBeforeFood}`] : []));
  const rhythms = catalog.flatMap(([id, day]) => (id.startsWith('rhythm.') ? [day] : []));
  const days = ['uses.assumed', 'uses.named', 'uses.told'].flatMap((id) => rhythms.map((day) => `${words[id]}`.replace('{day}', day)));
  const withWaits = days.map((day) => `${day} ${words['uses.waits']}`);
  return new Set(
    [...strings(words), ...steps, ...timed, ...startWith, ...withDoctor, ...days, ...withWaits].map((text) => text.toLowerCase()),
  );
}
const VOCABULARY = { en: vocabularyOf('en'), es: vocabularyOf('es'), fr: vocabularyOf('fr'), ar: vocabularyOf('ar') };

/** Made of numbers and dates alone, or of an item's own use; checked for words elsewhere. */
const withoutFigures = ({ nextDate: _n, monthlyCost: _m, day, ...rest }: Leaflet) => ({
  ...rest,
  day: day.map(({ when, text }) => [when, text]),
});

test('a leaflet with private answers holds no sentence that is not ready for anybody, for every home and language', {
  timeout: TIMEOUT,
}, () => {
  let differing = 0;
  fc.assert(
    fc.property(visitArbitrary, privateAnswers, (input, said) => {
      for (const language of LEAFLET_LANGUAGES) {
        const told = assessVisit(withSaid(input, said, language), content);
        const silent = assessVisit(withSaid(input, nothing, language), content);
        const pages = [told.leaflet, ...told.leaflets].map((leaflet, i) => [leaflet, [silent.leaflet, ...silent.leaflets][i]] as const);
        expect(told.leaflets.map(({ language: l, home }) => [l, home])).toEqual([
          ['es', 'Para la casa with her father'],
          ['en', 'For the home with her mother'],
        ]);
        for (const [page, other] of pages) {
          expect(page.released).toBeUndefined();
          const before = new Set(strings(withoutFigures(other as Leaflet)));
          const added = strings(withoutFigures(page)).filter((text) => !before.has(text));
          differing += added.length;
          // Uses of one time stand behind each other with commas.
          const isReady = (text: string) => VOCABULARY[page.language].has(text.toLowerCase());
          const unknown = added.filter((text) => !isReady(text) && !text.split(/[,،] /).every(isReady));
          // A slot of the day may be new where another item stands.
          expect(unknown.filter((text) => !(text in page.slots))).toEqual([]);
          // Labels, slots and the like never differ.
          expect([page.title, page.labels, page.slots, page.foot]).toEqual([other?.title, other?.labels, other?.slots, other?.foot]);
        }
      }
    }),
    { seed, numRuns: PEOPLE },
  );
  // The property has something to look at.
  expect(differing).toBeGreaterThan(0);
});

test('what is said and not said of food after private answers is what somebody with insulin is told', { timeout: TIMEOUT }, () => {
  let seen = 0;
  fc.assert(
    fc.property(visitArbitrary, privateAnswers, (input, said) => {
      const told = assessVisit(withSaid(input, said), content);
      const silent = assessVisit(withSaid(input, nothing), content);
      if (told.plan.diet.allowed === silent.plan.diet.allowed) {
        expect(told.leaflet.advice).toEqual(silent.leaflet.advice);
        return;
      }
      seen += 1;
      const insulin = assessVisit(withSaid(input, nothing, undefined, 'insulin'), content);
      expect(told.plan.diet.allowed).toBe(insulin.plan.diet.allowed);
      expect(told.leaflet.advice).toEqual(insulin.leaflet.advice);
    }),
    { seed, numRuns: PEOPLE },
  );
  expect(seen).toBeGreaterThan(PEOPLE / 20);
});

test('a released answer is printed, alone, and only while the same person speaks', { timeout: TIMEOUT }, () => {
  const heard = fc.constantFrom('patient', 'guardian', 'carer', undefined);
  fc.assert(
    fc.property(visitArbitrary, fc.constantFrom(...privateQuestions), heard, heard, (input, { id }, then, now) => {
      const base = withSaid(input, everything);
      const visit = {
        ...base.visit,
        ...(now && { speaker: { who: now } }),
        released: { [id]: { by: 'Ines Marrow', at: '2026-11-25T10:00:00Z', ...(then && { heard: then }) } },
      };
      const { leaflets } = assessVisit({ ...base, visit }, content);
      for (const { released, language } of leaflets) {
        const words = Object.entries(catalogOf(content.leaflet, language)).flatMap(([key, text]) =>
          key.startsWith(`private.${id}.`) ? [text] : [],
        );
        if (then !== now) expect(released).toBeUndefined();
        else expect(words).toEqual(expect.arrayContaining(released as string[]));
        if (then === now) expect(released?.length).toBeGreaterThan(0);
      }
    }),
    { seed, numRuns: PEOPLE / 4 },
  );
});

/** Counts of unknown answers and what they could change hang together with private ones; their words do not. */
const visible = (input: VisitInput, assessment: VisitAssessment, privacy: Privacy) => {
  const bundle = { visitId: 'v', patientId: 'p', profile: {}, state: 'open', members: [], input } as unknown as VisitBundle;
  const place = { bundle, input, assessment, questions, carried: {}, newFinding: null, levelChange: null, isClosed: false, privacy };
  const lines = buildLines(place);
  return SCOPES.filter((scope) => scope !== 'plan' && scope !== 'agree' && scope !== 'level').map((scope) =>
    lines[scope].map(({ note: _, value, ...line }) => ({ ...line, value: Array.isArray(value) ? [...value] : value })),
  );
};

test.each(['shown', 'overheard'] as const)(
  '%s: the lines of a visit are the same whatever was said in private',
  { timeout: TIMEOUT },
  (privacy) => {
    fc.assert(
      fc.property(visitArbitrary, privateAnswers, (input, said) => {
        const [told, silent] = [withSaid(input, said), withSaid(input, nothing)];
        const shown = visible(told, assessVisit(told, content), privacy);
        expect(shown).toEqual(visible(silent, assessVisit(silent, content), privacy));
        const text = JSON.stringify(shown);
        for (const { id, label } of privateQuestions) expect([id, text.includes(label)]).toEqual([id, false]);
        // A medicine that tells of alcohol: the line says no more than that it is recorded.
        const taken = withSaid(input, said, undefined, privateMedicines[0]);
        expect(visible(taken, assessVisit(taken, content), privacy)).toEqual(shown);
      }),
      { seed, numRuns: PEOPLE },
    );
  },
);
