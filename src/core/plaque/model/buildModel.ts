import { clearancePerMin } from '../clearance/clearanceRate.ts';
import type { Mouth, PlaqueConstants } from '../types.ts';
import { AMMONIA, PROTONS } from './layout.ts';

const SOLUTES = ['Sugar', 'Lactate', 'Acetate', 'Phosphate', 'Carbonate', 'Urea', 'Ammonia', 'Proton'] as const;

/** The equations' numbers for one mouth, in metres, seconds and mmol/L; hydrogen ions as the activity 10^-pH, mol/L. */
export interface PlaqueModel {
  readonly cells: number;
  readonly constants: PlaqueConstants;
  readonly mouth: Mouth;
  /** Thickness of a layer and of the film, m. */
  readonly layerM: number;
  readonly filmM: number;
  /** Between two layers, and between the outermost and the film, m/s, by solute; the last is the free proton's. */
  readonly inner: Float64Array;
  readonly surface: Float64Array;
  /** Share of each layer that what saliva brings reaches. */
  readonly basalShare: Float64Array;
  readonly acidity: Acidity;
  /** Clearance per second for a flow of 1 mL/min. */
  readonly clearancePerSPerFlow: number;
}

/** Acidity constants as 10^-pK, and the fixed buffers of plaque, mmol/L. */
export interface Acidity {
  readonly lactic: number;
  readonly acetic: number;
  readonly phosphate: number;
  readonly carbonic: number;
  readonly bicarbonate: number;
  readonly ammonium: number;
  /** 1,000 x 10^-pK of water: mmol/L of hydroxide for an activity of 1. */
  readonly water: number;
  /** mmol/L of free hydrogen ions for an activity of 1 mol/L. */
  readonly free: number;
  readonly buffer: Float64Array;
  readonly bufferConstant: Float64Array;
}

/** 1 / activity coefficient of an ion with one charge at ionic strength 0.15 (Davies). @source davies1962 */
const FREE_PER_ACTIVITY = 1.32;
const DIFFUSION_UNIT = 1e-10;
const METRES = 1e-3;

/** @param mouth  checked before */
export function buildModel(mouth: Mouth, constants: PlaqueConstants, cells: number): PlaqueModel {
  const layerM = (mouth.plaque.thicknessMm * METRES) / cells;
  const filmM = constants.filmThicknessMm * METRES;
  const inner = new Float64Array(PROTONS + 1);
  const surface = new Float64Array(PROTONS + 1);
  SOLUTES.forEach((name, solute) => {
    const plaque = constants[`plaqueDiffusion${name}`] * DIFFUSION_UNIT;
    const film = constants[`filmDiffusion${name}`] * DIFFUSION_UNIT;
    inner[solute] = plaque / layerM;
    surface[solute] = 1 / (layerM / 2 / plaque + filmM / 2 / film);
  });
  return {
    cells,
    constants,
    mouth,
    layerM,
    filmM,
    inner,
    surface,
    basalShare: basalShare(constants.basalDepthMm * METRES, layerM, cells),
    acidity: buildAcidity(constants),
    clearancePerSPerFlow: clearancePerMin(mouth.saliva, 1) / 60,
  };
}

/** Layers are counted from the tooth: only the outermost ones are reached in thick plaque. */
function basalShare(depthM: number, layerM: number, cells: number): Float64Array {
  return Float64Array.from({ length: cells }, (_, i) => Math.min(1, Math.max(0, depthM / layerM - (cells - 1 - i))));
}

function buildAcidity(constants: PlaqueConstants): Acidity {
  const k = (pk: number) => 10 ** -pk;
  return {
    lactic: k(constants.lacticPk),
    acetic: k(constants.aceticPk),
    phosphate: k(constants.phosphatePk),
    carbonic: k(constants.carbonicPk),
    bicarbonate: k(constants.bicarbonatePk),
    ammonium: k(constants.ammoniumPk),
    water: 1000 * k(constants.waterPk),
    free: 1000 * FREE_PER_ACTIVITY,
    buffer: Float64Array.of(
      constants.fixedBuffer1MmolPerL,
      constants.fixedBuffer2MmolPerL,
      constants.fixedBuffer3MmolPerL,
      constants.fixedBuffer4MmolPerL,
    ),
    bufferConstant: Float64Array.of(
      k(constants.fixedBuffer1Pk),
      k(constants.fixedBuffer2Pk),
      k(constants.fixedBuffer3Pk),
      k(constants.fixedBuffer4Pk),
    ),
  };
}

/** Number of solutes that are carried one by one. */
export const SOLUTE_COUNT = AMMONIA + 1;
