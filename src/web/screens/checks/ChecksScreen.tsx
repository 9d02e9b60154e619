import { useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { ChecksView } from '../../../api/swabChecks.ts';
import { useChecks } from '../../data/checkQueries.ts';
import { joinWords } from '../../format.ts';
import { ChoiceLine } from '../../parts/fields.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { useHashTarget } from '../../parts/useHashTarget.ts';
import { useOpenForPrint } from '../../parts/useOpenForPrint.ts';
import { ControlSection } from './ControlSection.tsx';
import { ControlsOverTime } from './ControlsOverTime.tsx';
import { Hands } from './Hands.tsx';
import { LotsChecked } from './LotsChecked.tsx';
import { MetersChecked } from './MetersChecked.tsx';
import { listMetersToday, type MeterToday } from './sayChecks.ts';
import { listCheckedMeters, sayDueMeters, sayStoppedMeters } from './sayMeterChecks.ts';
import { StudiesSection } from './studies/StudiesSection.tsx';
import { useCheckKeys } from './useCheckKeys.ts';

/** Meters, lots, controls, hands and studies: how far a reading can be trusted. */
export function ChecksScreen({ session }: { readonly session: SessionView }) {
  const checks = useChecks();
  useHashTarget(checks.data !== undefined);
  if (!checks.data) return <LoadState query={checks} what="the swab checks" />;
  return <Checks view={checks.data} session={session} />;
}

function Checks({ view, session }: { readonly view: ChecksView; readonly session: SessionView }) {
  const page = useRef<HTMLDivElement>(null);
  useCheckKeys(page);
  useOpenForPrint();
  const meters = listMetersToday(view);
  const checked = listCheckedMeters(view);
  const [meterId, setMeterId] = useState(meters.find(({ isDue }) => isDue)?.meter.id ?? meters[0]?.meter.id);
  const chosen = meters.find(({ meter }) => meter.id === meterId);
  const mayDecide = session.member.roles.some((role) => role === 'hygienist' || role === 'dentist');
  const mayPlan = session.member.roles.some((role) => role !== 'assistant');
  return (
    <div ref={page} className="checks">
      <h1>Swab checks</h1>
      <p className="opening">{[sayStoppedMeters(checked), sayOpening(meters), sayDueMeters(checked)].filter(Boolean).join(' ')}</p>
      {meters.length > 1 && (
        <ChoiceLine
          label="Meter"
          value={meterId ?? ''}
          options={meters.map(({ meter }) => ({ id: meter.id, label: meter.name }))}
          onChange={setMeterId}
        />
      )}
      {chosen && (
        <>
          <ControlSection key={chosen.meter.id} today={chosen} view={view} mayDecide={mayDecide} mayVoid={mayPlan} />
          <ControlsOverTime today={chosen} lots={view.lots} />
        </>
      )}
      <MetersChecked meters={meters} checked={checked} plans={view.plans} mayChange={mayPlan} mayDecide={mayDecide} />
      <LotsChecked view={view} meters={meters} mayChange={mayPlan} />
      <Hands view={view} session={session} />
      <StudiesSection view={view} />
    </div>
  );
}

/** What to do now, in one sentence. */
function sayOpening(meters: readonly MeterToday[]): string {
  if (meters.length === 0) return 'There is no meter yet: it stands under Rules, Practice.';
  const stopped = meters.filter(({ newest }) => newest?.state === 'out');
  if (stopped.length > 0) {
    const isOverridden = stopped.every(({ override }) => override !== undefined);
    const names = joinWords(stopped.map(({ meter, lot }) => `${meter.name}${lot ? ` with lot ${lot.name}` : ''}`));
    return isOverridden
      ? `The control of ${names} is out of limits; today's readings count all the same, by a named decision.`
      : `The control of ${names} is out of limits. Run today without swabs.`;
  }
  const due = meters.filter(({ isDue }) => isDue);
  if (due.length > 0) return `A control is due: ${joinWords(due.map(({ meter }) => meter.name))}.`;
  return meters.some(({ plan }) => plan) ? 'No control is due today.' : 'No meter has a control plan yet.';
}
