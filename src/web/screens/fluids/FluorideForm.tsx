import { useState } from 'react';
import { COMPOUND_WORDS } from '../../../core/regimen/checkLabel.ts';
import { SelectLine } from '../../parts/fields.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import type { Compound } from '../shelf/shelfDraft.ts';
import { type AmountUnit, amountFields, type FluorideFigures, type LabelOf, strengthFields, workOutFluoride } from './fluorideFigures.ts';
import { sayAmount } from './sayAmount.ts';
import { useWorkOut } from './useWorkOut.ts';
import { NumberLines, WorkOutForm } from './WorkOutForm.tsx';

const LABELS: readonly { readonly id: LabelOf; readonly label: string }[] = [
  ...(Object.entries(COMPOUND_WORDS) as [Compound, string][]).map(([id, label]) => ({ id, label: `${label}, in %` })),
  { id: 'ppm', label: 'fluoride, in ppm' },
];
const UNITS: readonly { readonly id: AmountUnit; readonly label: string }[] = [
  { id: 'g', label: 'weight: paste, gel' },
  { id: 'mL', label: 'volume: rinse, drops, varnish' },
];

/** From what a label says to ppm, and to milligrams in one use and in a pack. */
export function FluorideForm() {
  const [labelOf, setLabelOf] = useState<LabelOf>('NaF');
  const [unit, setUnit] = useState<AmountUnit>('mL');
  const work = useWorkOut({
    needed: strengthFields(labelOf),
    optional: amountFields(unit),
    choices: { labelOf, unit },
    workOut: (numbers) => workOutFluoride(numbers, labelOf, unit),
  });
  return (
    <section id="fluoride" aria-label="Fluoride of a label">
      <h2>Fluoride of a label</h2>
      <WorkOutForm label="Fluoride of a label" work={work} say={(figures) => <FluorideSaid figures={figures} />}>
        <SelectLine label="The label gives" value={labelOf} options={LABELS} onChange={setLabelOf} />
        <SelectLine label="Measured by" value={unit} options={UNITS} onChange={setUnit} />
        <NumberLines fields={strengthFields(labelOf)} work={work} />
        <NumberLines fields={amountFields(unit)} work={work} />
      </WorkOutForm>
    </section>
  );
}

function FluorideSaid({ figures: { ppm, mmolPerL, mgPerUse, mgPerPack, unit } }: { readonly figures: FluorideFigures }) {
  return (
    <>
      <p className="opening">
        {sayAmount(ppm)} ppm fluoride ({unit === 'g' ? 'mg in a kg' : 'mg in a litre'}), {sayAmount(mmolPerL)} mmol/L.{' '}
        {mgPerUse === undefined ? 'One use: not given.' : `${sayAmount(mgPerUse)} mg in one use.`}{' '}
        {mgPerPack === undefined ? 'One pack: not given.' : `${sayAmount(mgPerPack)} mg in a pack.`}
      </p>
      <p className="hint">
        What is in a use is not what is swallowed. Labels round, and packs differ from their label. Doses for a person, with their limits,
        stand in the plan of the visit.{' '}
        <Why about="fluoride of a label">{<SourceList sources={[{ key: 'atomicMasses', status: 'derived' }]} />}</Why>
      </p>
    </>
  );
}
