import type { OralFluidTable, TypicalIon } from '../core/chemistry/oralFluid.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const handbook: SourceRef = { key: 'oralHandbook', status: 'memory' };
const pooled: SourceRef = { key: 'morenoMargolis1988', status: 'read', note: 'mean of pooled fluid of 200 students' };

const between = (typical: number, [low, high]: readonly [number, number], source: SourceRef): TypicalIon => ({
  typical,
  low,
  high,
  source,
});
/** Hardly moves the critical pH: taken without a range. */
const about = (typical: number, source: SourceRef): TypicalIon => ({ typical, low: typical, high: typical, source });

/**
 * Unstimulated whole saliva and the fluid of plaque as they usually are, mmol/L. A typical fluid is no measurement of anybody's.
 * In plaque fluid part of the calcium is held by protein and bacteria and counts for no mineral. All of it would leave the fluid at rest well
 * above saturation with brushite; it was found just saturated, which 1.4 mmol/L gives. The typical amount is our proposal: the geometric
 * middle between 1.4 and all of it.
 */
export const oralFluids: OralFluidTable = {
  saliva: {
    name: 'saliva',
    ions: {
      calcium: between(1.3, [1, 2], { ...handbook, note: 'unstimulated whole saliva' }),
      phosphate: between(4.5, [3, 7], { key: 'bardow2000', status: 'mixed', note: 'mean read; range from memory' }),
      fluoride: between(0.001, [0.0005, 0.002], handbook),
      carbonate: about(5, { key: 'bardow2000', status: 'derived', note: 'from its bicarbonate and carbon dioxide' }),
      sodium: about(8, handbook),
      potassium: about(22, handbook),
      chloride: about(27, handbook),
    },
  },
  plaqueFluid: {
    name: 'plaque fluid',
    ions: {
      calcium: between(3.1, [1.4, 7.07], {
        key: 'morenoMargolis1988',
        status: 'proposal',
        note: 'total 7.07 read; how much of it is free is our proposal, from its saturation with brushite',
      }),
      phosphate: between(23.2, [17.9, 28.5], pooled),
      fluoride: about(0.004, pooled),
      lactate: between(30, [10, 50], {
        key: 'vogel2002',
        status: 'proposal',
        note: 'rise of 35 after sucrose read; the range is our proposal',
      }),
      sodium: about(18.6, pooled),
      potassium: about(85.1, pooled),
      magnesium: about(3.9, pooled),
      chloride: about(42.8, pooled),
    },
  },
  commonPractice: {
    pH: 5.5,
    source: { key: 'criticalPhByHabit', status: 'common-practice', note: 'quoted for everybody, whatever the saliva' },
  },
};
