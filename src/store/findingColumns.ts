import type { Finding } from '../core/visit/types.ts';
import type { FindingTable } from './schema.ts';

type Columns = Pick<FindingTable, 'tooth' | 'surface' | 'caries' | 'restored' | 'activity' | 'signs' | 'isNew'>;

const RESTORED: readonly Finding['kind'][] = ['restoration', 'restoration-defective'];
const SIGNS: readonly Finding['kind'][] = ['root-exposed', 'acid-wear'];

/** A finding says one thing of one surface: a stage of caries, a restoration, or another sign. */
export function findingToColumns({ tooth, surface, kind, activity, isNew }: Finding): Columns {
  const isRestored = RESTORED.includes(kind);
  const isSign = SIGNS.includes(kind);
  return {
    tooth,
    surface: surface ?? null,
    caries: isRestored || isSign ? null : kind,
    restored: isRestored ? kind : null,
    activity: activity ?? null,
    signs: JSON.stringify(isSign ? [kind] : []),
    isNew: isNew ? 1 : 0,
  };
}

/** The columns hold what `findingToColumns` wrote, so the casts are safe. */
export function columnsToFinding({ tooth, surface, caries, restored, activity, signs, isNew }: Columns): Finding {
  const kind = caries ?? restored ?? (JSON.parse(signs) as string[])[0];
  return {
    tooth,
    ...(surface === null ? {} : { surface: surface as NonNullable<Finding['surface']> }),
    kind: kind as Finding['kind'],
    ...(activity === null ? {} : { activity: activity as NonNullable<Finding['activity']> }),
    isNew: isNew === 1,
  };
}
