import type { PersonRecord } from '../../../api/bundles.ts';
import { personSeries } from '../../../core/reading/personSeries.ts';
import { saySeries } from '../../../core/reading/saySeries.ts';
import { meterOf } from '../../charts/storedReading.ts';
import { content } from '../../content.ts';

/** What the readings of one meter say together: mean, trend, and what is not in them. */
export function Together({ readings }: Pick<PersonRecord, 'readings'>) {
  const [first] = readings;
  if (!first) return null;
  const said = personSeries(readings, [meterOf(first)], content.readingNoise).flatMap((series) => saySeries(series, content.readingNoise));
  return said.length === 0 ? null : <p className="small">{said.join(' ')}</p>;
}
