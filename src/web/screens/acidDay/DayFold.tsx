import { useMemo, useRef } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { nightSpans } from '../../../core/plaque/day/nightSpans.ts';
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

const TOLERANCE_PH = 0.02;
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
  const stored = isClosed ? bundle.dayRecord?.days[0] : undefined;
  const day = acidDay?.days[0];
  const flow = answers.resting_flow;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the answers only that of the flow counts
  const mouth = useMemo(() => mouthOfVisit({ acidDay, answers, onDate }, mouthPresets, questions), [acidDay, flow, onDate]);
  const question = useMemo<DayQuestion | null>(() => (day ? { day, ...mouth, tolerancePh: TOLERANCE_PH } : null), [day, mouth]);
  const isAsked = stored === undefined;
  const asked = useMemo<StudyQuestion | null>(
    () => (day && isAsked ? { told: day, changed: null, ...mouth, limits: null } : null),
    [day, mouth, isAsked],
  );
  const { picture } = useDrawnDay('visit', question, OPENED);
  const { study, of } = useDayStudy(asked, false);
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const seen = day && isPrivateHidden ? hideAlcohol(day, { foods: foodsById }) : day;
  const said = seen && picture && of?.told === day ? sayTold({ day: seen, drawn: picture.drawn, study }) : null;
  const fromRecord = (isPrivateHidden ? stored?.openHeadline : undefined) ?? stored?.headline;
  return (
    <div ref={place}>
      <p>
        {fromRecord ?? said?.headline ?? 'Working it out …'} <span className="side-note">{CAUTION}</span>
      </p>
      {day && picture && (
        <svg className="day-fold-strip" viewBox={`0 0 ${width} ${STRIP_HEIGHT}`}>
          <title>The day from midnight to midnight; dark: on the acid side in the model.</title>
          <AcidDayStrip width={width} y={0} stretches={picture.drawn.stretches} night={nightSpans(day)} />
        </svg>
      )}
    </div>
  );
}
