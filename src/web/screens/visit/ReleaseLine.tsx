import { formatDate, formatShortClock } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import type { Line } from './line.ts';
import { useVisit } from './visitContext.ts';

/** A private answer stays off the leaflet unless a professional puts it there, one by one. */
export function ReleaseLine({ line }: { readonly line: Line }) {
  const { input, release, session } = useVisit();
  const { released, speaker } = input.visit;
  const mark = released?.[line.id];
  const mayRelease = session.member.roles.some((role) => role === 'hygienist' || role === 'dentist');
  if (!mayRelease || input.visit.answers[line.id]?.how !== 'asked') return null;
  return (
    <p className="small release">
      {mark
        ? `Put on the leaflet by ${mark.by}, ${formatDate(mark.at)} at ${formatShortClock(mark.at)}. `
        : 'Private: not on the leaflet, not shown to the patient. '}
      {mark && mark.heard !== speaker?.who && <span className="unknown">Not printed: somebody else spoke then. </span>}
      <button type="button" className="link" aria-keyshortcuts="*" onClick={() => release(line.id)}>
        <Key>*</Key> {mark ? 'Take it off' : 'Put it on the leaflet'}
      </button>
    </p>
  );
}
