import type { FluorideIntake, FluoridePart, Plan, SupplementAdvice } from '../../../core/regimen/types.ts';
import { capitalise } from '../../format.ts';
import { SourceLine, SourceList, Why } from '../../parts/Sources.tsx';

/** The fluoride sum of a day; behind "why" each source of it, and each limit by its name and kind. */
export function PlanFluoride({ plan }: { readonly plan: Plan }) {
  const { fluoride, fluorideSentence, supplements } = plan;
  if (!fluorideSentence) return null;
  return (
    <div className="small">
      {fluorideSentence}{' '}
      <Why about="fluoride">
        {fluoride.parts && <Parts parts={fluoride.parts} />}
        <Limits fluoride={fluoride} />
      </Why>
      {supplements && <Supplements supplements={supplements} />}
    </div>
  );
}

/** Where the practice considers drops or tablets: what the schedule says, what stands against it, and that sources disagree. */
function Supplements({ supplements }: { readonly supplements: SupplementAdvice }) {
  const { says, against, disagreement, sources } = supplements;
  return (
    <p>
      Fluoride drops or tablets: {says}
      {against.length > 0 && ` Against it: ${against.map(({ because, ruleId }) => `${because} (${ruleId})`).join('; ')}.`}{' '}
      <Why about="fluoride drops or tablets">
        {disagreement}
        <SourceList sources={[...sources, ...against.map(({ source }) => source)]} />
      </Why>
    </p>
  );
}

function Parts({ parts }: { readonly parts: readonly FluoridePart[] }) {
  return (
    <ul className="sources">
      {parts.map((part) => (
        <li key={part.name}>
          {capitalise(part.name)}: {sayPart(part)}
          {part.sources.map((source) => (
            <span key={`${source.key} ${source.note ?? ''}`}>
              {' '}
              <SourceLine source={source} />
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
}

function sayPart({ mgPerDay, onItsDay }: FluoridePart) {
  if (mgPerDay === null) return <span className="unknown">not known.</span>;
  const daily = `${twoFigures(mgPerDay)} mg a day`;
  if (onItsDay === null) return `${daily}.`;
  const perKg = onItsDay.mgPerKg === null ? '' : `, ${twoFigures(onItsDay.mgPerKg)} mg/kg`;
  return `${daily} over the year; up to ${twoFigures(onItsDay.mg)} mg${perKg} on each of ${Math.round(onItsDay.daysPerYear)} days.`;
}

const LIMIT_KINDS = {
  'upper-intake-level': 'upper intake level',
  'safe-level': 'safe level',
  'label-cap': 'label cap',
  'intake-target': 'intake target',
} as const;

function Limits({ fluoride }: { readonly fluoride: FluorideIntake }) {
  return (
    <ul className="sources">
      {fluoride.limits.map((limit) => (
        <li key={`${limit.name} ${limit.unit}`}>
          {limit.name} ({LIMIT_KINDS[limit.kind]}): {limit.value} {limit.unit === 'mg/day' ? 'mg a day' : 'mg/kg a day'}
          {limit.shownOnly && ', keeps nothing out, as chosen under Rules'}
          {limit.share !== null && `, share ${Math.round(limit.share * 100)} %`}. <SourceLine source={limit.source} />
        </li>
      ))}
    </ul>
  );
}

const twoFigures = (value: number): string => String(Number(value.toPrecision(2)));
