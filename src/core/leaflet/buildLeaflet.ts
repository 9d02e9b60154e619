import type { DayStrip } from '../regimen/dayStrip/types.ts';
import type { Need, PersonFacts, Plan, ShelfItem } from '../regimen/types.ts';
import { addMonthsToDate } from '../visit/calendar.ts';
import type { ReleasedChoices } from '../visit/privacy.ts';
import type { MouthDecision } from '../visit/types.ts';
import { buildDaySteps, SLOT_ORDER, type StepReader, spitsOut } from './buildDaySteps.ts';
import { buildDayStrip } from './buildDayStrip.ts';
import { cautionMessage } from './cautionMessage.ts';
import { type GoalContext, sayGoal, suggestAboutFood } from './chooseGoals.ts';
import {
  capitaliseFirst,
  formatLeafletDate,
  formatMoney,
  type LeafletPractice,
  leafletCurrency,
  leafletLocale,
  lowerFirst,
} from './formatForLeaflet.ts';
import { catalogOf, type LeafletTable } from './leafletTable.ts';
import { listLeafletCautions } from './listLeafletCautions.ts';
import { type ItemAgreement, listPrintableLines, type PrintableLine } from './listPrintableLines.ts';
import { type NameOnLeaflet, nameOnLeaflet } from './nameOnLeaflet.ts';
import { type Catalog, type Say, sayIn } from './sayMessage.ts';
import { sumMonthlyCost } from './sumMonthlyCost.ts';
import { timesOfUses } from './timesOfUses.ts';
import type { Leaflet, LeafletLanguage, LeafletStrip } from './types.ts';

export interface LeafletInput {
  readonly plan: Pick<Plan, 'lines' | 'cautions' | 'recall' | 'diet' | 'advice'>;
  /** Absent = an ordinary mouth. */
  readonly mouth?: Pick<MouthDecision, 'kind' | 'reasons'> | undefined;
  readonly person: { readonly name: string; readonly ageYears: number };
  readonly practice: LeafletPractice;
  /** Local date of the visit, "YYYY-MM-DD". */
  readonly onDate: string;
  readonly language: LeafletLanguage;
  /** Whose page of several, in words; absent = there is one page. */
  readonly home?: string | undefined;
  /** Private answers that a professional released on purpose, as `listReleased` gives them. */
  readonly released?: readonly ReleasedChoices[] | undefined;
  /** What was agreed; a goal is an id of the table or the professional's own words. */
  readonly agreed?:
    | {
        readonly keep?: string | undefined;
        readonly tryThis?: string | undefined;
        readonly items?: Readonly<Record<string, ItemAgreement>> | undefined;
      }
    | undefined;
  /** What is used when, of the items that may be printed; absent = no item has a time. */
  readonly uses?: DayStrip | undefined;
  /** The day as told, where a professional put it on the leaflet. */
  readonly strip?: LeafletStrip | undefined;
  /** Shelf item ids, or names as typed. */
  readonly stopUsing?: readonly string[] | undefined;
  readonly nextOn?: string | undefined;
  /** Local date of a correction after the visit was closed. */
  readonly correctedOn?: string | undefined;
  readonly shelf: readonly ShelfItem[];
  readonly texts: LeafletTable;
  readonly facts: Pick<PersonFacts, 'canSpit'>;
  /** Whether the visit asks about pregnancy at this age; absent = not known, so the page says what holds then. */
  readonly mayBePregnant?: boolean | undefined;
  /** Only whether food is a need; absent = no suggestion about food unless one was agreed. */
  readonly needs?: readonly Need[] | undefined;
}

/** Below this age a grown-up does it (the paste label, as in the caution of the same age). */
const GROWN_UP_BELOW_YEARS = 7;

const LABELS = ['keep', 'try', 'day', 'who', 'advice', 'cautions', 'call', 'stop', 'cost', 'next', 'released'] as const;
const STRIP_WORDS = ['title', 'told', 'changed', 'dark', 'caution'] as const;

const recordOf = <K extends string>(keys: readonly K[], say: (key: K) => string) =>
  Object.fromEntries(keys.map((key) => [key, say(key)])) as Record<K, string>;

