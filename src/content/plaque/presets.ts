import type { Mouth, MouthPreset, Plaque, Saliva } from '../../core/plaque/types.ts';
import type { SourceRef } from '../../core/visit/answer.ts';

/** What a preset is, in words for the screen, and its numbers. */
export interface NamedMouth extends Mouth {
  readonly name: string;
  readonly source: SourceRef;
}

const usualSaliva: Saliva = {
  restingFlowMlPerMin: 0.32,
  sleepFlowMlPerMin: 0.05,
  highestFlowMlPerMin: 5,
  residualVolumeMl: 0.8,
  swallowVolumeMl: 1.1,
};

const averagePlaque: Plaque = { thicknessMm: 0.2, filmVelocityMmPerMin: 8, uptakeMmolPerLPerS: 0.3, aciduricShare: 0.15 };

/** Where the numbers of saliva come from; a measured flow takes the place of the usual one. */
export const salivaSources: Readonly<Record<keyof Saliva, SourceRef>> = {
  restingFlowMlPerMin: { key: 'dawes1983', status: 'memory', note: '0.3 to 0.4 mL/min; the median of 159 people was 0.48' },
  sleepFlowMlPerMin: { key: 'oralHandbook', status: 'memory', note: 'nearly none in sleep' },
  highestFlowMlPerMin: { key: 'project', status: 'proposal', note: 'it hardly matters for clearance' },
  residualVolumeMl: { key: 'lagerlofDawes1984', status: 'read', note: 'abstract: 0.87 mL in men, 0.66 in women' },
  swallowVolumeMl: { key: 'lagerlofDawes1984', status: 'read', note: 'abstract: 1.19 mL in men, 0.96 in women' },
};

const tuned: SourceRef = {
  key: 'project',
  status: 'proposal',
  note: 'thickness, uptake and share are chosen so that published curves come out; no preset is a diagnosis',
};

/** Within what the tuned numbers of plaque are varied for a band, as factors. */
export const plaqueSpread: Readonly<Record<keyof Plaque, readonly [low: number, high: number]>> = {
  thicknessMm: [0.75, 1.3],
  filmVelocityMmPerMin: [0.6, 1.6],
  uptakeMmolPerLPerS: [0.7, 1.4],
  aciduricShare: [0.5, 1.8],
};

export const mouthPresets: Readonly<Record<MouthPreset, NamedMouth>> = {
  average: { name: 'average plaque, easily reached site', saliva: usualSaliva, plaque: averagePlaque, source: tuned },
  lowAcid: {
    name: 'plaque that makes little acid',
    saliva: usualSaliva,
    plaque: { ...averagePlaque, uptakeMmolPerLPerS: 0.18, aciduricShare: 0.03 },
    source: tuned,
  },
  highAcid: {
    name: 'plaque that makes much acid',
    saliva: usualSaliva,
    plaque: { ...averagePlaque, thicknessMm: 0.25, uptakeMmolPerLPerS: 0.4, aciduricShare: 0.4 },
    source: tuned,
  },
  approximal: {
    name: 'between the teeth',
    saliva: usualSaliva,
    plaque: { thicknessMm: 0.3, filmVelocityMmPerMin: 4, uptakeMmolPerLPerS: 0.4, aciduricShare: 0.25 },
    source: tuned,
  },
  thin: {
    name: 'thin plaque, about one day old',
    saliva: usualSaliva,
    plaque: { ...averagePlaque, thicknessMm: 0.08, uptakeMmolPerLPerS: 0.2 },
    source: tuned,
  },
  dryMouth: {
    name: 'average plaque, dry mouth',
    saliva: { ...usualSaliva, restingFlowMlPerMin: 0.1, sleepFlowMlPerMin: 0.02 },
    plaque: averagePlaque,
    source: tuned,
  },
  upperFront: {
    name: 'outer side of the upper front teeth',
    saliva: usualSaliva,
    plaque: { ...averagePlaque, filmVelocityMmPerMin: 0.8 },
    source: {
      key: 'dawes1989velocity',
      status: 'read',
      note: 'abstract: 0.8 mm/min there, 8.0 inside the lower front teeth; the plaque is tuned',
    },
  },
};
