import type { ChecksView } from '../../../api/swabChecks.ts';
import { type BlendedPart, noiseOfMeter } from '../../../core/reading/blendNoise.ts';
import { cvOfLogVariance, sayPercent } from '../../../core/reading/sayNoise.ts';
import { type Meter, NOISE_PARTS, type NoisePart } from '../../../core/reading/types.ts';
import { content } from '../../content.ts';
import { plural } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { MeterCheckBlock } from './MeterCheckBlock.tsx';
import { PlanForm } from './PlanForm.tsx';
import { type MeterToday, sayEvery } from './sayChecks.ts';
import type { CheckedMeter } from './sayMeterChecks.ts';

interface MetersCheckedProps {
  readonly meters: readonly MeterToday[];
  readonly checked: readonly CheckedMeter[];
  readonly plans: ChecksView['plans'];
  readonly mayChange: boolean;
  readonly mayDecide: boolean;
}

/** Each meter: its own checks, its plan of controls, and how noisy it is by now. */
export function MetersChecked({ meters, checked, plans, mayChange, mayDecide }: MetersCheckedProps) {
  return (
    <section aria-label="Meters">
      <SectionHead title="Meters" number={3} />
      {meters.map(({ meter }) => {
        const ofMeter = checked.find((one) => one.meter.id === meter.id);
        const entry = plans.find(({ plan }) => plan.meterId === meter.id);
        return (
          <div key={meter.id}>
            <h3 className="meter-head">{meter.name}</h3>
            {ofMeter && <MeterCheckBlock checked={ofMeter} mayChange={mayChange} mayDecide={mayDecide} />}
            <p>{entry ? `Plan: ${sayEvery(entry.plan)}, ${plural(entry.plan.rules.length, 'control rule')}.` : 'No control plan yet.'}</p>
            {mayChange && (
              <OpenForm
                label={entry ? 'Change the plan' : 'Make a control plan'}
                about={meter.name}
                form={(close) => <PlanForm meter={meter} entry={entry} close={close} />}
              />
            )}
            <NoiseParts meter={meter} />
          </div>
        );
      })}
    </section>
  );
}

const PART_WORDS: Readonly<Record<NoisePart, string>> = {
  repeatability: 'one swab after another',
  operator: 'between hands',
  lot: 'between lots',
  meter: 'between meters of this model',
  withinPerson: 'from day to day in one person',
};

function NoiseParts({ meter }: { readonly meter: Meter }) {
  const noise = noiseOfMeter(content.readingNoise, meter);
  const measured = NOISE_PARTS.filter((part) => noise[part].own !== null).length;
  return (
    <>
      <p>
        {measured === 0
          ? 'Its noise is assumed in every part; a swab study measures it.'
          : `Of its noise, ${measured} of ${NOISE_PARTS.length} parts have been measured here.`}
      </p>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">Noise</th>
            <th scope="col">In use</th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {NOISE_PARTS.map((part) => (
            <tr key={part}>
              <th scope="row">{PART_WORDS[part]}</th>
              <td data-label="In use">{sayPart(noise[part])}</td>
              <td data-label="From">{sayFrom(noise[part])}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const sayPart = ({ variance }: BlendedPart): string => (variance === null ? 'not known, left out' : sayPercent(cvOfLogVariance(variance)));

function sayFrom({ own, ownWeight, prior }: BlendedPart): string {
  const before = prior.from === 'assumed' ? 'assumed' : 'typed by the practice';
  if (own === null) return before;
  return `${plural(own.studies, 'own study', 'own studies')} with a weight of ${Math.round(100 * ownWeight)} %, the rest ${before}`;
}
