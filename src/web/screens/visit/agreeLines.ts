import type { PlanLine } from '../../../core/regimen/types.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { formatDate } from '../../format.ts';
import { type Line, lettersWithout, type Reply } from './line.ts';

type Agreed = NonNullable<VisitInput['visit']['agreed']>;
type ItemState = 'agreed' | 'declined' | 'not-affordable';

export interface AgreePlace {
  readonly planLines: readonly Pick<PlanLine, 'shelfItemId' | 'name'>[];
  readonly visit: Pick<VisitInput['visit'], 'agreed' | 'stopUsing' | 'nextOn' | 'language'>;
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

const LANGUAGES = [
  { id: 'en', label: 'English' },
  { id: 'es', label: 'Spanish' },
] as const;

const ITEM = 'item ';
const WHY = 'why ';

/** What was agreed: each line of the plan, one thing to keep, one to try, what to stop, the next date, the language of the leaflet. */
export function agreeLines({ planLines, visit, proposed, isClosed = false }: AgreePlace): readonly Line[] {
  const letters = lettersWithout('zpktswl');
  const fallbackNote = isClosed ? undefined : 'proposed';
  const items = planLines
    .filter(({ shelfItemId }) => !isClosed || visit.agreed?.items?.[shelfItemId])
    .flatMap((plan, i) => itemLines(plan, letters[i] ?? '', visit.agreed));
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
      text: LANGUAGES.find((l) => l.id === visit.language)?.label ?? visit.language,
      tone: 'confirmed',
      value: visit.language,
    }),
  ];
}

function itemLines(plan: Pick<PlanLine, 'shelfItemId' | 'name'>, letter: string, agreed: Agreed | undefined): readonly Line[] {
  const state = agreed?.items?.[plan.shelfItemId];
  const item = lineOf({
    id: `${ITEM}${plan.shelfItemId}`,
    letter,
    label: plan.name,
    entry: { kind: 'choice', choices: ITEM_STATES },
    text: ITEM_STATES.find((s) => s.id === state)?.label ?? 'not talked about',
    tone: state ? 'new' : 'unknown',
    wanted: state === undefined,
    value: state,
    reconfirmable: state === undefined,
  });
  if (state !== 'declined') return [item];
  const why = agreed?.declinedWhy?.[plan.shelfItemId] ?? '';
  const reason = lineOf({
    id: `${WHY}${plan.shelfItemId}`,
    letter: '',
    label: 'because',
    entry: { kind: 'text', hint: 'taste, price, stain, time ...' },
    text: why || 'reason not noted',
    tone: why ? 'new' : 'unknown',
    wanted: why === '',
    value: why,
  });
  return [item, reason];
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
  if (line === 'keep' || line === 'tryThis') return { path: 'agreed', value: { ...agreed, [line]: String(value) } };
  if (line === 'stopUsing') return { path: 'stopUsing', value: splitList(String(value)) };
  if (line === 'nextOn' || line === 'language') return { path: line, value };
  return null;
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
