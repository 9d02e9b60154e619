import { LANGUAGE_NAMES, LEAFLET_LANGUAGES } from '../../../core/leaflet/languages.ts';
import type { PlanLine } from '../../../core/regimen/types.ts';
import { isTurnedDown } from '../../../core/visit/turnedDown.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { formatDate } from '../../format.ts';
import { type Line, lettersWithout, type Reply } from './line.ts';
import { type SwapChoice, saySwap } from './planLines.ts';
import { isListedReason, isOtherReason, REASONS } from './reasons.ts';

type Agreed = NonNullable<VisitInput['visit']['agreed']>;
type ItemState = 'agreed' | 'declined' | 'not-affordable';

export interface AgreePlace {
  readonly planLines: readonly Pick<PlanLine, 'shelfItemId' | 'name'>[];
  /** What could stand in the place of a line, what answers the reason given first. */
  readonly swapsFor?: (shelfItemId: string, why: string | undefined) => readonly SwapChoice[];
  /** Names of items that were turned down and replaced, which the plan no longer holds. */
  readonly nameOf?: (shelfItemId: string) => string;
  readonly visit: Pick<VisitInput['visit'], 'agreed' | 'stopUsing' | 'nextOn' | 'language' | 'goals'>;
  /** What the leaflet would say as things stand. */
  readonly proposed: { readonly keep: string; readonly tryThis: string | null; readonly nextDate: string };
  /** Then what stands is what was agreed, and an item without a word on record is left out. */
  readonly isClosed?: boolean;
}

const ITEM_STATES = [
  { id: 'agreed', label: 'agreed' },
  { id: 'declined', label: 'declined' },
  { id: 'not-affordable', label: 'not affordable' },
] as const;

const LANGUAGES = LEAFLET_LANGUAGES.map((id) => ({ id, label: LANGUAGE_NAMES[id] }));

const ITEM = 'item ';
const WHY = 'why ';
const INSTEAD = 'instead ';
const NOTHING = 'nothing';
const MOST_GOALS = 5;

/** What was agreed: each line of the plan, one thing to keep, one to try, what to stop, the next date, the language of the leaflet. */
export function agreeLines(place: AgreePlace): readonly Line[] {
  const { planLines, visit, proposed, isClosed = false } = place;
  const letters = lettersWithout('zpktswlgv');
  const fallbackNote = isClosed ? undefined : 'proposed';
  const items = [...planLines, ...listReplaced(place)]
    .filter(({ shelfItemId }) => !isClosed || visit.agreed?.items?.[shelfItemId])
    .flatMap((plan, i) => itemLines(plan, letters[i] ?? '', place));
  const text = (id: string, letter: string, label: string, hint: string, own: string | undefined, fallback: string): Line =>
    lineOf({
      id,
      letter,
      label,
      entry: { kind: 'text', hint },
      text: own || fallback || 'nothing',
      tone: own ? 'new' : 'carried',
      value: own || fallback,
      note: own || !fallback ? undefined : fallbackNote,
    });
  return [
    ...items,
    text('keep', 'k', 'One thing to keep', 'printed at the top of the leaflet', visit.agreed?.keep, proposed.keep),
    text('tryThis', 't', 'One thing to try', 'printed at the top of the leaflet', visit.agreed?.tryThis, proposed.tryThis ?? ''),
    text(
      'goals',
      'g',
      "Goals, in the patient's words",
      `up to ${MOST_GOALS}, separate several with a semicolon`,
      visit.goals?.join('; '),
      '',
    ),
    text('stopUsing', 's', 'Stop using', 'separate several with a semicolon', visit.stopUsing?.join('; '), ''),
    lineOf({
      id: 'nextOn',
      letter: 'w',
      label: 'Next visit',
      entry: { kind: 'date' },
      text: visit.nextOn ? formatDate(visit.nextOn) : proposed.nextDate,
      tone: visit.nextOn ? 'new' : 'carried',
      value: visit.nextOn,
      note: visit.nextOn ? undefined : fallbackNote,
    }),
    lineOf({
      id: 'language',
      letter: 'l',
      label: 'Leaflet in',
      entry: { kind: 'choice', choices: LANGUAGES },
      text: LANGUAGE_NAMES[visit.language],
      tone: 'confirmed',
      value: visit.language,
    }),
  ];
}

/** Turned down and replaced: still on the record, though no longer in the plan. */
function listReplaced({ planLines, visit, nameOf = (id) => id }: AgreePlace): AgreePlace['planLines'] {
  const ids = Object.entries(visit.agreed?.items ?? {}).flatMap(([id, state]) =>
    isTurnedDown(state) && !planLines.some((line) => line.shelfItemId === id) ? [id] : [],
  );
  return ids.map((shelfItemId) => ({ shelfItemId, name: nameOf(shelfItemId) }));
}

function itemLines(plan: AgreePlace['planLines'][number], letter: string, place: AgreePlace): readonly Line[] {
  const { shelfItemId } = plan;
  const state = place.visit.agreed?.items?.[shelfItemId];
  const item = lineOf({
    id: `${ITEM}${shelfItemId}`,
    letter,
    label: plan.name,
    entry: { kind: 'choice', choices: ITEM_STATES },
    text: ITEM_STATES.find((s) => s.id === state)?.label ?? 'not talked about',
    tone: state ? 'new' : 'unknown',
    wanted: state === undefined,
    value: state,
    reconfirmable: state === undefined,
  });
  if (!isTurnedDown(state)) return [item];
  return [item, ...(state === 'declined' ? [whyLine(shelfItemId, place)] : []), ...insteadLines(plan, place)];
}