/** What every block of the page looks at. */
interface Page {
  readonly input: LeafletInput;
  readonly catalog: Catalog;
  readonly say: Say;
  readonly locale: string;
  readonly printed: readonly PrintableLine[];
}

/**
 * The page that a person takes home, as data: one thing to keep, one to try, the day, cautions, what to stop, cost, next date.
 * An item that needs a signature stands on it only once signed; a declined or unaffordable one never. No reading, level,
 * probability or outcome can reach it: none is among the inputs that are printed. A private answer only where it was released.
 * @param input  the plan's items must all be on the shelf
 * @returns      every sentence in the reader's language, dates and money in the site's way
 * @throws RangeError for an item that is not on the shelf, a date that is none, a caution or advice without words, or home use without times a day
 */
export function buildLeaflet(input: LeafletInput): Leaflet {
  const { person, practice, language, texts } = input;
  const catalog = catalogOf(texts, language);
  const locale = leafletLocale(language, practice);
  const say = sayIn(catalog, locale);
  const page: Page = { input, catalog, say, locale, printed: listPrintableLines(input.plan.lines, input.shelf, input.agreed?.items) };
  const { printed } = page;
  const reader = {
    ageYears: person.ageYears,
    canSpit: input.facts.canSpit,
    jurisdiction: practice.jurisdiction ?? 'unknown',
    language,
    locale,
  } as const;
  const date = formatLeafletDate(input.onDate, locale, 'day');
  return {
    language,
    title: say(input.mouth?.kind === 'level-does-not-apply' ? 'titleWithoutTeeth' : 'title'),
    personName: person.name,
    ...(input.home !== undefined && { home: say('forHome', { home: input.home }) }),
    practiceName: practice.name,
    date: sayDate(date, page),
    ...sayGoals(page),
    day: buildDaySteps(printed, texts, reader, input.uses && timesOfUses(input.uses, say, locale)),
    ...(input.uses && buildDayStrip({ ...page, reader, strip: input.uses })),
    who: printed.length > 0 && person.ageYears < GROWN_UP_BELOW_YEARS ? say('who.grownUp') : null,
    ...(input.strip && { strip: { rows: input.strip.rows, words: recordOf(STRIP_WORDS, (id) => say(`strip.${id}`)) } }),
    cautions: listLeafletCautions(input.plan.cautions, printed, person.ageYears, texts.cautions).map((id) => sayCaution(id, page, reader)),
    call: [say('call.us'), say('call.emergency')],
    advice: input.plan.advice.filter(({ onLeaflet }) => onLeaflet).map(({ id }) => say(`advice.${id}`)),
    stopUsing: (input.stopUsing ?? []).map((typed) => capitaliseFirst(nameOfTyped(typed, input).text, locale)),
    ...sayReleased(page),
    monthlyCost: sayCost(page),
    signedBy: saySignatures(page),
    nextDate: sayNextDate(page),
    demoNotice: practice.invented ? say('demoNotice', { practice: practice.name }) : null,
    labels: recordOf(LABELS, (id) => say(`label.${id}`)),
    slots: recordOf(SLOT_ORDER, (id) => say(`slot.${id}`)),
    foot: say('foot', { name: person.name, date }),
    footPages: say('footPages', { name: person.name, date, page: '{page}', pages: '{pages}' }),
    review: texts.awaitingReview.includes(language) ? say('review') : null,
    notInLanguage: listStandIns(page),
  };
}

/** A page that was printed before is told apart from the corrected one. */
function sayDate(date: string, { input: { correctedOn }, say, locale }: Page): string {
  return correctedOn === undefined ? date : say('corrected', { date, corrected: formatLeafletDate(correctedOn, locale, 'day') });
}

function sayGoals(page: Page): Pick<Leaflet, 'keep' | 'tryThis'> {
  const { input, say } = page;
  const context: GoalContext = {
    ageYears: input.person.ageYears,
    diet: input.plan.diet,
    goals: input.texts.goals,
    say,
    catalogs: Object.values(input.texts.catalogs),
  };
  const { agreed } = input;
  const needsFood = input.needs?.some(({ kind, state }) => kind === 'diet' && state === 'needed') === true;
  return {
    keep: sayGoal(agreed?.keep, context) ?? sayBrushing(page) ?? say(isBeforeTeeth(input) ? 'keepUpForChild' : 'keepUp'),
    tryThis: sayGoal(agreed?.tryThis, context) ?? (needsFood ? suggestAboutFood(context) : undefined) ?? sayNewItem(page) ?? null,
  };
}

