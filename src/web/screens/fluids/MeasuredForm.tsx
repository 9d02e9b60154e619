import type { MeasuredSaliva } from '../../../core/visit/describedDays.ts';
import { type FluidsMeasured, measuredOf, plaqueFields, salivaFields, typedOf } from './measuredFluids.ts';
import { useWorkOut } from './useWorkOut.ts';
import { NumberLines, WorkOutForm } from './WorkOutForm.tsx';

interface MeasuredFormProps {
  /** Of the visit, where the page belongs to one. */
  readonly saliva: MeasuredSaliva | undefined;
  readonly onMeasured: (measured: FluidsMeasured) => void;
}

/** What was measured, in place of what is typical; what stays empty is typical. Nothing of it is stored here. */
export function MeasuredForm({ saliva, onMeasured }: MeasuredFormProps) {
  const work = useWorkOut({
    needed: {},
    optional: { ...salivaFields, ...plaqueFields },
    begin: typedOf(saliva),
    workOut: (numbers) => {
      const measured = measuredOf(numbers);
      onMeasured(measured);
      return measured;
    },
  });
  return (
    <details>
      <summary>Type what was measured</summary>
      <p className="hint">
        What stays empty is taken as typical, and said so. Nothing typed here is stored; for the record, calcium and phosphate of saliva
        belong to the acid day of a visit.
      </p>
      <WorkOutForm label="What was measured" work={work} say={() => <p>The figures and the maps use it.</p>}>
        <NumberLines fields={salivaFields} work={work} />
        <NumberLines fields={plaqueFields} work={work} />
      </WorkOutForm>
    </details>
  );
}
