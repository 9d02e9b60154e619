import { knownAnswers, type UnknownAnswer } from '../risk/knownAnswers.ts';
import type { Answers } from '../visit/answer.ts';
import type { Question } from '../visit/question.ts';

/** Something to do at a visit, and why, in words. Dates in the words are ISO local dates. */
export interface DueThing {
  readonly kind: 'visit' | 'recall' | 'safety' | 'weight' | 'bitewings' | 'check' | 'refill' | 'referral' | 'goal';
  readonly says: string;
}

export interface OpenTask {
  readonly kind: 'recall' | 'check' | 'refill' | 'referral' | 'goal';
  /** ISO local date. */
  readonly due: string;
  readonly note: string | null;
}

export interface DueInput {
  readonly onDate: string;
  readonly ageYears: number;
  /** Day of a visit that is open and not of `onDate`. */
  readonly openSince?: string | undefined;
  /** Day of the last closed visit; absent = there was none. */
  readonly lastVisitOn?: string | undefined;
  readonly tasks: readonly OpenTask[];
  /** As they would stand at the beginning of a visit on this day, with what an open visit has already. */
  readonly answers: Answers;
  readonly questions: readonly Question[];
  /** What the person wants, in his or her own words, from the last visit. */
  readonly goals: readonly string[];
  /** What the plan says of bitewings, where they are due. */
  readonly bitewings?: string | undefined;
}

const WEIGHT = 'weight_kg';

/** What is due on a day and why, the most binding first. What is not on record is said to be unknown and never taken for done. */
export function listDue(input: DueInput): readonly DueThing[] {
  const { onDate, tasks, goals, bitewings } = input;
  const dueNow = tasks.filter((task) => task.kind !== 'recall' && task.kind !== 'goal' && task.due <= onDate);
  // A goal is open until it is reached or dropped; its task holds the same words as the visit at which it was said.
  const wanted = new Set([...goals, ...tasks.flatMap(({ kind, note }) => (kind === 'goal' && note !== null ? [note] : []))]);
  return [
    ...visitAndRecall(input),
    ...safetyCheck(input),
    ...(bitewings === undefined ? [] : [{ kind: 'bitewings', says: bitewings } as const]),
    ...dueNow.map(sayTask),
    ...[...wanted].map((goal) => ({ kind: 'goal', says: `goal: “${goal}”` }) as const),
  ];
}

function visitAndRecall({ onDate, openSince, lastVisitOn, tasks }: DueInput): readonly DueThing[] {
  const open: DueThing[] = openSince === undefined ? [] : [{ kind: 'visit', says: `visit open since ${openSince}, not closed` }];
  if (lastVisitOn === undefined) return open.length > 0 ? open : [{ kind: 'visit', says: 'first visit' }];
  const recallOn = tasks
    .filter((task) => task.kind === 'recall')
    .map((task) => task.due)
    .sort()[0];
  return [...open, { kind: 'recall', says: sayRecall(recallOn, onDate) }];
}

function sayRecall(recallOn: string | undefined, onDate: string): string {
  if (recallOn === undefined) return 'no recall date on record';
  if (recallOn === onDate) return 'recall due this day';
  return recallOn < onDate ? `recall due since ${recallOn}` : `recall not due before ${recallOn}`;
}

/** Names no question, since some of them are private; but the weight of a child is wanted by name. */
function safetyCheck({ lastVisitOn, answers, questions, ageYears, onDate }: DueInput): readonly DueThing[] {
  const asked = questions.filter((question) => question.group === 'safety');
  const { unknown } = knownAnswers({ answers, questions: asked, ageYears, onDate });
  const weight = unknown.find((u) => u.question === WEIGHT);
  const others = unknown.filter((u) => u.question !== WEIGHT);
  // At a first visit everything is asked; saying so once is enough.
  const isFirst = lastVisitOn === undefined && Object.keys(answers).length === 0;
  return [
    ...(others.length === 0 || isFirst ? [] : [{ kind: 'safety', says: saySafety(others, answers) } as const]),
    ...(weight ? [{ kind: 'weight', says: sayWeight(weight, answers) } as const] : []),
  ];
}

function saySafety(unknown: readonly UnknownAnswer[], answers: Answers): string {
  const outOfDate = unknown.filter((u) => u.kind === 'out-of-date');
  const askedOn = outOfDate.flatMap((u) => answers[u.question]?.askedOn ?? []).sort()[0];
  const never = unknown.length - outOfDate.length;
  const parts = [
    outOfDate.length > 0 && `out of date, ${askedOn === undefined ? 'nobody noted when it was asked' : `last asked ${askedOn}`}`,
    never > 0 && `${never} ${never === 1 ? 'answer' : 'answers'} not known`,
  ].filter(Boolean);
  return `safety check: ${parts.join('; ')}`;
}

function sayWeight({ kind }: UnknownAnswer, answers: Answers): string {
  const { value, askedOn } = answers[WEIGHT] ?? {};
  if (kind !== 'out-of-date' || typeof value !== 'number') return 'weight of the child: not known';
  return `weight of the child: out of date, ${value} kg${askedOn === undefined ? '' : ` on ${askedOn}`}`;
}

const TASK_WORDS: Readonly<Record<OpenTask['kind'], string>> = {
  recall: 'recall',
  check: 'check of home care',
  refill: 'refill',
  referral: 'referral to follow up',
  goal: 'goal to ask about',
};

function sayTask({ kind, due, note }: OpenTask): DueThing {
  return { kind, says: `${TASK_WORDS[kind]}, due ${due}${note === null ? '' : `: ${note}`}` };
}
