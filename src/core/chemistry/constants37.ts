import type { SourceRef } from '../visit/answer.ts';
import type { ChemistryConstants, Component, Solid, Species } from './types.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });
const derived = (key: string, note?: string): SourceRef => ({ key, status: 'derived', note });

type Of = Readonly<Partial<Record<Component, number>>>;
const species = (charge: number, of: Of, [protons, water]: readonly [number, number], logK: number, source: SourceRef): Species => ({
  charge,
  of,
  protons,
  water,
  logK,
  source,
});
const solid = (ions: number, parts: Partial<Solid> & Pick<Solid, 'of'>, logKsp: number, source: SourceRef): Solid => ({
  hydroxide: 0,
  protons: 0,
  water: 0,
  ...parts,
  ions,
  logKsp,
  source,
});

const Ca = { calcium: 1 };
const P = { phosphate: 1 };
const CaP = { calcium: 1, phosphate: 1 };

/** 37 °C, ionic strength 0, mol/kg. The calcium set; the last three pairs belong to `with-background` only. */
export const constants37: ChemistryConstants = {
  debyeHuckelA: 0.521144,
  waterPerMolal: 0.017,
  species: {
    'OH-': species(-1, {}, [-1, 1], -13.62, derived('phreeqcDat', 'its expression at 310.15 K')),
    'HPO4-2': species(-2, P, [1, 0], 12.18, memory('bjerrumUnmack1929')),
    'H2PO4-': species(-1, P, [2, 0], 19.362, memory('batesAcree1943', 'pK2 7.182 on top of the line above')),
    H3PO4: species(0, P, [3, 0], 21.568, memory('bates1951', 'pK1 2.206 on top of the line above')),
    'HCO3-': species(-1, { carbonate: 1 }, [1, 0], 10.239, derived('plummerBusenberg1982', 'as in phreeqc.dat at 310.15 K')),
    CO2: species(0, { carbonate: 1 }, [2, -1], 16.544, derived('plummerBusenberg1982', 'pK1 6.305 on top of the line above')),
    HF: species(0, { fluoride: 1 }, [1, 0], 3.272, derived('phreeqcDat', 'at 310.15 K')),
    'HF2-': species(-1, { fluoride: 2 }, [1, 0], 3.889, derived('phreeqcDat', 'at 310.15 K')),
    HLac: species(0, { lactate: 1 }, [1, 0], 3.872, memory('nimsSmith1936')),
    HAce: species(0, { acetate: 1 }, [1, 0], 4.765, memory('harnedEhlers1933')),
    'CaOH+': species(1, Ca, [-1, 1], -12.29, memory('phreeqcDat', '-12.78 at 25 °C read; the step to 37 °C from memory')),
    'CaPO4-': species(-1, CaP, [0, 0], 6.547, derived('phreeqcDat', '6.459 at 25 °C and its enthalpy')),
    CaHPO4: species(0, CaP, [1, 0], 14.766, read('gregory1970', '2.586 with HPO4; signs of the expression restored')),
    'CaH2PO4+': species(1, CaP, [2, 0], 20.012, read('gregory1970', '0.650 with H2PO4; signs of the expression restored')),
    CaCO3: species(0, { calcium: 1, carbonate: 1 }, [0, 0], 3.348, derived('plummerBusenberg1982', 'as in phreeqc.dat')),
    'CaHCO3+': species(1, { calcium: 1, carbonate: 1 }, [1, 0], 11.407, memory('plummerBusenberg1982', '1.168 with HCO3')),
    'CaF+': species(1, { calcium: 1, fluoride: 1 }, [0, 0], 1.057, derived('phreeqcDat', '0.94 at 25 °C and its enthalpy')),
    'CaLac+': species(
      1,
      { calcium: 1, lactate: 1 },
      [0, 0],
      1.45,
      memory('martellSmith', 'another source gives 1.90, which lowers the index of hydroxyapatite by 0.4 to 0.8 at 20 to 55 mM'),
    ),
    'CaAce+': species(1, { calcium: 1, acetate: 1 }, [0, 0], 1.207, derived('minteqV4', '1.18 at 25 °C and its enthalpy')),
    MgHPO4: species(0, { magnesium: 1, phosphate: 1 }, [1, 0], 15.05, memory('martellSmith', '2.87 with HPO4')),
    'NaHPO4-': species(-1, { sodium: 1, phosphate: 1 }, [1, 0], 13.03, memory('martellSmith', '0.85 with HPO4; about 7 at 25 °C was read')),
    'KHPO4-': species(-1, { potassium: 1, phosphate: 1 }, [1, 0], 12.96, memory('martellSmith', '0.78 with HPO4')),
  },
  solids: {
    hydroxyapatite: solid(9, { of: { calcium: 5, phosphate: 3 }, hydroxide: 1 }, -58.6285, read('mcdowell1977')),
    fluorapatite: solid(9, { of: { calcium: 5, phosphate: 3, fluoride: 1 } }, -60.15, read('mccann1968', '60.5 to 61 is quoted as well')),
    enamel: solid(9, { of: { calcium: 5, phosphate: 3 }, hydroxide: 1 }, -57.77, read('shellis1993', 'others give 57.7 to 58.8')),
    brushite: solid(
      2,
      { of: CaP, protons: 1, water: 2 },
      -18.802,
      read('gregory1970', '-6.622 with HPO4; signs of the expression restored'),
    ),
    octacalciumPhosphate: solid(
      8,
      { of: { calcium: 4, phosphate: 3 }, protons: 1, water: 2.5 },
      -47.95,
      read('pmc5445792', '-49.3 was read elsewhere'),
    ),
    tricalciumPhosphate: solid(5, { of: { calcium: 3, phosphate: 2 } }, -29.5, read('pmc5445792')),
    fluorite: solid(
      3,
      { of: { calcium: 1, fluoride: 2 } },
      -10.47,
      derived('phreeqcDat', 'at 310.15 K; 10.45 at 34 °C was read elsewhere'),
    ),
    calcite: solid(2, { of: { calcium: 1, carbonate: 1 } }, -8.557, memory('plummerBusenberg1982', 'its expression at 310.15 K')),
  },
};
