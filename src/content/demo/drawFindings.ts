import type { Level } from '../../core/risk/types.ts';
import type { Finding } from '../../core/visit/types.ts';
import type { Chance } from './chance.ts';
import type { DemoProfile } from './profile.ts';

export interface VisitDraw {
  readonly profile: DemoProfile;
  readonly onDate: string;
  /** Days since the visit before; absent at the first. */
  readonly daysSince?: number;
  /** What was found at the visit before; empty at the first. */
  readonly earlier: readonly Finding[];
}

const MILK_TEETH = '54 64 74 84 55 65 75 85 52 62'.split(' ');
const MIXED_TEETH = '16 26 36 46 54 64 74 84 55 65'.split(' ');
const PERMANENT_TEETH = '16 26 36 46 17 27 37 47 15 25 35 45 14 24 34 44 12 22 13 23 11 21'.split(' ');
const ROOT_TEETH = '33 34 43 44 13 23'.split(' ');
const OVERDENTURE_ROOTS = ['33', '43'];

/** Kinds that make a tooth a decayed one in counts of teeth. */
export const DECAYED_KINDS: readonly Finding['kind'][] = ['cavity', 'dentine-radiograph', 'root-lesion'];
/** Kinds that decay of the same tooth takes the place of: it began there, or at the edge of the filling. */
const OVERTAKEN_KINDS: readonly Finding['kind'][] = ['white-spot', 'enamel-radiograph', 'restoration'];

/** Teeth newly decayed or filled in 18 months, by level: published means of one teaching clinic, times 0.4 for an ordinary practice (assumed). */
const NEW_TEETH_IN_18_MONTHS: Readonly<Record<Level, number>> = {
  low: 0.94 * 0.4,
  moderate: 1.26 * 0.4,
  high: 1.79 * 0.4,
  extreme: 3.26 * 0.4,
};
/** Signs before a cavity at one visit, by level: assumed. */
const EARLY_SIGNS_AT_A_VISIT: Readonly<Record<Level, number>> = { low: 0.02, moderate: 0.05, high: 0.75, extreme: 0.8 };
const DAYS_IN_18_MONTHS = 548;
const ROOTS_FROM_YEARS = 55;

/** New lesions, early signs only on teeth that had nothing; what was found before, older by a visit; old fillings. */
export function drawFindings(visit: VisitDraw, chance: Chance): readonly Finding[] {
  const { profile, onDate, daysSince, earlier } = visit;
  if (profile.isToothless) return [];
  const ageYears = ageAt(profile, onDate);
  const kept = daysSince === undefined ? drawOldFindings(profile, ageYears, chance) : earlier.map(growOlder);
  const decayCount = daysSince === undefined ? 0 : countNewTeeth(profile, daysSince, chance);
  const teethWithout = (isTaken: (finding: Finding) => boolean) => listTeeth(profile, ageYears, kept.filter(isTaken));
  const decayed = pickTeeth(
    teethWithout(({ kind }) => DECAYED_KINDS.includes(kind)),
    decayCount,
    chance,
  );
  const untouched = teethWithout(({ kind }) => kind !== 'root-exposed').filter((tooth) => !decayed.includes(tooth));
  const early = pickTeeth(untouched, chance.count(EARLY_SIGNS_AT_A_VISIT[profile.risk]), chance);
  return [
    ...decayed.map((tooth) => drawDecay(tooth, ageYears, chance)),
    ...early.map((tooth) => drawEarlySign(tooth, ageYears, chance)),
    ...kept.filter(({ tooth, kind }) => !(OVERTAKEN_KINDS.includes(kind) && decayed.includes(tooth))),
  ];
}

function countNewTeeth({ risk, frailty }: DemoProfile, days: number, chance: Chance): number {
  return chance.count((NEW_TEETH_IN_18_MONTHS[risk] * frailty * days) / DAYS_IN_18_MONTHS);
}

