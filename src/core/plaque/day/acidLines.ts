import { criticalPh } from '../../chemistry/criticalPh.ts';
import type { Totals } from '../../chemistry/types.ts';
import { keepByTable } from '../../keep/keepByTable.ts';
import type { SourceRef } from '../../visit/answer.ts';
import type { DayTables } from './dayModel.ts';
import { plaqueFluidAt, saturationByPh } from './mineralIndex.ts';

export type AcidLineId = 'ph-5.7' | 'ph-5.5' | 'ph-5.0' | 'saliva' | 'plaque-fluid';

/** A pH under which time is counted. */
export interface AcidLine {
  readonly id: AcidLineId;
  readonly ph: number;
  /** Of a fluid: whether its calcium and phosphate were measured. Absent for the three fixed ones. */
  readonly measured?: boolean | undefined;
  /** What typical variation from person to person gives; absent where measured. */
  readonly range?: { readonly low: number; readonly high: number } | undefined;
  /** "5.3 for typical saliva (not measured)". */
  readonly says: string;
  readonly source: SourceRef;
}

/** What was measured of a person's fluids, mmol/L. */
export interface MeasuredFluids {
  readonly saliva?: MeasuredFluid | undefined;
  readonly plaqueFluid?: MeasuredFluid | undefined;
}
export interface MeasuredFluid {
  readonly calciumMmolPerL: number;
  readonly phosphateMmolPerL: number;
}

const FIXED: readonly AcidLine[] = [
  { id: 'ph-5.7', ph: 5.7, says: '5.7, as used in studies with electrodes', source: { key: 'handbook', status: 'common-practice' } },
  { id: 'ph-5.5', ph: 5.5, says: '5.5, common practice', source: { key: 'handbook', status: 'common-practice' } },
  { id: 'ph-5.0', ph: 5, says: '5.0', source: { key: 'handbook', status: 'common-practice' } },
];

/**
 * The lines under which a day is counted: three fixed ones, and the critical pH of enamel in saliva and in plaque fluid, measured where
 * measured, else typical and said so.
 * @throws RangeError where a measured fluid has no critical pH between 2 and 12
 */
export function acidLines(tables: DayTables, measured: MeasuredFluids = {}): readonly AcidLine[] {
  return [...FIXED, salivaLine(tables, measured.saliva), plaqueFluidLine(tables, measured.plaqueFluid)];
}

/** The line that parts the acid side of a day from the rest: that of saliva. */
export function findAcidSide(lines: readonly AcidLine[]): AcidLine {
  const line = lines.find(({ id }) => id === 'saliva');
  if (!line) throw new RangeError('lines must hold that of saliva');
  return line;
}

const typicalSalivaLine = keepByTable(({ saliva }: DayTables): AcidLine => {
  const ph = enamelPh(saliva.totals, 'saliva');
  const range = { low: enamelPh(saliva.high, 'saliva'), high: enamelPh(saliva.low, 'saliva') };
  return { id: 'saliva', ph, measured: false, range, says: `${ph.toFixed(1)} for typical saliva (not measured)`, source: saliva.source };
});

const typicalPlaqueFluidLine = keepByTable(({ plaqueFluid }: DayTables): AcidLine => {
  const ph = crossing(saturationByPh(plaqueFluid).enamel);
  return {
    id: 'plaque-fluid',
    ph,
    measured: false,
    says: `${ph.toFixed(1)} for typical plaque fluid (not measured)`,
    source: plaqueFluid.source,
  };
});

function salivaLine(tables: DayTables, measured: MeasuredFluid | undefined): AcidLine {
  if (!measured) return typicalSalivaLine(tables);
  const ph = enamelPh(withMeasured(tables.saliva.totals, measured), 'saliva');
  return {
    id: 'saliva',
    ph,
    measured: true,
    says: `${ph.toFixed(1)} for saliva as measured`,
    source: { key: 'shellis1993', status: 'derived' },
  };
}

function plaqueFluidLine(tables: DayTables, measured: MeasuredFluid | undefined): AcidLine {
  if (!measured) return typicalPlaqueFluidLine(tables);
  const ph = enamelPh(withMeasured(plaqueFluidAt(tables.plaqueFluid, 7), measured), 'plaqueFluid');
  return {
    id: 'plaque-fluid',
    ph,
    measured: true,
    says: `${ph.toFixed(1)} for plaque fluid as measured`,
    source: { key: 'shellis1993', status: 'derived' },
  };
}

function withMeasured(totals: Totals, { calciumMmolPerL, phosphateMmolPerL }: MeasuredFluid): Totals {
  return { ...totals, calcium: calciumMmolPerL, phosphate: phosphateMmolPerL };
}

function enamelPh(totals: Totals, name: string): number {
  const ph = criticalPh(totals, 'enamel');
  if (ph === null) throw new RangeError(`${name} has no critical pH between 2 and 12 with this calcium and phosphate`);
  return ph;
}

/** The lowest pH of the table at which the degree of saturation passes 1. */
function crossing({ phFrom, phStep, degree }: { readonly phFrom: number; readonly phStep: number; readonly degree: Float64Array }): number {
  const above = degree.findIndex((value) => value >= 1);
  const [before = 0, after = 0] = [degree[above - 1], degree[above]];
  if (!(above > 0)) throw new RangeError('plaqueFluid has no critical pH between 2 and 12');
  return phFrom + phStep * (above - 1 + (1 - before) / (after - before));
}
