import { useEffect, useState } from 'react';
import { KeyHelp, type KeyMap } from './parts/KeyHelp.tsx';
import { useSingleKeys } from './preferences.ts';
import type { Route } from './routing.ts';

const DAY_KEYS: KeyMap = [
  ['name, Enter', 'in the field: a walk-in, or "9:40 name" to put somebody down; Shift Enter: a new person of that name'],
  ['Esc, a', 'from the field to the list, and back to the field'],
  ['up down', 'line before, line after; in the queue too'],
  ['Enter', 'open the visit of the line'],
  ['s', 'the Swab page of the line; in the queue: sign (dentist)'],
  ['r', 'in the queue: do not release, with a reason (dentist)'],
  ['i', 'the page of the person of the line'],
  ['n', 'another time for the line'],
  ['c m', 'cancelled, missed, with a reason'],
  ['u', 'take the last of these back'],
  ['left right', 'day before, day after'],
  ['t', 'today'],
  ['f', 'fill the day from a list'],
  ['w', 'sheets for the waiting room'],
  ['p', 'all people'],
];
const PEOPLE_KEYS: KeyMap = [
  ['name, Enter', 'open a visit of the first who is found; where nobody is found, add a new person'],
  ['up down', 'line before, line after'],
  ['Enter', 'open the visit of the line'],
  ['i', 'the page of the person of the line'],
];
const FORM_KEYS: KeyMap = [['Enter', 'save the form that is open']];
const CHECKS_KEYS: KeyMap = [
  ['n', "the field for today's control; Enter saves it"],
  ['<40 >60000', 'in the field: a number at a limit of the meter'],
  ['1 to 6', 'to the control, the chart, meters, lots, hands, studies'],
  ...FORM_KEYS,
];
const STUDY_KEYS: KeyMap = [
  ['number, Enter', 'keep the number, and on to the next swab that is not read'],
  ['Enter', 'in an empty field: pass this swab over'],
];
const SHELF_KEYS: KeyMap = [['a', 'add an item'], ...FORM_KEYS];

/** Keys by page; Visit and Swab say their own. */
const KEYS: Readonly<Partial<Record<Route['screen'], KeyMap>>> = {
  today: DAY_KEYS,
  'fill-day': FORM_KEYS,
  people: PEOPLE_KEYS,
  person: FORM_KEYS,
  'over-time': [['Ctrl Enter', 'show the patient; the same again, back to work']],
  checks: CHECKS_KEYS,
  shelf: SHELF_KEYS,
  'shelf-item': FORM_KEYS,
  stock: FORM_KEYS,
  reorder: FORM_KEYS,
  'study-plan': FORM_KEYS,
  study: STUDY_KEYS,
  practice: FORM_KEYS,
  rules: FORM_KEYS,
  fluids: FORM_KEYS,
};
const OF_THEIR_OWN: ReadonlySet<Route['screen']> = new Set(['visit', 'swab', 'acid-day']);

/** The map of keys of every page that does not draw its own: by "?" and by a button at the foot of the page. */
export function PageKeys({ screen }: { readonly screen: Route['screen'] }) {
  const [isOpen, setOpen] = useState(false);
  const singleKeys = useSingleKeys();
  const isMine = !OF_THEIR_OWN.has(screen);
  useEffect(() => {
    if (!isMine || !singleKeys) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== '?' || event.defaultPrevented || isWriting(event.target) || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      setOpen(true);
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [isMine, singleKeys]);
  if (!isMine) return null;
  return (
    <>
      <button type="button" className="link" aria-keyshortcuts="?" onClick={() => setOpen(true)}>
        Keys
      </button>
      {isOpen && <KeyHelp keys={KEYS[screen] ?? []} back="Back to the page" onClose={() => setOpen(false)} />}
    </>
  );
}

/** In a field that is still empty no sentence ends with a question mark yet. */
function isWriting(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !['radio', 'checkbox', 'button', 'submit'].includes(target.type) && target.value !== '';
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
