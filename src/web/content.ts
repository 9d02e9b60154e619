import { contentWith } from '../content/contentWith.ts';
import { riskFlags } from '../content/protocols/flags.ts';
import { riskItems } from '../content/protocols/items.ts';
import { type Source, sources } from '../content/sources.ts';
import { agreementSources } from '../content/sources-agreement.ts';
import { chemistrySources } from '../content/sources-chemistry.ts';
import { controlSources } from '../content/sources-control.ts';
import { daySources } from '../content/sources-day.ts';
import { leafletSources } from '../content/sources-leaflet.ts';
import { plaqueSources } from '../content/sources-plaque.ts';
import { readingSources } from '../content/sources-reading.ts';
import { regimenSources } from '../content/sources-regimen.ts';
import { varianceSources } from '../content/sources-variance.ts';
import { leafletRules } from '../content/texts/leafletRules.ts';
import en from '../content/texts/locales/en.json' with { type: 'json' };
import { type Catalog, sayIn } from '../core/leaflet/sayMessage.ts';
import type { LeafletLanguage } from '../core/leaflet/types.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { assessInSteps, assessVisit, type VisitSteps } from '../core/visit/assessVisit.ts';
import type { Question } from '../core/visit/question.ts';
import type { VisitAssessment, VisitInput } from '../core/visit/types.ts';
import type { VisitContent } from '../core/visit/visitContent.ts';

/** The leaflet's languages at hand. One is only ever added; English is always there. */
const catalogs: Partial<Record<LeafletLanguage, Catalog>> = { en };

/** The clinical tables as the pages use them. They come with the program, so the pages read them directly. */
const tables = contentWith({ ...leafletRules, catalogs });
export const content: VisitContent = { ...tables, acidDay: { ...tables.acidDay, runsElsewhere: true } };

export const sayEnglish = sayIn(en, 'en');

const CATALOGS: Readonly<Record<Exclude<LeafletLanguage, 'en'>, () => Promise<{ readonly default: Catalog }>>> = {
  es: () => import('../content/texts/locales/es.json'),
  fr: () => import('../content/texts/locales/fr.json'),
  ar: () => import('../content/texts/locales/ar.json'),
};

/** Reads the words of a language, once; false where they were there already. */
export async function loadCatalog(language: LeafletLanguage): Promise<boolean> {
  if (language === 'en' || catalogs[language]) return false;
  catalogs[language] = (await CATALOGS[language]()).default;
  return true;
}

/** Every source by its key. */
export const sourceIndex: Readonly<Record<string, Source>> = {
  ...sources,
  ...readingSources,
  ...regimenSources,
  ...leafletSources,
  ...controlSources,
  ...varianceSources,
  ...agreementSources,
  ...chemistrySources,
  ...plaqueSources,
  ...daySources,
};

export const questions: readonly Question[] = content.questions;

const questionById = new Map(questions.map((q) => [q.id, q]));

/**
 * One assessment, the same code as the server's. Until the words of a language are there, what the leaflet would say is said in English:
 * the page to hand over is always the server's.
 */
export const assess = (input: VisitInput): VisitAssessment => assessVisit(inLanguagesAtHand(input), content);

/** The same, what an answer changes at once before the plan. */
export const assessStepwise = (input: VisitInput): VisitSteps => assessInSteps(inLanguagesAtHand(input), content);

function inLanguagesAtHand(input: VisitInput): VisitInput {
  const { person, visit } = input;
  const isAtHand = (language: LeafletLanguage) => catalogs[language] !== undefined;
  const homes = person.homes?.map((home) => (isAtHand(home.language) ? home : { ...home, language: 'en' as const }));
  if (isAtHand(visit.language) && (person.homes ?? []).every(({ language }) => isAtHand(language))) return input;
  return { ...input, person: { ...person, homes }, visit: isAtHand(visit.language) ? visit : { ...visit, language: 'en' } };
}

export const findQuestion = (id: string): Question | undefined => questionById.get(id);

/** Questions whose answer fills this item of a list. */
export const questionsOfItem = (item: string): readonly Question[] => questions.filter((q) => q.fills.some((f) => f.item === item));

/** Items that a private question fills: left out while the patient looks. */
export const privateItemIds: ReadonlySet<string> = new Set(
  Object.keys(riskItems).filter((item) => questionsOfItem(item).some((q) => q.private === true)),
);

export const itemLabel = (item: string): string => riskItems[item]?.label ?? item;

export const flagText = (flag: string): string => riskFlags[flag] ?? flag;

export const protocolName = (id: string): string => content.protocols.find((p) => p.id === id)?.screenName ?? id;

export const shelfName = (shelf: readonly ShelfItem[], id: string): string => shelf.find((item) => item.id === id)?.name ?? id;

/** How a source is cited; its key where the list does not hold it, so that a gap is seen and not hidden. */
export const citationOf = (key: string): string => sourceIndex[key]?.cite ?? key;

export const findProtocol = (id: string) => content.protocols.find((p) => p.id === id);
