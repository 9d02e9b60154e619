import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { Answers, AnswerValue } from '../visit/answer.ts';
import type { ItemFill, Question } from '../visit/question.ts';
import type { Finding, PracticeSettings } from '../visit/types.ts';
import type { FindingFill, ItemExclusion } from './findingFill.ts';
import { type FoundCount, listFindingVotes } from './findingVotes.ts';
import { type KnownAnswers, knownAnswers, questionsAtAge } from './knownAnswers.ts';
import type { Items, ItemValue } from './types.ts';

export interface ItemsInput {
  readonly answers: Answers;
  readonly findings: readonly Finding[];
  /** True: every tooth and surface was looked at, so no finding means sound. Anything else: absence means nothing. */
  readonly allExamined: boolean | undefined;
  readonly questions: readonly Question[];
  readonly findingFills: readonly FindingFill[];
  readonly exclusions: readonly ItemExclusion[];
  readonly ageYears: number;
  readonly onDate: string;
  readonly settings: Pick<PracticeSettings, 'stimulatedFlowLowAtMostMlPerMin'>;
}

export interface ItemsFromAnswers extends KnownAnswers {
  readonly items: Items;
}

/** What one question or the look at the teeth says of one item; `undefined` = it should say something and cannot. */
export type Vote = ItemValue | undefined;

/**
 * Items of the lists from the answers and findings of a visit. Asked once, an answer fills every list that needs it.
 *
 * A yes/no item with several sources is true if any says true, false only if all say false, else unknown. A question that is optional
 * and unanswered is no source. A count takes the larger of what was told and what was found; what was found settles it alone only
 * when everything was examined, or once more of it would change nothing.
 * A swab reading is no input: no published list has it as an item.
 * @throws TypeError when an answer has a value of the wrong kind for what it fills; the message names the question
 */
export function itemsFromAnswers(input: ItemsInput): ItemsFromAnswers {
  const { known, unknown } = knownAnswers(input);
  const found = listFindingVotes(input.findings, input.findingFills, input.allExamined === true);
  const fillsByItem = fillsAtAge(input.questions)(input.ageYears);
  const items: Record<string, ItemValue> = {};
  const join = (item: string, fills: readonly AskedFill[]) => {
    const seen = found.votes.get(item);
    const count = found.counts.get(item);
    const answered = listAnswerVotes(fills, known, input.settings);
    const votes = seen ? [...answered, ...seen] : answered;
    const value = count ? joinCount(votes, count) : joinVotes(votes);
    if (value !== undefined) items[item] = value;
  };
  for (const [item, fills] of fillsByItem) join(item, fills);
  for (const item of found.items) if (!fillsByItem.has(item)) join(item, []);
  for (const { item, when } of input.exclusions) if (items[when] === true) items[item] = false;
  return { items, known, unknown };
}

interface AskedFill {
  readonly question: Question;
  readonly fill: ItemFill;
}

/** By item, what the questions of an age can fill it with, in the order of the questions. */
const fillsAtAge = keepByTable((questions: readonly Question[]) =>
  keepByKey((ageYears: number): ReadonlyMap<string, readonly AskedFill[]> => {
    const fills = questionsAtAge(questions, ageYears).flatMap((question) => question.fills.map((fill) => ({ question, fill })));
    return new Map(fills.map(({ fill: { item } }) => [item, fills.filter((asked) => asked.fill.item === item)]));
  }),
);

function listAnswerVotes(fills: readonly AskedFill[], known: KnownAnswers['known'], settings: ItemsInput['settings']): Vote[] {
  const votes: Vote[] = [];
  for (const { question, fill } of fills) {
    const value = known[question.id];
    if (value !== undefined) votes.push(applyFill(fill, value, question.id, settings));
    else if (question.optional !== true) votes.push(undefined);
  }
  return votes;
}

/** Unknown without any vote; one vote stands as it is. */
function joinVotes(votes: readonly Vote[]): Vote {
  if (votes.length <= 1) return votes[0];
  const isAllTold = !votes.includes(undefined);
  const numbers = votes.filter((v) => typeof v === 'number');
  if (numbers.length > 0) return isAllTold ? Math.max(...numbers) : undefined;
  if (votes.includes(true)) return true;
  return isAllTold ? false : undefined;
}

function joinCount(votes: readonly Vote[], count: FoundCount): Vote {
  const told = joinVotes(votes);
  if (typeof told === 'number') return Math.max(told, count.found);
  return count.settled ? count.found : undefined;
}

/** What one answer says of one item; undefined where it leaves the item open. */
export function applyFill(
  fill: ItemFill,
  value: AnswerValue,
  question: string,
  settings: Pick<PracticeSettings, 'stimulatedFlowLowAtMostMlPerMin'>,
): Vote {
  const wrong = (wanted: string) => new TypeError(`answer to ${question} must be ${wanted} to fill ${fill.item}: ${JSON.stringify(value)}`);
  if ('copy' in fill) {
    if (typeof value === 'boolean' || typeof value === 'number') return value;
    throw wrong('yes, no or a number');
  }
  if ('equals' in fill) return value === fill.equals;
  if ('oneOf' in fill) {
    if (typeof value !== 'string') throw wrong('a choice');
    return fill.oneOf.includes(value) || (fill.unknownWhenAny?.includes(value) ? undefined : false);
  }
  if ('includesAny' in fill) {
    if (!Array.isArray(value)) throw wrong('a list');
    return fillFromList(fill, value);
  }
  if (typeof value !== 'number') throw wrong('a number');
  if ('atLeast' in fill) return value >= fill.atLeast;
  return value <= (fill.setting === undefined ? fill.atMost : settings[fill.setting]);
}

function fillFromList(fill: Extract<ItemFill, { includesAny: readonly string[] }>, ids: readonly string[]): boolean | undefined {
  const holds = fill.includesAny.length === 0 ? ids.length > 0 : ids.some((id) => fill.includesAny.includes(id));
  if (holds) return true;
  return ids.some((id) => fill.unknownWhenAny?.includes(id)) ? undefined : false;
}
