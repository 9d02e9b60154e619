import type { Adherence, GoalState, PastCare, UsedSince, VisitInput } from '../../../core/visit/types.ts';
import { formatMonth } from '../../format.ts';
import type { Line, Reply } from './line.ts';
import { isListedReason, isOtherReason, REASONS } from './reasons.ts';

type VisitPart = Pick<VisitInput['visit'], 'pastCare' | 'used' | 'pastGoals' | 'goalsSince'>;

const ADHERENCE: readonly { readonly id: Adherence; readonly label: string }[] = [
  { id: 'as-agreed', label: 'as agreed' },
  { id: 'less-often', label: 'less often' },
  { id: 'stopped', label: 'stopped' },
  { id: 'not-begun', label: 'not begun' },
  { id: 'does-not-know', label: 'does not know' },
];

const GOAL_STATES: readonly { readonly id: GoalState; readonly label: string }[] = [
  { id: 'reached', label: 'reached' },
  { id: 'still-on', label: 'still on' },
  { id: 'dropped', label: 'dropped' },
];

const USED = 'used ';
const WHY = 'used-why ';
const GOAL = 'goal ';
const NEEDS_WHY: readonly Adherence[] = ['less-often', 'stopped', 'not-begun'];

/** Home care that may still be in use: agreed earlier and not ended since. */
export const listInUse = (pastCare: readonly PastCare[] = []) => pastCare.filter((care) => !care.turnedDown && care.until === undefined);

/** Since last time: what became of each item agreed before, and of each goal. No lines where nothing was. */
export function sinceLines(
  { pastCare, used = {}, pastGoals = [], goalsSince = {} }: VisitPart,
  letters: readonly string[],
): readonly Line[] {
  const items = listInUse(pastCare).map((care) => ({ care, said: used[care.shelfItemId] }));
  const lines: readonly Line[] = [
    ...items.flatMap(({ care, said }) => [usedLine(care, said), ...whyLines(care, said)]),
    ...pastGoals.map(({ id, text, since }) =>
      lineOf({
        id: `${GOAL}${id}`,
        label: `Goal: ${text}`,
        prompt: `Wanted since ${formatMonth(since)}. What became of it?`,
        entry: { kind: 'choice', choices: GOAL_STATES },
        text: GOAL_STATES.find((state) => state.id === goalsSince[id])?.label,
        value: goalsSince[id],
      }),
    ),
  ];
  const lettered = lines.filter((line) => !line.id.startsWith(WHY));
  return lines.map((line) => ({ ...line, letter: letters[lettered.indexOf(line)] ?? '' }));
}

function usedLine({ shelfItemId, name, since }: PastCare, said: UsedSince | undefined): Line {
  return lineOf({
    id: `${USED}${shelfItemId}`,
    label: name,
    prompt: `Agreed in ${formatMonth(since)}. How has it gone since?`,
    entry: { kind: 'choice', choices: ADHERENCE },
    text: ADHERENCE.find(({ id }) => id === said?.adherence)?.label,
    value: said?.adherence,
    note: `agreed ${formatMonth(since)}`,
  });
}

function whyLines({ shelfItemId, name }: PastCare, said: UsedSince | undefined): readonly Line[] {
  if (!said || !NEEDS_WHY.includes(said.adherence)) return [];
  const { why = '' } = said;
  const base = { id: `${WHY}${shelfItemId}`, label: 'because', prompt: `${name}: why?`, value: isOtherReason(why) ? '' : why };
  if (isOtherReason(why) || (why !== '' && !isListedReason(why)))
    // The person's own words may hold anything.
    return [
      lineOf({ ...base, private: true, entry: { kind: 'text', hint: 'in a few words' }, text: isOtherReason(why) ? undefined : why }),
    ];
  return [lineOf({ ...base, entry: { kind: 'choice', choices: REASONS }, text: why || undefined })];
}

function lineOf({
  text,
  ...part
}: Pick<Line, 'id' | 'label' | 'entry'> & { readonly text: string | undefined } & Partial<Omit<Line, 'text'>>): Line {
  return {
    letter: '',
    mayBeUnknown: false,
    text: text ?? 'not asked',
    tone: text === undefined ? 'unknown' : 'new',
    wanted: text === undefined,
    reconfirmable: false,
    private: false,
    sources: [],
    ...part,
  };
}

export const isSinceLine = (line: string): boolean => line.startsWith(USED) || line.startsWith(WHY) || line.startsWith(GOAL);

/** The field to save after an answer about last time. */
export function sinceField(line: string, reply: Reply, { used = {}, goalsSince = {} }: VisitPart): { path: string; value: unknown } | null {
  if (reply.how !== 'asked') return null;
  const value = String(reply.value);
  if (line.startsWith(GOAL)) return { path: 'goalsSince', value: { ...goalsSince, [line.slice(GOAL.length)]: value } };
  if (line.startsWith(USED)) return { path: 'used', value: { ...used, [line.slice(USED.length)]: { adherence: value } } };
  const id = line.slice(WHY.length);
  return line.startsWith(WHY) && used[id] ? { path: 'used', value: { ...used, [id]: { ...used[id], why: value } } } : null;
}

/** "stopped in May 2026: taste". What was dropped or turned down before, beside an item that the plan offers again. */
export function sayDropped(shelfItemId: string, { pastCare = [], used = {} }: VisitPart): string | undefined {
  const care = pastCare.find((past) => past.shelfItemId === shelfItemId);
  if (!care) return undefined;
  const today = used[shelfItemId];
  if (today?.adherence === 'stopped' || today?.adherence === 'not-begun') return say(ended(today.adherence), 'since last time', today.why);
  if (care.turnedDown) return say(care.turnedDown.replaceAll('-', ' '), `in ${formatMonth(care.since)}`, care.stopReason);
  if (care.until === undefined || (care.adherence !== 'stopped' && care.adherence !== 'not-begun')) return undefined;
  return say(ended(care.adherence), `in ${formatMonth(care.until)}`, care.stopReason);
}

const ended = (adherence: Adherence) => adherence.replaceAll('-', ' ');
const say = (what: string, when: string, why: string | undefined) => `${what} ${when}${why ? `: ${why}` : ''}`;
