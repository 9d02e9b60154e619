import type { Plan } from '../../../core/regimen/types.ts';
import type { Choice } from '../../../core/visit/question.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { plural } from '../../format.ts';
import { type Line, lettersWithout } from './line.ts';
import { waysOf } from './regimenWays.ts';
import { RHYTHM_LETTER } from './rhythmLine.ts';

type Agreed = VisitInput['visit']['agreed'];

/** Ids of the lines of the plan that are no item of it. */
export const TASKS_ACCEPTED = 'tasks accepted';
/** Taken by its own key, so it is no line that opens. */
export const OTHER_REGIMEN = 'other regimen';
export const MORE_REGIMENS = 'more regimens';
/** The day once all that waits is signed. */
export const ONCE_SIGNED = 'once signed';
const ONCE_SIGNED_LETTER = 'w';
const TASKS_LETTER = 't';
const MORE_LETTER = 'm';

const PLAIN = { mayBeUnknown: false, wanted: false, reconfirmable: false, private: false, sources: [] } as const;
/** Each digit is its own number; 9 stands for any number. */
const TASK_CHOICES: readonly Choice[] = [
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((count) => ({ id: String(count), label: '' })),
  { id: 'any', label: 'any number' },
  { id: '0', label: 'none' },
];

interface PlanLinesPlace {
  readonly plan: Plan;
  readonly agreed: Agreed;
  /** Letters of the scope's own commands. */
  readonly commands: string;
  /** How the days run; null where a described day says more. */
  readonly rhythm: Line | null;
  /** Something for use at home waits for a signature. */
  readonly isWaiting: boolean;
  readonly nameOf: (shelfItemId: string) => string;
}

/** Items of the plan with what could stand in their place, its day once signed, how the days run, the other regimens, and the tasks accepted. */
export function planLines({ plan, agreed, commands, rhythm, isWaiting, nameOf }: PlanLinesPlace): readonly Line[] {
  const letters = lettersWithout(`${commands}${TASKS_LETTER}${MORE_LETTER}${RHYTHM_LETTER}${ONCE_SIGNED_LETTER}`);
  const items = plan.lines.map((line, i): Line => {
    const choices = listSwaps(plan, line.shelfItemId).map((swap) => ({ id: swap.shelfItemId, label: saySwap(swap, nameOf) }));
    return {
      ...PLAIN,
      id: line.shelfItemId,
      letter: letters[i] ?? '',
      label: line.name,
      entry: choices.length > 0 ? { kind: 'choice', choices } : { kind: 'none' },
      text: '',
      tone: 'new',
    };
  });
  const rest = waysOf(plan)?.rest ?? [];
  const isAtHome = plan.lines.some(({ use }) => use.atVisit !== true);
  return [
    ...items,
    ...(isWaiting ? [onceSignedLine] : []),
    ...(isAtHome && rhythm ? [rhythm] : []),
    ...(rest.length > 0 ? [moreLine(rest)] : []),
    ...(isAsked(plan, agreed) ? [tasksLine(agreed?.tasksAccepted)] : []),
  ];
}

const isAsked = ({ lines, conflict }: Plan, agreed: Agreed): boolean =>
  lines.some(({ use }) => use.atVisit !== true) ||
  agreed?.tasksAccepted !== undefined ||
  conflict?.constraints.some(({ id }) => id === 'tasks') === true;

const onceSignedLine: Line = {
  ...PLAIN,
  id: ONCE_SIGNED,
  letter: ONCE_SIGNED_LETTER,
  label: 'Once all that waits is signed',
  entry: { kind: 'none' },
  text: '',
  tone: 'new',
};

const moreLine = (rest: readonly { readonly id: string }[]): Line => ({
  ...PLAIN,
  id: MORE_REGIMENS,
  letter: MORE_LETTER,
  label: `${plural(rest.length, 'more regimen')}`,
  entry: { kind: 'choice', choices: rest.map(({ id }, i) => ({ id, label: String(i + 1) })) },
  text: '',
  tone: 'new',
});

const tasksLine = (accepted: number | 'any' | undefined): Line => ({
  ...PLAIN,
  id: TASKS_ACCEPTED,
  letter: TASKS_LETTER,
  label: 'Tasks a day accepted',
  prompt: 'How many tasks a day at home at most?',
  entry: { kind: 'choice', choices: TASK_CHOICES },
  text: accepted === undefined ? 'not asked' : accepted === 'any' ? 'any number' : accepted === 0 ? 'none' : `at most ${accepted}`,
  tone: accepted === undefined ? 'unknown' : 'new',
  value: accepted === undefined ? undefined : String(accepted),
});

/** What was keyed for the tasks, as it is kept. */
export const tasksOfReply = (value: string): number | 'any' => (value === 'any' ? 'any' : Number(value));

/** Another pack that could stand in the place of one, with what makes it better. */
export interface SwapChoice {
  readonly shelfItemId: string;
  /** "costs less a month", "fewer uses a day"; empty = merely another one. */
  readonly says: readonly string[];
}

/** Packs that could stand in the place of one: those that answer the reason given first, then those that are better in any way. */
export function listSwaps(
  { alternatives, swaps = [], lines }: Pick<Plan, 'alternatives' | 'swaps' | 'lines'>,
  insteadOf: string,
  why?: string,
): readonly SwapChoice[] {
  const better = swaps.filter((swap) => swap.insteadOf === insteadOf);
  const others = alternatives.filter((a) => a.insteadOf === insteadOf).map(({ line }) => line.shelfItemId);
  const ids = [...new Set([...better.map((swap) => swap.shelfItemId), ...others])];
  const rank = (id: string): number => {
    const reasons = better.filter((swap) => swap.shelfItemId === id);
    return reasons.some((swap) => swap.because === why) ? 0 : reasons.length > 0 ? 1 : 2;
  };
  return ids
    .filter((id) => !lines.some((line) => line.shelfItemId === id))
    .sort((a, b) => rank(a) - rank(b))
    .map((id) => ({ shelfItemId: id, says: better.filter((swap) => swap.shelfItemId === id).map((swap) => swap.says) }));
}

/** "Gum with polyols, no xylitol: costs less a month" */
export const saySwap = ({ shelfItemId, says }: SwapChoice, nameOf: (id: string) => string): string =>
  says.length === 0 ? nameOf(shelfItemId) : `${nameOf(shelfItemId)}: ${says.join(', ')}`;
