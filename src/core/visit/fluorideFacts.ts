import type { OtherFluoride, PersonFacts } from '../regimen/types.ts';
import type { AnswerValue } from './answer.ts';
import { listOf, numberOf } from './knownValues.ts';

type Known = Readonly<Record<string, AnswerValue>>;
type FluorideFacts = Pick<
  { [K in keyof PersonFacts]: PersonFacts[K] | undefined },
  | 'waterLitresPerDay'
  | 'otherFluoride'
  | 'saltFluorideMgPerKg'
  | 'saltGPerDay'
  | 'supplementFluorideMgPerDay'
  | 'varnishDaysPerYear'
  | 'strongPasteInUse'
  | 'waterFluoridated'
>;

/** Where fluoride comes from besides the packs of a plan, as it was told. What was not told stays unknown. */
export function fluorideFacts(known: Known): FluorideFacts {
  const { water_fluoridated: water } = known;
  return {
    waterLitresPerDay: numberOf(known, 'water_litres_per_day'),
    waterFluoridated: typeof water === 'boolean' ? water : undefined,
    otherFluoride: otherFluoride(known),
    saltFluorideMgPerKg: numberOf(known, 'salt_fluoride_mg_per_kg'),
    saltGPerDay: numberOf(known, 'salt_g_per_day'),
    supplementFluorideMgPerDay: numberOf(known, 'supplement_fluoride_mg_per_day'),
    varnishDaysPerYear: varnishDays(known),
    strongPasteInUse: strongPaste(known),
  };
}

const FLUORIDE_EXTRAS: readonly string[] = [
  'fluoridated-salt',
  'fluoride-tablets-or-drops',
  'naf-rinse-daily',
  'other',
] satisfies OtherFluoride[];
const isFluoride = (id: string): id is OtherFluoride => FLUORIDE_EXTRAS.includes(id);

/** "Something else" may be fluoride, so it is named as well; gel or foam at the practice is on no list of things at home. */
function otherFluoride(known: Known): readonly OtherFluoride[] | undefined {
  const extras = listOf(known, 'home_extras');
  return extras && [...extras.filter(isFluoride), ...(known['professional_fluoride'] === 'other' ? ['professional-gel' as const] : [])];
}

function varnishDays(known: Known): number | undefined {
  const { professional_fluoride: told } = known;
  if (told === 'varnish') return numberOf(known, 'varnish_days_12m');
  return told === 'none' || told === 'other' ? 0 : undefined;
}

/** None is in use where nobody brushes with fluoride. */
function strongPaste(known: Known): boolean | undefined {
  if (known['paste_times_per_day'] === 0) return false;
  const { paste_strength: strength } = known;
  return typeof strength === 'string' ? strength === '5000' : undefined;
}
