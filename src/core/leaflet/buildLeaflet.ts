import type { Need, PersonFacts, Plan, PlanLine, ShelfItem } from '../regimen/types.ts';
import { addMonthsToDate } from '../visit/calendar.ts';
import type { ReleasedChoices } from '../visit/privacy.ts';
import type { MouthDecision } from '../visit/types.ts';
import { buildDaySteps, type StepReader, spitsOut } from './buildDaySteps.ts';
import { type GoalContext, sayGoal, suggestAboutFood } from './chooseGoals.ts';
import {
  capitaliseFirst,
  fillIn,
  formatLeafletDate,
  formatMoney,
  type LeafletPractice,
  leafletCurrency,
  leafletLocale,
  lowerFirst,
} from './formatForLeaflet.ts';
import type { LeafletTable, LeafletWords } from './leafletTable.ts';
import { listLeafletCautions } from './listLeafletCautions.ts';
import { type ItemAgreement, listPrintableLines, type PrintableLine } from './listPrintableLines.ts';
import { sumMonthlyCost } from './sumMonthlyCost.ts';
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
  /** Only whether food is a need; absent = no suggestion about food unless one was agreed. */
  readonly needs?: readonly Need[] | undefined;
}

/** What every block of the page looks at. */
interface Page {
  readonly input: LeafletInput;
  readonly words: LeafletWords;
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
  const words = texts.words[language];
  const locale = leafletLocale(language, practice);
  const page: Page = { input, words, locale, printed: listPrintableLines(input.plan.lines, input.shelf, input.agreed?.items) };
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
    title: input.mouth?.kind === 'level-does-not-apply' ? words.titleWithoutTeeth : words.title,
    personName: person.name,
    ...(input.home !== undefined && { home: fillIn(words.forHome, { home: input.home }) }),
    practiceName: practice.name,
    date: sayDate(date, page),
    ...sayGoals(page),
    day: buildDaySteps(page.printed, texts, reader),
    ...(input.strip && { strip: { ...input.strip, words: words.strip } }),
    cautions: listLeafletCautions(input.plan.cautions, page.printed, person.ageYears, texts.cautions).map((id) =>
      sayCaution(id, words, reader),
    ),
    advice: input.plan.advice.filter(({ onLeaflet }) => onLeaflet).map(({ id }) => sayAdvice(id, words)),
    stopUsing: (input.stopUsing ?? []).map((typed) => sayItem(typed, page)),
    ...sayReleased(page),
    monthlyCost: sayCost(page),
    signedBy: saySignatures(page),
    nextDate: sayNextDate(page),
    demoNotice: practice.invented ? fillIn(words.demoNotice, { practice: practice.name }) : null,
    labels: words.labels,
    slots: words.slots,
    foot: fillIn(words.foot, { name: person.name, date }),
  };
}

/** A page that was printed before is told apart from the corrected one. */
function sayDate(date: string, { input: { correctedOn }, words, locale }: Page): string {
  return correctedOn === undefined ? date : fillIn(words.corrected, { date, corrected: formatLeafletDate(correctedOn, locale, 'day') });
}

function sayGoals(page: Page): Pick<Leaflet, 'keep' | 'tryThis'> {
  const { input, words, printed } = page;
  const context: GoalContext = {
    ageYears: input.person.ageYears,
    diet: input.plan.diet,
    goals: input.texts.goals,
    words,
    everyLanguage: Object.values(input.texts.words),
  };
  const { agreed } = input;
  const needsFood = input.needs?.some(({ kind, state }) => kind === 'diet' && state === 'needed') === true;
  return {
    keep:
      sayGoal(agreed?.keep, context) ??
      sayBrushing(input.plan.lines, printed, words) ??
      (isBeforeTeeth(input) ? words.keepUpForChild : words.keepUp),
    tryThis: sayGoal(agreed?.tryThis, context) ?? (needsFood ? suggestAboutFood(context) : undefined) ?? sayNewItem(page) ?? null,
  };
}

/** Brushing is kept wherever paste is part of the plan, so that nobody stops while a stronger one waits for its signature. */
function sayBrushing(planned: readonly PlanLine[], printed: readonly PrintableLine[], words: LeafletWords): string | undefined {
  if (printed.some(({ line }) => line.meets.includes('fluoride-base'))) return words.keepBrushing;
  return planned.some(({ meets }) => meets.includes('fluoride-base')) ? words.keepBrushingWithFluoride : undefined;
}

/** The first home-care item beyond the daily paste. */
function sayNewItem({ printed, words, locale, input: { language } }: Page): string | undefined {
  const added = printed.find(({ line }) => line.use.atVisit !== true && !line.meets.includes('fluoride-base'));
  return added && fillIn(words.startWith, { item: lowerFirst(added.item.leafletName[language], locale) });
}

function sayCaution(id: string, words: LeafletWords, reader: StepReader): string {
  const text = (spitsOut(reader) ? undefined : words.cautions[`${id}/cannot-spit`]) ?? words.cautions[id];
  if (text === undefined) throw new RangeError(`no words for caution ${id}`);
  return text;
}

function sayAdvice(id: string, words: LeafletWords): string {
  const text = words.advice[id];
  if (text === undefined) throw new RangeError(`no words for advice ${id}`);
  return text;
}

const isBeforeTeeth = ({ mouth }: LeafletInput): boolean => mouth?.reasons.includes('no-teeth-yet') === true;

function sayItem(typed: string, { input, locale }: Page): string {
  return capitaliseFirst(input.shelf.find(({ id }) => id === typed)?.leafletName[input.language] ?? typed, locale);
}

function sayReleased({ input: { released = [] }, words }: Page): Pick<Leaflet, 'released'> {
  const said = released.flatMap(({ question, choices }) => choices.flatMap((choice) => words.privateChoices[question]?.[choice] ?? []));
  return said.length === 0 ? {} : { released: said };
}

function saySignatures({ input, words, locale, printed }: Page): readonly string[] {
  return printed.flatMap(({ line: { state, signedBy }, item }) => {
    if (state !== 'signed' || !signedBy) return [];
    const signed = { item: capitaliseFirst(item.leafletName[input.language], locale), name: signedBy.name };
    const order = signedBy.standingOrder;
    if (!order) return [fillIn(words.signed, signed)];
    return [fillIn(words.signedOnOrder, { ...signed, order: order.name, date: formatLeafletDate(order.date, locale, 'day') })];
  });
}

function sayCost({ input, words, locale, printed }: Page): string | null {
  const cost = sumMonthlyCost(printed);
  const currency = leafletCurrency(input.practice);
  if (cost === undefined || currency === undefined) return null;
  return fillIn(cost.complete ? words.cost.about : words.cost.atLeast, { money: formatMoney(cost.cents, currency, locale) });
}

/** The agreed date; else the shorter end of the recall interval as a suggestion; else the first tooth, or whom to ask. */
function sayNextDate({ input, words, locale }: Page): string {
  if (input.nextOn !== undefined) return formatLeafletDate(input.nextOn, locale, 'weekday');
  if (input.plan.recall === null) return isBeforeTeeth(input) ? words.next.firstTooth : words.next.ask;
  const { fromMonths } = input.plan.recall;
  const month = formatLeafletDate(addMonthsToDate(input.onDate, fromMonths), locale, 'month');
  return fillIn(fromMonths === 1 ? words.next.aboutOneMonth : words.next.about, { n: fromMonths, month });
}
