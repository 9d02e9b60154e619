import type { ProtocolTable } from '../../../core/risk/protocol.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';

export type MethodBand = PracticeSettings['methodByAge'][number];
type Ages = Pick<MethodBand, 'fromAgeYears' | 'belowAgeYears'>;

const OLDEST = Number.POSITIVE_INFINITY;
const endOf = ({ belowAgeYears }: Ages): number => belowAgeYears ?? OLDEST;

export const sayAges = ({ fromAgeYears, belowAgeYears }: Ages): string =>
  belowAgeYears === null
    ? `age ${fromAgeYears} and over`
    : belowAgeYears === fromAgeYears + 1
      ? `age ${fromAgeYears}`
      : `age ${fromAgeYears} to under ${belowAgeYears}`;

/** Whether the list is meant for every age of the band. */
export const fitsBand = ({ applies }: Pick<ProtocolTable, 'applies'>, band: Ages): boolean =>
  applies.fromAgeYears <= band.fromAgeYears && endOf(applies) >= endOf(band);

/**
 * The ages cut wherever some list, or the practice's own setting, begins or ends: within one band the choice of lists is the same. The
 * protocol of a band is the practice's; "" where it has none, or one that is not meant for these ages.
 */
export function splitBands(
  methodByAge: readonly MethodBand[],
  tables: readonly Pick<ProtocolTable, 'id' | 'applies'>[],
): readonly MethodBand[] {
  const ranges: readonly Ages[] = [...methodByAge, ...tables.map((t) => t.applies)];
  const cuts = [...new Set([0, ...ranges.flatMap((r) => [r.fromAgeYears, endOf(r)])])].filter(Number.isFinite).sort((a, b) => a - b);
  return cuts.map((fromAgeYears, i) => {
    const band = { fromAgeYears, belowAgeYears: cuts[i + 1] ?? null };
    const own = methodByAge.find((m) => m.fromAgeYears <= fromAgeYears && endOf(m) >= endOf(band));
    const table = tables.find((t) => t.id === own?.protocol);
    return { ...band, protocol: table && fitsBand(table, band) ? table.id : '' };
  });
}

/** Neighbours with one list become one band again; a band without a list is left out, and then has no method. */
export function joinBands(bands: readonly MethodBand[]): readonly MethodBand[] {
  const joined: MethodBand[] = [];
  for (const band of bands) {
    const last = joined.at(-1);
    if (band.protocol === '') continue;
    if (last && last.protocol === band.protocol && last.belowAgeYears === band.fromAgeYears) {
      joined[joined.length - 1] = { ...last, belowAgeYears: band.belowAgeYears };
    } else joined.push(band);
  }
  return joined;
}
