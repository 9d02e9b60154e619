import type { StudyRun, StudyState } from '../../../../core/checks/study.ts';
import type { StudyKind } from '../../../../core/reading/types.ts';

export interface KindWords {
  readonly name: string;
  /** What it can say, and what it cannot: one sentence each. */
  readonly can: string;
  readonly cannot: string;
}

/** The kinds of study that this page plans, enters and reports. */
export const STUDY_WORDS: Readonly<Record<Exclude<StudyKind, 'cutoff'>, KindWords>> = {
  hands: {
    name: 'Hands and swabs',
    can: 'Members swab the same solutions, each several times: how much hands and single swabs add to a reading.',
    cannot: 'It does not say how evenly hands pick up plaque.',
  },
  lots: {
    name: 'Swab lots',
    can: 'One pair of hands swabs one solution with each lot: how much lots and single swabs add to a reading.',
    cannot: 'It does not say which lot is right.',
  },
  'paired-days': {
    name: 'People from day to day',
    can: 'People who agreed are swabbed on two days, 24 hours or more apart, with nothing changed between: how far one person differs from day to day by itself.',
    cannot: 'It does not say what care does.',
  },
  'new-lot': {
    name: 'New lot beside the old one',
    can: 'One pair of hands swabs the same solutions with both lots: whether the new one reads like the one in use, before it is used on people.',
    cannot: 'It does not say how far lots differ in general.',
  },
  meters: {
    name: 'New meter beside the old one',
    can: 'Both meters read the same solutions, one swab each: whether they read alike, at low and at high readings.',
    cannot: 'It makes no common scale: each meter keeps the cut-off of its own instructions.',
  },
};

/** Why hands are not compared on people. */
export const WHY_NO_PEOPLE =
  'Hands, lots and meters are compared on a solution and never on people: a swab takes the plaque away, and a person is swabbed once in 24 hours at most, so two hands can never swab the same plaque.';

export type PlannedKind = keyof typeof STUDY_WORDS;

export const isPlannedKind = (kind: StudyKind): kind is PlannedKind => kind in STUDY_WORDS;

export const nameOfKind = (kind: StudyKind): string => (isPlannedKind(kind) ? STUDY_WORDS[kind].name : 'Own cut-off');

export const STATE_WORDS: Readonly<Record<StudyState, string>> = {
  planned: 'planned, nothing read yet',
  running: 'running',
  reported: 'reported',
  dropped: 'given up',
};

/** "Solution B, Ines Marrow, lot 2026-11": what is swabbed by whom, as far as the sheet says. */
export function sayRun(run: StudyRun, nameOfLot: (id: string) => string, nameOfMeter?: (id: string) => string): string {
  const { part, operator, lotId, meterId } = run;
  const parts = [part, operator, lotId && `lot ${nameOfLot(lotId)}`, meterId && nameOfMeter?.(meterId)];
  return parts.filter(Boolean).join(', ') || 'Solution';
}

/** "Solution A" to "Solution J": nobody keeps more apart. */
export const solutionNames = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `Solution ${String.fromCharCode(65 + i)}`);
