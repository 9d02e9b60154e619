import type { KeyMap } from '../../parts/KeyHelp.tsx';

/** Keys of the Visit page. */
export const VISIT_KEYS: KeyMap = [
  ['1 to 7', 'go to a section; the same number again goes to its next group'],
  ['letter', 'open the line with this letter'],
  ['y n', 'yes, no'],
  ['0 to 9', 'a count, or the choice with this number; 0 = none of a list'],
  ['number, Enter', 'a measured value; <40 and >60000 where the meter only gives a limit'],
  ['d x', 'does not know, declined'],
  ['=', 'asked today, no change: for everything carried in the group; under Agree: all agreed'],
  ['u t', 'Swab: taken as usual; step by step on its own page'],
  ['f c', 'Look: new finding (also +), change a finding; then the two digits of the tooth'],
  ['t n', 'of a date: today, never'],
  ['c g', 'Level: confirm, change'],
  ['s r u', 'Plan: sign the open line, do not release it, take it back (dentist, or on a standing order)'],
  ['z p', 'Agree: close the visit, print the leaflet'],
  ['Backspace', 'undo the last change, several steps back; also Ctrl+Z'],
  [',', 'history of the open line'],
  ['.', 'copy the chart note'],
  [';', 'the page of the person'],
  ['-', 'the acid day'],
  ['c', 'closed visit: correct it, with a reason'],
  ['up down', 'line before, line after'],
  ['*', 'Safety, Health: put the open private answer on the leaflet, or take it off'],
  ['Ctrl Enter', 'show the patient; the same again, back to work'],
  ['Esc', 'back to the section'],
  ['Ctrl .', 'who is here: change of member on the same page; pressed twice it hides the screen'],
];
