import type { ControlNote } from '../core/checks/control.ts';
import type { MeterCheckNote } from '../core/checks/meterCheck.ts';
import { boundOnMeter } from '../core/reading/boundOnMeter.ts';
import type { Bound, Meter } from '../core/reading/types.ts';
import type { NewRow } from '../store/write/rows.ts';

export interface ControlOnMeter {
  readonly id: string;
  readonly meter: Meter;
  /** Null: the meter itself was checked. */
  readonly lotId: string | null;
  readonly operator: string;
  /** UTC. */
  readonly takenAt: string;
  readonly rlu: number | undefined;
  readonly bound: Bound | undefined;
  readonly note: ControlNote | MeterCheckNote;
}

/** The reading that a control leaves, or the check of a meter. */
export const controlRow = ({ id, meter, lotId, operator, takenAt, rlu, bound, note }: ControlOnMeter): NewRow<'reading'> => ({
  ...({ id, use: 'control', patientId: null, visitId: null, studyId: null } as const),
  ...{ meterId: meter.id, lotId, operator, activatedAt: null, takenAt },
  ...{ rlu: rlu ?? null, bound: rlu === undefined ? null : boundOnMeter(rlu, bound, meter) },
  ...({ state: 'valid', reasons: '[]', swab: JSON.stringify(note) } as const),
});
