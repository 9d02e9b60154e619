import { useMemo, useRef } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { nightSpans } from '../../../core/plaque/day/nightSpans.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DaysRecord } from '../../../core/visit/dayRecord.ts';
import { hideAlcohol } from '../../../core/visit/hideAlcohol.ts';
import { mouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import { AcidDayStrip, STRIP_HEIGHT } from '../../charts/AcidDayStrip.tsx';
import { questions } from '../../content.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { useWidth } from '../../parts/useWidth.ts';
import { useVisit } from '../visit/visitContext.ts';
import type { DayQuestion } from './drawDay.ts';
import { CAUTION, sayTold } from './sayStudy.ts';
import type { StudyQuestion } from './studyDay.ts';
import { useDayStudy } from './useDayStudy.ts';
import { useDrawnDay } from './useDrawnDay.ts';
import { useSaidDays } from './useSaidDays.ts';

/** The page opened: from here on its pictures count from. */
const OPENED = 0;

/** The acid day on the page of the visit: folded until one was told, then one sentence with the strip. */
export function DayFold() {
  const { input, bundle } = useVisit();
  const { acidDay } = input.visit;
  const { earlierDay, visitId } = bundle;
  return (
    <details className="day-fold" open={acidDay !== undefined}>
      <summary>Acid day</summary>
      {acidDay ? (
        <ToldDay />
      ) : (
        <p className="small">No day is told yet.{earlierDay && ` One was told on ${formatDate(earlierDay.onDate)}.`}</p>
      )}
      <p>
        <Link to={`/visits/${visitId}/day`} keys="-">
          {acidDay ? 'Open the acid day' : 'Tell a day'}
        </Link>{' '}
        <Key>-</Key>
      </p>
    </details>
  );
}

function ToldDay() {
  const { input, bundle, isClosed, isPrivateHidden } = useVisit();
  const { acidDay, answers, onDate } = input.visit;
  const record = isClosed ? bundle.dayRecord : null;
  const day = acidDay?.days[0];
  const flow = answers.resting_flow;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the answers only that of the flow counts
  const mouth = useMemo(() => mouthOfVisit({ acidDay, answers, onDate }, mouthPresets, questions), [acidDay, flow, onDate]);
  const question = useMemo<DayQuestion | null>(() => (day ? { day, ...mouth, isLive: false } : null), [day, mouth]);
  const isAsked = record === null;
  const asked = useMemo<StudyQuestion | null>(
    () => (day && isAsked ? { told: day, changed: null, ...mouth, limits: null } : null),
    [day, mouth, isAsked],
  );
  const { picture } = useDrawnDay('visit', { question, since: OPENED });
  const work = useDayStudy(asked, false);
  const { study, of } = work;
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const seen = (one: AcidDay) => (isPrivateHidden ? hideAlcohol(one, { foods: foodsById }) : one);
  const days = acidDay?.days ?? [];
  const saidDays = useSaidDays({ days: isAsked ? days : [], mouth, study: work, seen, isPaused: false });
  const said = day && picture && of?.told === day ? sayTold({ day: seen(day), drawn: picture.drawn, study }) : null;
  const live = days.length > 1 ? saidDays : said?.headline;
  return (
    <div ref={place}>
      <p>
        {sayRecord(record, isPrivateHidden) ?? live ?? 'Working it out …'} <span className="side-note">{CAUTION}</span>
      </p>
      {day && picture && (
        <svg className="day-fold-strip" viewBox={`0 0 ${width} ${STRIP_HEIGHT}`}>
          <title>{days.length > 1 ? 'The first day' : 'The day'} from midnight to midnight; dark: on the acid side in the model.</title>
          <AcidDayStrip width={width} y={0} stretches={picture.drawn.stretches} night={nightSpans(day)} />
        </svg>
      )}
    </div>
  );
}

/** As it was stored when the visit closed: over all its days, which of a single one is what its headline says. */
const sayRecord = (record: DaysRecord | null, isPrivateHidden: boolean): string | undefined =>
  ((isPrivateHidden ? record?.openSentence : undefined) ?? record?.sentence)?.en;
