import { SAME_WITHIN } from '../fluorideIntake.ts';
import { isOrdinaryPaste, isStrongPaste, type PlannedUse } from '../planFluoride.ts';

/** Sum over the packs, by place, that must not pass a bound. */
export interface DayRow {
  readonly coefficients: readonly number[];
  readonly atMost: number;
}

export interface DayAmount {
  /** Of one pack in a day. */
  readonly of: (planned: PlannedUse) => number;
  /** What there is anyway. */
  readonly anyway: number;
  /** Above 0. */
  readonly atMost: number;
}

/**
 * A bound on something that adds up over a day, as rows: on what may be used now, on what is used once all that waits is signed, and, while
 * no strong paste has taken the place of the ordinary one, on all of it. Amounts are shares of the bound. What the signed packs pass alone
 * leaves nothing for others.
 */
export function dayRows(packs: readonly PlannedUse[], signed: readonly PlannedUse[], { of, anyway, atMost }: DayAmount): DayRow[] {
  const shares = packs.map((p) => of(p) / atMost);
  const leftOver = (kept: (p: PlannedUse) => boolean): number => {
    const used = signed.filter(kept).reduce((sum, p) => sum + of(p), anyway);
    return Math.max(0, 1 + SAME_WITHIN - used / atMost);
  };
  const rowOf = (kept: (p: PlannedUse) => boolean): DayRow => ({
    coefficients: packs.map((p, i) => (kept(p) ? (shares[i] ?? 0) : 0)),
    atMost: leftOver(kept),
  });
  const rows = [rowOf((p) => p.state !== 'waiting-for-signature'), rowOf((p) => !isOrdinaryPaste(p))];
  if (!signed.some(isStrongPaste)) {
    const all = rowOf(() => true);
    const enough = shares.reduce((sum, share) => sum + share, 0);
    rows.push({ ...all, coefficients: all.coefficients.map((share, i) => (isStrong(packs[i]) ? share - enough : share)) });
  }
  return rows.filter(({ coefficients, atMost: most }) => coefficients.reduce((sum, c) => sum + Math.max(0, c), 0) > most);
}

const isStrong = (planned: PlannedUse | undefined): boolean => planned !== undefined && isStrongPaste(planned);
