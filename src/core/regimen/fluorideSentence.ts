import type { FluorideIntake } from './types.ts';

/**
 * The fluoride sum as one sentence. A sum with an unknown part is "at least"; a share of a limit is given only when nothing is missing; an
 * assumed weight is said.
 * @param intake  the sum
 * @param from    names of the sources that are in the sum, e.g. "paste"
 */
export function fluorideSentence(intake: FluorideIntake, from: readonly string[]): string {
  const unknown = intake.unknownSources.length === 0 ? [] : [`${listed(intake.unknownSources)} not known`];
  if (from.length === 0) return ['No fluoride product in this plan', ...unknown].join('; ');
  const weight = weightNote(intake);
  const notes = [...unknown, ...(weight === undefined ? [] : [weight])];
  const amount =
    intake.mgPerKgPerDay === null ? `${twoFigures(intake.mgPerDay)} mg a day` : `${twoFigures(intake.mgPerKgPerDay)} mg/kg a day`;
  const sum = `${intake.complete ? amount : `At least ${amount}`} from ${listed(from)}`;
  return notes.length === 0 ? sum : `${sum} (${notes.join('; ')})`;
}

function weightNote({ weightAssumed, weightKg }: FluorideIntake): string | undefined {
  if (weightKg === null) return 'weight not known';
  return weightAssumed ? `weight assumed ${weightKg} kg, light for the age` : undefined;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

const twoFigures = (value: number): string => String(Number(value.toPrecision(2)));
