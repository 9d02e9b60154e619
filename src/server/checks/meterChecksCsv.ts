import { writeCsv } from '../../actions/writeCsv.ts';
import type { ChecksView } from '../../api/swabChecks.ts';

const HEAD = [
  'taken at (UTC)',
  'meter',
  'by',
  'checked by',
  'rlu',
  'bound',
  'lowest allowed',
  'highest allowed',
  'passed',
  'state',
  'reason',
  'temperature (degrees C)',
  'note',
];

/** Every check of a meter, oldest first, as one table. */
export function meterChecksCsv({ meterChecks, meters }: ChecksView): string {
  const rows = meterChecks.map(({ takenAt, meterId, operator, rlu, bound, state, voidReason, note }) => [
    takenAt,
    meters.find(({ meter }) => meter.id === meterId)?.meter.name ?? meterId,
    operator,
    note.checkedBy,
    rlu,
    rlu === null ? undefined : bound,
    note.limits?.lowRlu,
    note.limits?.highRlu,
    note.passed ? 'yes' : 'no',
    state,
    voidReason,
    note.temperatureDegC,
    note.words,
  ]);
  return writeCsv([HEAD, ...rows]);
}
