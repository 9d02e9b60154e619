import { type FluorideCompound, fluorideContentPpm } from './fluorideContentPpm.ts';
import { fluorideMg } from './fluorideMg.ts';
import type { Agent } from './tables.ts';
import type { ShelfItem } from './types.ts';

/** What a pack prints of its fluoride, as it was read from the label. What it does not print stays undefined. */
export interface FluorideLabel {
  readonly form: ShelfItem['form'];
  readonly compound?: FluorideCompound | undefined;
  /** Of the compound. */
  readonly percent?: number | undefined;
  readonly fluoridePpm?: number | undefined;
  /** Of fluoride ion, where the label prints that as well or instead. */
  readonly fluorideIonPercent?: number | undefined;
  readonly packAmount?: ShelfItem['packAmount'];
  /** Printed for the whole pack. */
  readonly packFluorideMg?: number | undefined;
  readonly useG?: number | undefined;
  readonly useMl?: number | undefined;
  /** Printed for one use. */
  readonly useFluorideMg?: number | undefined;
}

/** Something on a label that cannot be right as it stands. A doubt asks; it blocks nothing by itself. */
export interface LabelDoubt {
  readonly id: 'strengths-differ' | 'no-such-strength' | 'pack-differs' | 'use-differs';
  readonly field: keyof FluorideLabel;
  readonly says: string;
  /** The higher of the numbers that part, ppm or mg: the careful one for every limit. */
  readonly countWith: number;
}

const PPM_PER_PERCENT = 10_000;
/** Printed numbers are rounded, 0.0226 % to "0.02 %" at the worst. */
const ROUNDED = 0.15;
/** A whole pack or a dose is printed to three figures or more. */
const ROUNDED_TOTAL = 0.01;
/** Most that a mL of paste or gel weighs, g: strengths by volume and by weight part by that. */
const DENSEST = 1.45;
export const COMPOUND_WORDS: Readonly<Record<FluorideCompound, string>> = {
  NaF: 'sodium fluoride',
  SnF2: 'stannous fluoride',
  Na2PO3F: 'sodium monofluorophosphate',
  'AgF(NH3)2': 'silver diamine fluoride',
};

/**
 * Misprints of a fluoride label: strengths that contradict each other, a strength that no product of this form has, a pack total or a dose
 * that is not strength times amount. Compares only what the label prints; what is missing raises no doubt.
 * @param label   numbers 0 or more; percentages to 100
 * @param agents  for the strengths that exist, by form
 * @returns doubts, the most telling first; empty where the label agrees with itself
 * @throws RangeError naming the number outside its range (NaN included)
 * @source atomicMasses, rinseLabels, highFluorideLabels, varnishMonographs
 */
export function checkLabel(label: FluorideLabel, agents: readonly Pick<Agent, 'forms' | 'ppmRange'>[]): readonly LabelDoubt[] {
  checkNumbers(label);
  const strengths = strengthsOf(label);
  const differ = differingStrengths(label, strengths);
  const known = rangesOf(label.form, agents);
  const unheard = differ === undefined ? noSuchStrength(label, strengths, known) : undefined;
  return [differ, unheard, ...totalDoubts(label, strengths)].filter((d) => d !== undefined);
}

interface Strength {
  readonly field: 'fluoridePpm' | 'percent' | 'fluorideIonPercent';
  readonly ppm: number;
  readonly says: string;
}

function strengthsOf({ compound, percent, fluoridePpm, fluorideIonPercent }: FluorideLabel): readonly Strength[] {
  const all: Strength[] = [];
  if (compound !== undefined && percent !== undefined) {
    all.push({ field: 'percent', ppm: fluorideContentPpm(compound, percent), says: `${percent} % ${COMPOUND_WORDS[compound]}` });
  }
  if (fluoridePpm !== undefined) all.push({ field: 'fluoridePpm', ppm: fluoridePpm, says: `${fluoridePpm} ppm` });
  if (fluorideIonPercent !== undefined) {
    all.push({ field: 'fluorideIonPercent', ppm: fluorideIonPercent * PPM_PER_PERCENT, says: `${fluorideIonPercent} % fluoride` });
  }
  return all;
}

/** Only against what comes first: the compound with its percentage is the number that a maker weighs. */
function differingStrengths({ form }: FluorideLabel, [first, ...rest]: readonly Strength[]): LabelDoubt | undefined {
  const other = first && rest.find((s) => !agree(first.ppm, s.ppm, form, ROUNDED));
  if (!first || !other) return undefined;
  const says = `${first.says} holds ${say(first.ppm)} ppm fluoride, but ${other.says} is ${say(other.ppm)} ppm. One of them is a misprint: ask the maker, and count with the higher until then.`;
  return { id: 'strengths-differ', field: other.field, says, countWith: Math.max(first.ppm, other.ppm) };
}

