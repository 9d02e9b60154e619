import type { FluorideIntake } from './types.ts';

const NO_PRODUCT = 'No fluoride product in this plan';

/**
 * The fluoride sum as one sentence. A sum with an unknown part is "at least"; a share of a limit is given only when nothing is missing; an
 * assumed weight is said, and what is averaged because it is not used every day.
 * @param intake   the sum
 * @param from     names of the products in the sum, e.g. "paste"
 * @param besides  names of what else is in it and known, e.g. "water"
 */
export function fluorideSentence(intake: FluorideIntake, from: readonly string[], besides: readonly string[] = []): string {
  const unknown = intake.unknownSources.length === 0 ? [] : [`${listed(intake.unknownSources)} not known`];
  const isEmpty = from.length === 0;
  if (isEmpty && intake.mgPerDay === 0) return [NO_PRODUCT, ...unknown].join('; ');
  const notes = [...unknown, ...averagedNote(intake), ...weightNote(intake)];
  const amount =
    intake.mgPerKgPerDay === null ? `${twoFigures(intake.mgPerDay)} mg a day` : `${twoFigures(intake.mgPerKgPerDay)} mg/kg a day`;
  const sum = `${intake.complete ? amount : `${isEmpty ? 'at' : 'At'} least ${amount}`} from ${listed([...from, ...besides])}`;
  return `${isEmpty ? `${NO_PRODUCT}; ` : ''}${sum}${notes.length === 0 ? '' : ` (${notes.join('; ')})`}`;
}

function averagedNote({ parts = [] }: FluorideIntake): readonly string[] {
  const names = [...new Set(parts.filter((p) => p.onItsDay !== null).map((p) => p.name))];
  return names.length === 0 ? [] : [`${listed(names)} averaged over the year`];
}

function weightNote({ weightAssumed, weightKg }: FluorideIntake): readonly string[] {
  if (weightKg === null) return ['weight not known'];
  return weightAssumed ? [`weight assumed ${weightKg} kg, light for the age, for this line alone`] : [];
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

const twoFigures = (value: number): string => String(Number(value.toPrecision(2)));
