import { plural } from '../../format.ts';
import { DayFold } from '../acidDay/DayFold.tsx';
import type { Line } from './line.ts';
import { isAllConfirmed, Reconfirm, ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { GROUP_TITLES } from './scopes.ts';
import { useVisit } from './visitContext.ts';

const GROUPS = ['food', 'home', 'health'] as const;

export function TalkSection() {
  const { lines, place } = useVisit();
  return (
    <section aria-label="Talk" className="talk">
      <SectionHead title="Talk" number={3} note={noteOf(GROUPS.flatMap((g) => lines[g]))} />
      {GROUPS.map((group) => (
        <section
          key={group}
          data-scope={group}
          aria-label={GROUP_TITLES[group]}
          className={place.scope === group ? 'group current' : 'group'}
        >
          <div className="group-head">
            <h3 tabIndex={-1} data-head>
              {GROUP_TITLES[group]}
            </h3>
            {isAllConfirmed(lines[group]) && <p className="side-note">asked today, no change</p>}
          </div>
          {lines[group].length === 0 && <p className="small">Nothing to ask here in this mouth.</p>}
          <ScopeLines scope={group} />
          {group === 'food' && <DayFold />}
          <Reconfirm scope={group} />
          <ScopeProblem scope={group} />
        </section>
      ))}
    </section>
  );
}

export function noteOf(lines: readonly Line[]): string {
  const outOfDate = lines.filter((l) => l.text === 'out of date').length;
  const notAsked = lines.filter((l) => l.text === 'not asked').length;
  const parts = [
    outOfDate > 0 && `${outOfDate} carried ${outOfDate === 1 ? 'is' : 'are'} out of date until asked`,
    notAsked > 0 && `${plural(notAsked, 'answer')} not asked`,
  ];
  return parts.filter(Boolean).join('; ');
}
