import type { Finding } from '../../core/visit/types.ts';
import type { Chance } from './chance.ts';
import type { DemoProfile } from './profile.ts';

export interface VisitDraw {
  readonly profile: DemoProfile;
  readonly onDate: string;
  readonly isFirst: boolean;
  /** What was found at the visit before; empty at the first. */
  readonly earlier: readonly Finding[];
}

const MILK_TEETH = ['54', '64', '74', '84', '55', '65', '52', '62'];
const MIXED_TEETH = ['16', '26', '36', '46', '54', '64', '75', '85'];
const PERMANENT_TEETH = ['16', '26', '37', '47', '15', '25', '35', '44', '13', '23'];
const ROOT_TEETH = ['33', '34', '43', '44', '13', '23'];
const NEW_LESIONS_AT_MEAN = 0.3;
const ROOTS_FROM_YEARS = 55;

/** New lesions on teeth that had none, by a count whose mean follows the person's leaning; what was found before, older by a visit; old fillings. */
export function drawFindings({ profile, onDate, isFirst, earlier }: VisitDraw, chance: Chance): readonly Finding[] {
  if (profile.has('no-teeth')) return [];
  const ageYears = ageAt(profile, onDate);
  const kept = isFirst ? drawOldFindings(profile, ageYears, chance) : earlier.map(growOlder);
  const teeth = ageYears < 6 ? MILK_TEETH : ageYears < 12 ? MIXED_TEETH : PERMANENT_TEETH;
  const free = teeth.filter((tooth) => !kept.some((finding) => finding.tooth === tooth && finding.kind !== 'root-exposed'));
  const count = Math.min(drawCount(NEW_LESIONS_AT_MEAN * Math.exp(0.8 * profile.leaning) * (isFirst ? 1.5 : 1), chance), free.length);
  const from = chance.whole(0, Math.max(0, free.length - 1));
  const lesions = Array.from({ length: count }, (_, i) => drawLesion(free[(from + i) % free.length] ?? '16', ageYears, chance));
  return [...lesions, ...kept];
}

function drawOldFindings(profile: DemoProfile, ageYears: number, chance: Chance): readonly Finding[] {
  const fillings = profile.filledTeeth.map((tooth): Finding => ({ tooth, surface: 'occlusal', kind: 'restoration', isNew: false }));
  const roots = ageYears >= ROOTS_FROM_YEARS ? ROOT_TEETH.slice(0, chance.whole(0, 3)) : [];
  const wear: readonly Finding[] = profile.has('acid-wear') ? [{ tooth: '11', surface: 'lingual', kind: 'acid-wear', isNew: false }] : [];
  return [...fillings, ...roots.map((tooth): Finding => ({ tooth, kind: 'root-exposed', isNew: false })), ...wear];
}

/** A cavity has been filled since, another lesion has come to rest. */
function growOlder(finding: Finding): Finding {
  const { tooth, surface, kind, activity } = finding;
  const place = { tooth, ...(surface && { surface }) };
  if (kind === 'cavity') return { ...place, kind: 'restoration', isNew: false };
  return activity === undefined ? { ...finding, isNew: false } : { ...place, kind, activity: 'inactive', isNew: false };
}

function drawLesion(tooth: string, ageYears: number, chance: Chance): Finding {
  const activity = chance.happens(0.75) ? 'active' : 'inactive';
  if (ageYears >= ROOTS_FROM_YEARS && chance.happens(0.35)) return { tooth, surface: 'root', kind: 'root-lesion', activity, isNew: true };
  const draw = chance.fraction();
  if (draw < 0.5) return { tooth, surface: 'facial', kind: 'white-spot', activity, isNew: true };
  if (draw < 0.8 && ageYears >= 6) return { tooth, surface: 'mesial', kind: 'enamel-radiograph', activity: 'not-assessed', isNew: true };
  return { tooth, surface: 'facial', kind: 'cavity', activity: 'active', isNew: true };
}

/** A Poisson count, by multiplying fractions until they fall below exp(-mean). */
function drawCount(mean: number, chance: Chance): number {
  const floor = Math.exp(-mean);
  let product = chance.fraction();
  let count = 0;
  while (product > floor) {
    product *= chance.fraction();
    count += 1;
  }
  return count;
}

/** Completed years, near enough for drawing: a few days either side of a birthday make no difference here. */
export function ageAt({ birthDate }: DemoProfile, onDate: string): number {
  return Math.floor((Date.parse(onDate) - Date.parse(birthDate)) / (365.2425 * 86_400_000));
}