/** Brushing is kept wherever paste is part of the plan, so that nobody stops while a stronger one waits for its signature. */
function sayBrushing({ printed, say, input }: Page): string | undefined {
  if (printed.some(({ line }) => line.meets.includes('fluoride-base'))) return say('keepBrushing');
  return input.plan.lines.some(({ meets }) => meets.includes('fluoride-base')) ? say('keepBrushingWithFluoride') : undefined;
}

/** The first home-care item beyond the daily paste. */
function sayNewItem({ printed, say, locale, input: { language } }: Page): string | undefined {
  const added = printed.find(({ line }) => line.use.atVisit !== true && !line.meets.includes('fluoride-base'));
  return added && say('startWith', { item: lowerFirst(nameOnLeaflet(added.item, language).text, locale) });
}

function sayCaution(id: string, { input, catalog, say }: Page, reader: StepReader): string {
  return say(cautionMessage(id, catalog, { spits: spitsOut(reader), mayBePregnant: input.mayBePregnant ?? true }));
}

const isBeforeTeeth = ({ mouth }: LeafletInput): boolean => mouth?.reasons.includes('no-teeth-yet') === true;

/** An item of the shelf by its id, or the professional's own words. */
function nameOfTyped(typed: string, { shelf, language }: LeafletInput): NameOnLeaflet {
  const item = shelf.find(({ id }) => id === typed);
  return item ? nameOnLeaflet(item, language) : { text: typed, isStandIn: false };
}

/** Names on this page that are English because there is none in its language. */
function listStandIns({ input, printed }: Page): readonly string[] {
  const names = [
    ...printed.map(({ item }) => nameOnLeaflet(item, input.language)),
    ...(input.stopUsing ?? []).map((typed) => nameOfTyped(typed, input)),
  ];
  return [...new Set([...names.filter(({ isStandIn }) => isStandIn).map(({ text }) => text), ...(input.strip?.notInLanguage ?? [])])];
}

function sayReleased({ input: { released = [] }, catalog, say }: Page): Pick<Leaflet, 'released'> {
  const said = released.flatMap(({ question, choices }) =>
    choices.flatMap((choice) => (Object.hasOwn(catalog, `private.${question}.${choice}`) ? [say(`private.${question}.${choice}`)] : [])),
  );
  return said.length === 0 ? {} : { released: said };
}

function saySignatures({ input, say, locale, printed }: Page): readonly string[] {
  return printed.flatMap(({ line: { state, signedBy }, item }) => {
    if (state !== 'signed' || !signedBy) return [];
    const signed = { item: capitaliseFirst(nameOnLeaflet(item, input.language).text, locale), name: signedBy.name };
    const order = signedBy.standingOrder;
    if (!order) return [say('signed', signed)];
    return [say('signedOnOrder', { ...signed, order: order.name, date: formatLeafletDate(order.date, locale, 'day') })];
  });
}

function sayCost({ input, say, locale, printed }: Page): string | null {
  const cost = sumMonthlyCost(printed);
  const currency = leafletCurrency(input.practice);
  if (cost === undefined || currency === undefined) return null;
  return say(cost.complete ? 'cost.about' : 'cost.atLeast', { money: formatMoney(cost.cents, currency, locale) });
}

/** The agreed date; else the shorter end of the recall interval as a suggestion; else the first tooth, or whom to ask. */
function sayNextDate({ input, say, locale }: Page): string {
  if (input.nextOn !== undefined) return formatLeafletDate(input.nextOn, locale, 'weekday');
  if (input.plan.recall === null) return say(isBeforeTeeth(input) ? 'next.firstTooth' : 'next.ask');
  const { fromMonths } = input.plan.recall;
  const month = formatLeafletDate(addMonthsToDate(input.onDate, fromMonths), locale, 'month');
  return say('next.about', { n: fromMonths, month });
}
