import { writeCsv } from '../../actions/writeCsv.ts';
import type { ChecksView } from '../../api/swabChecks.ts';
import { judgeControls } from '../../core/checks/judgeControls.ts';

const HEAD = [
  'taken at (UTC)',
  'meter',
  'lot',
  'by',
  'rlu',
  'bound',
  'state',
  'rule',
  'sd from target',
  'reason',
  'temperature (degrees C)',
  'storage',
  'solution',
  'solution lot',
];

/** Every control, oldest first, as one table. */
export function controlsCsv(view: ChecksView): string {
  const plans = view.plans.map(({ plan }) => plan);
  const judged = judgeControls(view.controls, plans, view.resolutions).flatMap(({ controls }) => controls);
  const rows = judged
    .sort((a, b) => (a.control.takenAt < b.control.takenAt ? -1 : 1))
    .map(({ control, state, says, z }) => [
      control.takenAt,
      view.meters.find(({ meter }) => meter.id === control.meterId)?.meter.name ?? control.meterId,
      view.lots.find(({ id }) => id === control.lotId)?.name ?? control.lotId,
      control.operator,
      control.rlu,
      control.bound,
      state,
      says,
      z === undefined ? undefined : Number(z.toFixed(3)),
      control.voidReason,
      control.note.temperatureDegC,
      control.note.storage,
      control.note.solution?.name,
      control.note.solution?.lot,
    ]);
  return writeCsv([HEAD, ...rows]);
}
