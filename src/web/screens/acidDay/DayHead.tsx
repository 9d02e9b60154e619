import { plural } from '../../format.ts';
import { CAUTION, sayChanged, sayTold } from './sayStudy.ts';
import type { DayWork } from './useDayWork.ts';

/** One sentence leads: how long on the acid side, as a range, and what would shorten it most. */
export function DayHead({ work }: { readonly work: DayWork }) {
  const { day, changed, drawn, drawnTold, study, told } = work;
  const { picture } = changed ? drawnTold : drawn;
  if (!day) return null;
  const isOfThisDay = study.of?.told === day && study.of.changed === (changed ?? null);
  const said = picture && isOfThisDay ? sayTold({ day, drawn: picture.drawn, study: study.study }) : null;
  const [lead, rest] = splitLead(said?.headline);
  const problem = drawn.problem ?? study.problem;
  return (
    <div className={work.isFollowing ? 'day-head following' : 'day-head'}>
      {problem ? (
        <p className="problem" role="alert">
          Not worked out: {problem}
        </p>
      ) : (
        <p className="opening" role="status">
          {changed ? (
            ((isOfThisDay && sayChanged(study.study)) ?? WORKING)
          ) : said ? (
            <>
              <strong>{lead}</strong>
              {rest} {said.change}
            </>
          ) : (
            WORKING
          )}
        </p>
      )}
      <p className="side-note">
        {CAUTION}
        {told && told.days.length > 1 && ` Day ${work.at + 1} of ${plural(told.days.length, 'day')} told.`}
      </p>
    </div>
  );
}

const WORKING = 'Working it out …';

/** "In the model, roughly 2 to 3 hours a day on the acid side," stands bold, the rest follows. */
function splitLead(headline = ''): readonly [string, string] {
  const at = headline.indexOf('acid side') + 'acid side'.length;
  return at < 'acid side'.length ? [headline, ''] : [headline.slice(0, at), headline.slice(at)];
}