/** Teeth that could show something new: those there at this age, but for the ones given. */
function listTeeth({ has, past }: DemoProfile, ageYears: number, taken: readonly Finding[]): readonly string[] {
  if (has('overdenture-roots')) return [];
  const teeth = ageYears < 6 ? MILK_TEETH : ageYears < 12 ? MIXED_TEETH : PERMANENT_TEETH;
  const gone = new Set([...past.missing, ...taken.map(({ tooth }) => tooth)]);
  return teeth.filter((tooth) => !gone.has(tooth));
}

/** Neighbours in the list, from a place drawn at random. */
function pickTeeth(teeth: readonly string[], count: number, chance: Chance): readonly string[] {
  const from = chance.whole(0, Math.max(0, teeth.length - 1));
  return [...teeth.slice(from), ...teeth.slice(0, from)].slice(0, count);
}

/** What stands in the mouth at the first visit: untreated teeth, which are new to this practice, fillings, bare roots, wear. */
function drawOldFindings({ has, past }: DemoProfile, ageYears: number, chance: Chance): readonly Finding[] {
  if (has('overdenture-roots')) return OVERDENTURE_ROOTS.map((tooth): Finding => ({ tooth, kind: 'root-exposed', isNew: false }));
  const fillings = past.filled.map((tooth): Finding => ({ tooth, surface: 'occlusal', kind: 'restoration', isNew: false }));
  const roots = ageYears >= ROOTS_FROM_YEARS && chance.happens(0.5) ? ROOT_TEETH.slice(0, chance.whole(1, 3)) : [];
  const wear: readonly Finding[] = has('acid-wear') ? [{ tooth: '11', surface: 'lingual', kind: 'acid-wear', isNew: false }] : [];
  return [
    ...past.untreated.map((tooth) => drawDecay(tooth, ageYears, chance)),
    ...fillings,
    ...roots.filter((tooth) => !past.missing.includes(tooth)).map((tooth): Finding => ({ tooth, kind: 'root-exposed', isNew: false })),
    ...wear,
  ];
}

/** A cavity has been filled since, another lesion has come to rest. */
function growOlder(finding: Finding): Finding {
  const { tooth, surface, kind, activity } = finding;
  const place = { tooth, ...(surface && { surface }) };
  if (kind === 'cavity' || kind === 'dentine-radiograph') return { ...place, kind: 'restoration', isNew: false };
  return activity === undefined ? { ...finding, isNew: false } : { ...place, kind, activity: 'inactive', isNew: false };
}

/** Decay that has gone beyond enamel: what counts as a decayed tooth. */
function drawDecay(tooth: string, ageYears: number, chance: Chance): Finding {
  if (ageYears >= ROOTS_FROM_YEARS && chance.happens(0.35))
    return { tooth, surface: 'root', kind: 'root-lesion', activity: 'active', isNew: true };
  return chance.happens(ageYears < 6 ? 0 : 0.35)
    ? { tooth, surface: chance.pick(['mesial', 'distal']), kind: 'dentine-radiograph', activity: 'active', isNew: true }
    : { tooth, surface: chance.pick(['occlusal', 'facial']), kind: 'cavity', activity: 'active', isNew: true };
}

function drawEarlySign(tooth: string, ageYears: number, chance: Chance): Finding {
  return ageYears >= 6 && chance.happens(0.4)
    ? { tooth, surface: 'mesial', kind: 'enamel-radiograph', activity: 'not-assessed', isNew: true }
    : { tooth, surface: 'facial', kind: 'white-spot', activity: chance.happens(0.75) ? 'active' : 'inactive', isNew: true };
}

/** Completed years, near enough for drawing: a few days either side of a birthday make no difference here. */
export function ageAt({ birthDate }: Pick<DemoProfile, 'birthDate'>, onDate: string): number {
  return Math.floor((Date.parse(onDate) - Date.parse(birthDate)) / (365.2425 * 86_400_000));
}