type Range = readonly [low: number, high: number];

function rangesOf(form: ShelfItem['form'], agents: readonly Pick<Agent, 'forms' | 'ppmRange'>[]): readonly Range[] {
  return agents.flatMap(({ forms, ppmRange }) => (ppmRange && forms.includes(form) && ppmRange[1] < 1e5 ? [ppmRange] : []));
}

function noSuchStrength({ form, compound }: FluorideLabel, [first]: readonly Strength[], known: readonly Range[]): LabelDoubt | undefined {
  const isKnown = (ppm: number) => known.some(([low, high]) => ppm >= low && ppm <= high);
  if (!first || first.ppm === 0 || known.length === 0 || isKnown(first.ppm)) return undefined;
  const guesses = [
    ...[10, 0.1].map((factor) => ({ ppm: first.ppm * factor, says: `a decimal place away, ${say(first.ppm * factor)} ppm` })),
    ...(first.field === 'fluorideIonPercent' ? asCompound(first.ppm / PPM_PER_PERCENT, compound) : []),
  ].filter(({ ppm }) => isKnown(ppm));
  const hint = guesses.length === 0 ? '' : ` Some do: ${guesses.map((g) => g.says).join('; ')}.`;
  const says = `No ${form} in the tables holds ${say(first.ppm)} ppm fluoride.${hint} Read the active ingredient again.`;
  return { id: 'no-such-strength', field: first.field, says, countWith: first.ppm };
}

/** "0.2 % fluoride" where 0.2 % of sodium fluoride was meant. */
function asCompound(percent: number, compound: FluorideCompound = 'NaF'): readonly { readonly ppm: number; readonly says: string }[] {
  const ppm = fluorideContentPpm(compound, percent);
  return [{ ppm, says: `${percent} % of ${COMPOUND_WORDS[compound]}, ${say(ppm)} ppm` }];
}

function totalDoubts(label: FluorideLabel, [first]: readonly Strength[]): readonly (LabelDoubt | undefined)[] {
  if (!first) return [];
  const { packAmount, packFluorideMg, useG, useMl, useFluorideMg, form } = label;
  const inPack = {
    id: 'pack-differs',
    field: 'packFluorideMg',
    amount: packAmount?.value,
    unit: packAmount?.unit,
    printedMg: packFluorideMg,
  } as const;
  const inUse = {
    id: 'use-differs',
    field: 'useFluorideMg',
    amount: useG ?? useMl,
    unit: useG === undefined ? 'mL' : 'g',
    printedMg: useFluorideMg,
  } as const;
  return [inPack, inUse].map(({ id, field, amount, unit, printedMg }): LabelDoubt | undefined => {
    if (amount === undefined || printedMg === undefined || unit === 'piece') return undefined;
    const mg = fluorideMg(first.ppm, amount);
    if (agree(mg, printedMg, unit === 'mL' ? form : 'rinse', ROUNDED_TOTAL)) return undefined;
    const says = `${printedMg} mg fluoride is printed, but ${amount} ${unit} at ${say(first.ppm)} ppm hold ${say(mg)} mg. Count with the higher.`;
    return { id, field, says, countWith: Math.max(mg, printedMg) };
  });
}

/** By weight and by volume are the same in a rinse; a paste or gel by volume may hold more than by weight. */
function agree(computed: number, printed: number, form: ShelfItem['form'], rounded: number): boolean {
  const most = form === 'paste' || form === 'gel' ? DENSEST : 1;
  return printed >= computed * (1 - rounded) && printed <= computed * most * (1 + rounded);
}

const FOUR_FIGURES = 4;
const say = (value: number): string => Number(value.toPrecision(FOUR_FIGURES)).toLocaleString('en-GB', { maximumFractionDigits: 3 });

function checkNumbers({ form: _form, compound: _compound, packAmount, ...numbers }: FluorideLabel): void {
  for (const [field, value] of Object.entries({ ...numbers, packAmount: packAmount?.value })) {
    const most = field === 'percent' || field === 'fluorideIonPercent' ? 100 : 1e6;
    if (value !== undefined && !(value >= 0 && value <= most)) throw new RangeError(`${field} must be 0..${most}: ${value}`);
  }
}
