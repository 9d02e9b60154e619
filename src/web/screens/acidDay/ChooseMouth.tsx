import { useState } from 'react';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { MouthPreset } from '../../../core/plaque/types.ts';
import { USUAL_MOUTH } from '../../../core/visit/mouthOfVisit.ts';
import { formatNumber } from '../../format.ts';
import { parseDecimal } from '../../parseDecimal.ts';
import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { Link } from '../../parts/Link.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import type { DayWork } from './dayWork.ts';

const PRESETS = (Object.keys(mouthPresets) as MouthPreset[]).map((id) => ({ id, label: mouthPresets[id].name }));
const CALCIUM = { low: 0.01, high: 10 } as const;
const PHOSPHATE = { low: 0.01, high: 40 } as const;

/** Whose mouth it is worked out for: the site and the plaque in words, and what was measured; else typical, and said so. */
export function ChooseMouth({ work }: { readonly work: DayWork }) {
  const { told, isClosed, save, mouth, bundle } = work;
  if (!told) return null;
  const { saliva } = told;
  const flow = mouth.restingFlowMlPerMin;
  return (
    <section aria-label="Plaque and saliva">
      <h2>Plaque and saliva</h2>
      <p className={isClosed ? undefined : 'paper-only'}>{mouthPresets[told.mouth ?? USUAL_MOUTH].name}.</p>
      {!isClosed && (
        <div className="off-paper">
          <SelectLine
            label="Plaque and site"
            value={told.mouth ?? USUAL_MOUTH}
            onChange={(preset) => save({ ...told, mouth: preset })}
            options={PRESETS}
            hint="What it is called says what it is; none is a diagnosis."
          />
        </div>
      )}
      <p className="small">
        Resting flow:{' '}
        {flow === undefined
          ? `${formatNumber(mouth.mouth.saliva.restingFlowMlPerMin)} mL/min, typical (this person's is not known)`
          : `${formatNumber(flow)} mL/min, measured`}
        . {!isClosed && <Link to={`/visits/${bundle.visitId}`}>It is an answer of the visit.</Link>}
      </p>
      <p className="small">
        Calcium and phosphate of saliva:{' '}
        {saliva
          ? `${formatNumber(saliva.calciumMmolPerL)} and ${formatNumber(saliva.phosphateMmolPerL)} mmol/L, measured.`
          : 'typical (not measured).'}{' '}
        {!isClosed && (
          <OpenForm
            label={saliva ? 'Change' : 'Type what was measured'}
            about="calcium and phosphate"
            form={(close) => <SalivaForm work={work} onClose={() => close()} />}
          />
        )}
      </p>
    </section>
  );
}

function SalivaForm({ work: { told, save }, onClose }: { readonly work: DayWork; readonly onClose: () => void }) {
  const [calcium, setCalcium] = useState(told?.saliva ? String(told.saliva.calciumMmolPerL) : '');
  const [phosphate, setPhosphate] = useState(told?.saliva ? String(told.saliva.phosphateMmolPerL) : '');
  const [isTried, setTried] = useState(false);
  if (!told) return null;
  const problems = { calcium: problemOf(calcium, CALCIUM), phosphate: problemOf(phosphate, PHOSPHATE) };
  const submit = () => {
    setTried(true);
    if (problems.calcium ?? problems.phosphate) return;
    save({ ...told, saliva: { calciumMmolPerL: parseDecimal(calcium) as number, phosphateMmolPerL: parseDecimal(phosphate) as number } });
    onClose();
  };
  const clear = () => {
    const { saliva: _, ...rest } = told;
    save(rest);
    onClose();
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <TextLine
        label="Calcium"
        kind="number"
        unit="mmol/L"
        value={calcium}
        onChange={setCalcium}
        problem={isTried ? problems.calcium : undefined}
      />
      <TextLine
        label="Phosphate"
        kind="number"
        unit="mmol/L"
        value={phosphate}
        onChange={setPhosphate}
        problem={isTried ? problems.phosphate : undefined}
        hint="Both are needed for a critical pH."
      />
      <p className="actions">
        <button type="submit" className="action primary">
          Save
        </button>
        {told.saliva && (
          <button type="button" className="action" onClick={clear}>
            Not measured after all
          </button>
        )}
        <button type="button" className="action" onClick={onClose}>
          Leave it
        </button>
      </p>
    </form>
  );
}

function problemOf(typed: string, { low, high }: { readonly low: number; readonly high: number }): string | undefined {
  const value = parseDecimal(typed);
  return value !== undefined && value >= low && value <= high ? undefined : `must be ${low} to ${high} mmol/L`;
}
