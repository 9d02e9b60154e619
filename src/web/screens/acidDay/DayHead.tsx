import { memo } from 'react';
import type { DayRecord } from '../../../core/visit/dayRecord.ts';
import { plural } from '../../format.ts';
import type { DayWork } from './dayWork.ts';
import { CAUTION, sayChanged, sayTold } from './sayStudy.ts';

/** One sentence leads: how long on the acid side, as a range, and what would shorten it most. Of a closed visit, as it was stored. */
export const DayHead = memo(function DayHead({ work, isFollowing }: { readonly work: DayWork; readonly isFollowing: boolean }) {
  const { told, record } = work;
  const stored = record?.days[work.at];
  if (!work.day) return null;
  return (
    <div className={isFollowing ? 'day-head following' : 'day-head'}>
      {stored ? <StoredSentence work={work} stored={stored} /> : <LiveSentence work={work} />}
      <OverDays work={work} />
      <p className="side-note">
        {CAUTION}
        {told && told.days.length > 1 && ` Day ${work.at + 1} of ${plural(told.days.length, 'day')} told.`}
        {stored && ' The sentence and the minutes are those stored with the visit; the picture is drawn anew from the day as told.'}
      </p>
    </div>
  );
});

/** Over a diary of several days: one sentence, and what comes back most. */
function OverDays({ work: { told, record, saidDays, isPrivateHidden } }: { readonly work: DayWork }) {
  if (!told || told.days.length < 2) return null;
  const stored = (isPrivateHidden ? record?.openSentence : undefined) ?? record?.sentence;
  return <p role={stored ? undefined : 'status'}>{stored?.en ?? saidDays ?? 'Working out the other days …'}</p>;
}

function StoredSentence({ work, stored }: { readonly work: DayWork; readonly stored: DayRecord }) {
  const { changed, record, isPrivateHidden } = work;
  const sentence = changed && record?.changed?.sentence;
  return (
    <p className="opening">
      <Lead said={(isPrivateHidden ? stored.openHeadline : undefined) ?? stored.headline} />
      {sentence && ` ${sentence}`}
    </p>
  );
}

function LiveSentence({ work }: { readonly work: DayWork }) {
  const { day, changed, drawn, drawnTold, study, seen } = work;
  const { picture } = changed ? drawnTold : drawn;
  const problem = drawn.problem ?? study.problem;
  if (problem) {
    return (
      <p className="problem" role="alert">
        Not worked out: {problem}
      </p>
    );
  }
  const isOfThisDay = study.of?.told === day && study.of?.changed === (changed ?? null);
  const said = day && picture && isOfThisDay ? sayTold({ day: seen(day), drawn: picture.drawn, study: study.study }) : null;
  return (
    <p className="opening" role="status">
      {changed ? ((isOfThisDay && sayChanged(study.study)) ?? WORKING) : said ? <Lead said={said.headline} and={said.change} /> : WORKING}
    </p>
  );
}

/** "In the model, roughly 2 to 3 hours a day on the acid side," stands bold, the rest follows. */
function Lead({ said, and }: { readonly said: string; readonly and?: string | undefined }) {
  const [lead, rest] = splitLead(said);
  return (
    <>
      <strong>{lead}</strong>
      {rest} {and}
    </>
  );
}

const WORKING = 'Working it out …';

function splitLead(headline: string): readonly [string, string] {
  const at = headline.indexOf('acid side') + 'acid side'.length;
  return at < 'acid side'.length ? [headline, ''] : [headline.slice(0, at), headline.slice(at)];
}
