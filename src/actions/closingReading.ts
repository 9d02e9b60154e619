import { swabConditions } from '../content/swabConditions.ts';
import type { ConditionResult, ReadingAssessment, SwabReading } from '../core/reading/types.ts';
import type { NewRow } from '../store/write/rows.ts';
import { requireUtc } from './checks.ts';

interface Closing {
  readonly swab: SwabReading;
  readonly assessed: ReadingAssessment;
  readonly meterId?: string | undefined;
}

/** What the table only lists when it is not known is no reason: a practice that takes no controls would read it under every number. */
const ONLY_LISTED: ReadonlySet<string> = new Set(swabConditions.filter(({ unknown }) => unknown === 'list').map(({ id }) => id));
const speaksAgainst = ({ id, state }: ConditionResult): boolean => state === 'failing' || (state === 'unknown' && !ONLY_LISTED.has(id));

/** The reading of a visit as a row. What was not noted stays null. */
export function readingRow(id: string, of: { readonly visitId: string; readonly patientId: string }, closing: Closing): NewRow<'reading'> {
  const { swab, assessed, meterId } = closing;
  const open = assessed.conditions.filter(speaksAgainst).map(({ says }) => says);
  return {
    id,
    ...of,
    use: 'patient',
    studyId: null,
    meterId: meterId ?? null,
    lotId: swab.lotId ?? null,
    operator: swab.operator?.name ?? null,
    activatedAt: swab.activatedAt === undefined ? null : requireUtc('The time of the activation', swab.activatedAt),
    takenAt: swab.takenAt === undefined ? null : requireUtc('The time of the swab', swab.takenAt),
    rlu: swab.rlu ?? null,
    bound: swab.bound ?? (swab.rlu === undefined ? null : 'exact'),
    state: assessed.state,
    reasons: JSON.stringify(swab.notTaken === undefined ? open : [swab.notTaken]),
    swab: JSON.stringify(swab),
  };
}
