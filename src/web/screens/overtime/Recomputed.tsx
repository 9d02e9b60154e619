import type { PersonRecord } from '../../../api/bundles.ts';
import { formatDate } from '../../format.ts';
import { sayRecomputed } from './sayRecomputed.ts';

/** Readings whose verdict would be another with what is known of the noise today. What was told at the visit stays on the record. */
export function Recomputed({ readings }: Pick<PersonRecord, 'readings'>) {
  const changed = sayRecomputed(readings);
  if (changed.length === 0) return null;
  return (
    <div className="told-again">
      <p>Worked out again with what is known of this meter today; what was told at the visit stays on the record:</p>
      <ul className="plain-list">
        {changed.map(({ id, takenAt, rlu, sentence }) => (
          <li key={id}>
            {formatDate(takenAt)}, {rlu}. {sentence}
          </li>
        ))}
      </ul>
    </div>
  );
}