function whyLine(id: string, { visit }: AgreePlace): Line {
  const why = visit.agreed?.declinedWhy?.[id] ?? '';
  const isOwnWords = why !== '' && !isListedReason(why);
  return lineOf({
    id: `${WHY}${id}`,
    letter: '',
    label: 'because',
    entry: isOwnWords ? { kind: 'text', hint: 'in a few words' } : { kind: 'choice', choices: REASONS },
    text: why === '' || isOtherReason(why) ? 'reason not noted' : why,
    tone: why === '' || isOtherReason(why) ? 'unknown' : 'new',
    wanted: why === '' || isOtherReason(why),
    value: isOtherReason(why) ? '' : why,
    // The person's own words may hold anything.
    private: isOwnWords,
  });
}

/** What was turned down leads straight to what could stand in its place. */
function insteadLines(
  { shelfItemId, name }: AgreePlace['planLines'][number],
  { swapsFor = () => [], nameOf = (id) => id, visit }: AgreePlace,
): readonly Line[] {
  const taken = visit.agreed?.instead?.[shelfItemId];
  const state = visit.agreed?.items?.[shelfItemId];
  const why = state === 'not-affordable' ? 'price' : visit.agreed?.declinedWhy?.[shelfItemId];
  const choices = swapsFor(shelfItemId, why)
    .filter((swap) => !isTurnedDown(visit.agreed?.items?.[swap.shelfItemId]))
    .map((swap) => ({ id: swap.shelfItemId, label: saySwap(swap, nameOf) }));
  if (choices.length === 0 && taken === undefined) return [];
  const isNothing = taken === shelfItemId;
  return [
    lineOf({
      id: `${INSTEAD}${shelfItemId}`,
      letter: '',
      label: 'instead',
      prompt: `In the place of ${name}:`,
      entry: { kind: 'choice', choices: [...choices, { id: NOTHING, label: 'nothing' }] },
      text: taken === undefined ? 'not talked about' : isNothing ? 'nothing' : nameOf(taken),
      tone: taken === undefined ? 'unknown' : 'new',
      wanted: taken === undefined,
      value: isNothing ? NOTHING : taken,
    }),
  ];
}

/**
 * What was taken in the place of what, after one more swap; the item itself = nothing is taken for it. Swapping back takes the first
 * swap out again.
 */
export function swapItems(instead: Readonly<Record<string, string>>, from: string, to: string): Readonly<Record<string, string>> {
  const { [to]: back, ...others } = instead;
  return back === from ? others : { ...instead, [from]: to };
}

function lineOf(part: Pick<Line, 'id' | 'letter' | 'label' | 'entry' | 'text' | 'tone'> & Partial<Line>): Line {
  return { mayBeUnknown: false, wanted: false, reconfirmable: false, private: false, sources: [], ...part };
}

/** The field to save after an answer under Agree. */
export function agreeField(
  line: string,
  reply: Reply,
  { agreed = {} }: AgreePlace['visit'],
): { readonly path: string; readonly value: unknown } | null {
  if (reply.how !== 'asked') return null;
  const { value } = reply;
  if (line.startsWith(ITEM))
    return { path: 'agreed', value: { ...agreed, items: { ...agreed.items, [line.slice(ITEM.length)]: value as ItemState } } };
  if (line.startsWith(WHY))
    return { path: 'agreed', value: { ...agreed, declinedWhy: { ...agreed.declinedWhy, [line.slice(WHY.length)]: String(value) } } };
  if (line.startsWith(INSTEAD)) return { path: 'agreed', value: takeInstead(line.slice(INSTEAD.length), String(value), agreed) };
  if (line === 'goals') return { path: 'goals', value: splitList(String(value)).slice(0, MOST_GOALS) };
  if (line === 'keep' || line === 'tryThis') return { path: 'agreed', value: { ...agreed, [line]: String(value) } };
  if (line === 'stopUsing') return { path: 'stopUsing', value: splitList(String(value)) };
  if (line === 'nextOn' || line === 'language') return { path: line, value };
  return null;
}

/** Taken in the talk, it is agreed. */
function takeInstead(from: string, to: string, agreed: Agreed): Agreed {
  const { instead = {} } = agreed;
  if (to === NOTHING) return { ...agreed, instead: { ...instead, [from]: from } };
  return { ...agreed, instead: swapItems(instead, from, to), items: { ...agreed.items, [to]: 'agreed' } };
}

const splitList = (text: string) =>
  text
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** Every line not talked about becomes agreed; declined ones stay declined. */
export function allAgreed(planLines: AgreePlace['planLines'], agreed: Agreed = {}): Agreed {
  const items = Object.fromEntries(planLines.map(({ shelfItemId }) => [shelfItemId, agreed.items?.[shelfItemId] ?? ('agreed' as const)]));
  return { ...agreed, items: { ...agreed.items, ...items } };
}
