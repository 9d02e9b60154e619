import type { EatingNumber } from '../../core/plaque/day/dayModel.ts';
import type { SourcedNumber } from '../../core/plaque/types.ts';
import type { SourceRef } from '../../core/visit/answer.ts';

const ours = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });

function row(value: number, unit: string, source: SourceRef, range?: readonly [low: number, high: number]): SourcedNumber {
  return range ? { value, unit, low: range[0], high: range[1], source } : { value, unit, source };
}

const stays: SourceRef = {
  key: 'luke1999',
  status: 'proposal',
  note: 'that sugars were still found an hour after bananas, bread and chocolate was read (abstract); shares and half-times are ours',
};

/** Numbers by which what a person ate becomes what the mouth meets; nearly all are our proposal, and those that matter are varied for the band. */
export const eatingNumbers: Readonly<Record<EatingNumber, SourcedNumber>> = {
  hexoseMmolPerG: row(5.84, 'mmol/g', { key: 'project', status: 'derived', note: 'as sucrose; glucose would be 5.55' }),
  dissolvedMostMmolPerL: row(5250, 'mmol/L', {
    key: 'handbook',
    status: 'memory',
    note: 'hexose of a saturated solution of sucrose, about 0.9 g/mL',
  }),
  milkSugarShare: row(
    0.04,
    '',
    ours('milk sugar counts as little, so that milk alone reaches about pH 6; from memory, lactose lowers plaque pH far less'),
    [0.02, 0.1],
  ),
  chewingFlowMlPerMin: row(3, 'mL/min', ours('while chewing food'), [2, 4]),
  gumFlowMlPerMin: row(2, 'mL/min', ours('over the whole time of chewing; more at first, less later'), [1.3, 3]),
  cheeseFlowMlPerMin: row(3, 'mL/min', ours('while chewing cheese; that it brings calcium is not in the model'), [2, 4]),
  sipMl: row(25, 'mL', ours('a sip'), [15, 40]),
  sipMinutes: row(0.25, 'min', ours('a sip')),
  biteG: row(10, 'g', ours('a bite, where food is taken over a long time'), [6, 16]),
  biteMinutes: row(1, 'min', ours('a bite')),
  leastGapMinutes: row(3, 'min', ours('sips closer than this are counted as larger sips')),
  lingeringShare: row(0.3, '', stays, [0.15, 0.5]),
  lingeringHalfMinutes: row(4, 'min', stays, [2, 8]),
  stickingShare: row(0.5, '', stays, [0.25, 0.8]),
  stickingHalfMinutes: row(10, 'min', stays, [5, 20]),
  typedWaterPercentClears: row(80, 'g in 100 g', ours('water of a typed food that clears')),
  typedWaterPercentLingers: row(30, 'g in 100 g', ours('water of a typed food that lingers')),
  typedWaterPercentSticks: row(10, 'g in 100 g', ours('water of a typed food that sticks')),
};
