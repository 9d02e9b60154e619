import { type FluidCriticalPh, fluidCriticalPh } from '../../chemistry/fluidCriticalPh.ts';
import type { OralFluid } from '../../chemistry/oralFluid.ts';
import { keepByTable } from '../../keep/keepByTable.ts';
import type { SourceRef } from '../../visit/answer.ts';
import type { DayTables } from './dayModel.ts';

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

const ENAMEL: SourceRef = { key: 'shellis1993', status: 'read' };

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
export function acidLines({ fluids }: DayTables, measured: MeasuredFluids = {}): readonly AcidLine[] {
  return [...FIXED, lineOf('saliva', fluids.saliva, measured.saliva), lineOf('plaque-fluid', fluids.plaqueFluid, measured.plaqueFluid)];
}

/** The line that parts the acid side of a day from the rest: that of saliva. */
export function findAcidSide(lines: readonly AcidLine[]): AcidLine {
  const line = lines.find(({ id }) => id === 'saliva');
  if (!line) throw new RangeError('lines must hold that of saliva');
  return line;
}

function lineOf(id: 'saliva' | 'plaque-fluid', fluid: OralFluid, measured: MeasuredFluid | undefined): AcidLine {
  const { pH, range, sources } = measured ? measuredPh(fluid, measured) : typicalPh(fluid);
  const field = id === 'saliva' ? 'saliva' : 'plaqueFluid';
  if (pH === null) throw new RangeError(`${field} has no critical pH between 2 and 12 with this calcium and phosphate`);
  const [source = ENAMEL] = sources;
  const value = pH.toFixed(1);
  return measured
    ? { id, ph: pH, measured: true, says: `${value} for ${fluid.name} as measured`, source }
    : { id, ph: pH, measured: false, range: range ?? undefined, says: `${value} for typical ${fluid.name} (not measured)`, source };
}

const typicalPh = keepByTable((fluid: OralFluid): FluidCriticalPh => fluidCriticalPh(fluid));

function measuredPh(fluid: OralFluid, { calciumMmolPerL, phosphateMmolPerL }: MeasuredFluid): FluidCriticalPh {
  return fluidCriticalPh(fluid, { calcium: calciumMmolPerL, phosphate: phosphateMmolPerL });
}
