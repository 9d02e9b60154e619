import type { Level } from '../../core/risk/types.ts';
import type { Answer, Answers } from '../../core/visit/answer.ts';
import { monthAfter } from '../../core/visit/dateOrMonth.ts';
import type { Finding } from '../../core/visit/types.ts';
import type { Chance } from './chance.ts';
import { ageAt } from './drawFindings.ts';
import type { DemoProfile } from './profile.ts';

export interface LookDraw {
  readonly profile: DemoProfile;
  /** Wear from grinding or brushing, which stays from visit to visit. */
  readonly isWorn: boolean;
  readonly onDate: string;
  readonly findings: readonly Finding[];
  /** What was on record at the visit before; absent at the first. */
  readonly before?: Answers | undefined;
}

/** The date of the last bitewings and tooth wear, each absent where nobody asked or noted it. */
export function drawLook(look: LookDraw, chance: Chance): Answers {
  const { isToothless, has } = look.profile;
  if (isToothless || has('overdenture-roots')) return {};
  const bitewings = drawBitewings(look, chance);
  const wear = drawWear(look, chance);
  return { ...(bitewings && { bitewings_last: bitewings }), ...(wear && { tooth_wear: wear }) };
}

const asked = (value: string, onDate: string): Answer => ({ how: 'asked', value, askedOn: onDate });

/** Months after which the dentist has them taken again, by level: the upper ends of the practice's own setting. */
const TAKEN_AGAIN_MONTHS: Readonly<Record<Level, number>> = { low: 24, moderate: 18, high: 12, extreme: 6 };
const RADIOGRAPH_KINDS: readonly Finding['kind'][] = ['enamel-radiograph', 'dentine-radiograph'];
/** Below this age teeth mostly stand apart and can be looked at. */
const FIRST_TAKEN_YEARS = 5;

/** When bitewings were last taken: on the day itself where they showed something new, else as told at the first visit and kept since. */
function drawBitewings({ profile, onDate, findings, before }: LookDraw, chance: Chance): Answer | undefined {
  const isSeen = findings.some(({ kind, isNew }) => isNew && RADIOGRAPH_KINDS.includes(kind));
  if (isSeen) return asked(onDate, onDate);
  const ageYears = ageAt(profile, onDate);
  if (!before) return tellBefore(ageYears, onDate, chance);
  const told = before.bitewings_last;
  const last = typeof told?.value === 'string' && told.value !== 'never' ? told.value : undefined;
  const isTime = last === undefined || monthAfter(last, TAKEN_AGAIN_MONTHS[profile.risk]) <= onDate.slice(0, 7);
  if (isTime && ageYears >= FIRST_TAKEN_YEARS && chance.happens(0.6)) return asked(onDate, onDate);
  return told?.value === undefined ? told : { ...told, askedOn: onDate };
}

/** Somebody new tells the month, says never, does not know, or is not asked. */
function tellBefore(ageYears: number, onDate: string, chance: Chance): Answer | undefined {
  if (ageYears < FIRST_TAKEN_YEARS) return chance.happens(0.8) ? asked('never', onDate) : undefined;
  const never = ageYears < 12 ? 40 : ageYears < 20 ? 15 : 3;
  const said = chance.pickByShare({ month: 75 - never / 2, never, unknown: 15, notAsked: 10 });
  if (said === 'month') return asked(monthAfter(onDate, -chance.whole(4, 34)), onDate);
  if (said === 'never') return asked('never', onDate);
  return said === 'unknown' ? { how: 'does-not-know' } : undefined;
}

/** As it is seen on looking; now and then nobody notes it. */
function drawWear({ profile, isWorn, onDate }: LookDraw, chance: Chance): Answer | undefined {
  if (chance.happens(0.12)) return undefined;
  if (profile.has('acid-wear')) return asked(isWorn ? 'acid-and-other' : 'acid', onDate);
  return asked(isWorn ? 'other' : 'none', onDate);
}
