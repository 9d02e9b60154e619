import { agents } from '../../../src/content/agents.ts';
import type { LocalProtocol } from '../../../src/core/regimen/local/localProtocol.ts';
import type { Jurisdiction, PersonFacts, ShelfItem } from '../../../src/core/regimen/types.ts';
import type { Level } from '../../../src/core/risk/types.ts';

export type Fires = 'stop' | 'caution' | 'ask-first' | 'warn';

/** One person and one pack, written by hand from the words of the list. */
export interface RuleCase {
  readonly id: string;
  readonly agent: string;
  readonly pack?: Partial<ShelfItem>;
  readonly who?: Partial<PersonFacts>;
  readonly place?: Jurisdiction;
  readonly level?: Level | undefined;
  readonly hasNoTeeth?: boolean;
  readonly own?: readonly LocalProtocol[];
  /** Without any legal status set by the practice. */
  readonly noLaw?: boolean;
  readonly notSold?: boolean;
  /** Absent: the rule is silent. */
  readonly fires?: Fires;
}

export const nobody: PersonFacts = {
  ageYears: 30,
  ageMonths: 360,
  weightKg: 60,
  pregnant: false,
  breastfeeding: false,
  canSpit: true,
  allergies: [],
  medicines: [],
  conditions: [],
  dogAtHome: false,
  youngChildAtHome: false,
  dryMouth: false,
  dentures: false,
  braces: false,
  jawPain: false,
  waterFluorideMgPerL: 0.2,
  waterLitresPerDay: 1,
  waterFluoridated: false,
  otherFluoride: [],
  varnishDaysPerYear: 0,
  strongPasteInUse: false,
};

const aged = (months: number, weightKg: number, more: Partial<PersonFacts> = {}): Partial<PersonFacts> => ({
  ageYears: Math.floor(months / 12),
  ageMonths: months,
  weightKg,
  ...more,
});
const years = (n: number, more: Partial<PersonFacts> = {}) => aged(n * 12, Math.min(60, 6 + 3 * n), more);
const has = (...conditions: string[]): Partial<PersonFacts> => ({ conditions });
const allergic = (...allergies: string[]): Partial<PersonFacts> => ({ allergies });

const FORMS: Readonly<Record<string, ShelfItem['form']>> = { SDF38: 'drops', F_SUPP: 'drops', XYLITOL: 'lozenge', POLYOL_GUM: 'gum' };

/** A pack of an agent as its label would have it: strength in its range, ingredients read, none of them noted. */
export function packOf(agentId: string, more: Partial<ShelfItem> = {}): ShelfItem {
  const agent = agents.find((a) => a.id === agentId);
  const range = agent?.ppmRange;
  return {
    id: `pack-${agentId}`,
    name: agentId,
    leafletName: { en: agentId, es: agentId },
    agentId,
    form: FORMS[agentId] ?? agent?.forms[0] ?? 'paste',
    traits: [],
    ...(range && { fluoridePpm: Math.min(60_000, Math.round((range[0] + range[1]) / 2)) }),
    percent: 0.2,
    pH: 7,
    inStock: true,
    release: 'anyone',
    meets: agent?.meets ?? [],
    use: { timesPerDay: 1, amount: 'one', amountG: 0.001, courseDays: 7 },
    ...more,
  };
}

const PROTOCOL: LocalProtocol = {
  id: 'own',
  name: 'Own rinse',
  author: 'Ines Marrow',
  date: '2026-01-01',
  agentId: 'NAOCL',
  percentAtMost: 0.2,
  timesPerWeekAtMost: 7,
  courseDaysAtMost: 30,
  levels: ['high', 'extreme'],
  needs: ['antimicrobial'],
  fromAgeYears: 18,
  exclusions: { conditions: [], medicines: [], allergies: [] },
};
const traits = (...list: string[]): Partial<ShelfItem> => ({ traits: list });
const use = (more: Partial<ShelfItem['use']>): Partial<ShelfItem> => ({ use: { timesPerDay: 1, amount: 'one', ...more } });

/** At least one case that fires and one that does not for every rule about one pack. */
export const ruleCases: readonly RuleCase[] = [
  { id: 'C01', agent: 'F_VARNISH', who: has('ulcerative-gingivitis'), fires: 'stop' },
  { id: 'C01', agent: 'F_VARNISH', who: has('stomatitis-mucositis'), fires: 'stop' },
  { id: 'C01', agent: 'F_VARNISH' },
  { id: 'C02', agent: 'F_VARNISH', who: has('asthma'), fires: 'stop' },
  { id: 'C02', agent: 'F_GEL_APF', who: has('asthma') },
  { id: 'C03', agent: 'F_VARNISH', pack: traits('colophony'), who: allergic('colophony'), fires: 'stop' },
  { id: 'C03', agent: 'F_VARNISH', who: allergic('colophony') },
  { id: 'C04', agent: 'F_VARNISH', pack: traits('alcohol'), who: { pregnant: true }, fires: 'caution' },
  { id: 'C04', agent: 'F_VARNISH', pack: traits('alcohol'), who: { breastfeeding: true }, fires: 'caution' },
  { id: 'C04', agent: 'F_VARNISH', who: { pregnant: true } },
  { id: 'C05', agent: 'F_PASTE_5000', who: years(15), place: 'UK', fires: 'stop' },
  { id: 'C05', agent: 'F_PASTE_5000', who: years(16), place: 'UK' },
  { id: 'C05', agent: 'F_PASTE_5000', who: years(5), place: 'US', fires: 'stop' },
  { id: 'C05', agent: 'F_PASTE_5000', who: years(6), place: 'US' },
  { id: 'C05', agent: 'F_PASTE_5000', who: years(15), place: 'unknown', fires: 'stop' },
  { id: 'C06', agent: 'F_PASTE_2800', who: years(9), fires: 'stop' },
  { id: 'C06', agent: 'F_PASTE_2800', who: years(10) },
  { id: 'C07', agent: 'F_RINSE_005', who: years(5), place: 'US', fires: 'stop' },
  { id: 'C07', agent: 'F_RINSE_02', who: { canSpit: false }, fires: 'stop' },
  { id: 'C07', agent: 'F_RINSE_005', who: years(6, { canSpit: undefined }), place: 'US', fires: 'ask-first' },
  { id: 'C07', agent: 'F_RINSE_005', who: years(6), place: 'US' },
  { id: 'C08', agent: 'F_GEL_APF', who: has('titanium-implants'), fires: 'caution' },
  { id: 'C08', agent: 'F_GEL_APF', who: has('porcelain-or-composite'), fires: 'caution' },
  { id: 'C08', agent: 'F_GEL_APF' },
  { id: 'C09', agent: 'F_GEL_APF', who: years(5), fires: 'stop' },
  { id: 'C09', agent: 'F_GEL_APF', who: years(6) },
  { id: 'C10', agent: 'SDF38', who: allergic('silver'), fires: 'stop' },
  { id: 'C10', agent: 'SDF38', who: allergic('ammonia'), fires: 'stop' },
  { id: 'C10', agent: 'SDF38', who: allergic('milk-protein') },
  { id: 'C11', agent: 'SDF38', who: has('tooth-nerve-infection'), fires: 'stop' },
  { id: 'C11', agent: 'SDF38' },
  { id: 'C12', agent: 'SDF38', who: { medicines: ['thyroid-medicine'] }, fires: 'stop' },
  { id: 'C12', agent: 'SDF38', who: { pregnant: undefined }, fires: 'ask-first' },
  { id: 'C12', agent: 'SDF38' },
  { id: 'C13', agent: 'PVPI', who: years(5), fires: 'stop' },
  { id: 'C13', agent: 'PVPI', who: { medicines: ['lithium'] }, fires: 'stop' },
  { id: 'C13', agent: 'PVPI' },
  { id: 'C14', agent: 'CHX_RINSE', who: allergic('chlorhexidine'), fires: 'stop' },
  { id: 'C14', agent: 'CHX_VARNISH', who: allergic('chlorhexidine'), fires: 'stop' },
  { id: 'C14', agent: 'CHX_RINSE' },
  { id: 'C15', agent: 'CHX_RINSE', who: has('porcelain-or-composite'), fires: 'caution' },
  { id: 'C15', agent: 'CHX_RINSE' },
  { id: 'C16', agent: 'NAOCL', who: years(17), fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', who: has('eating-disorder'), fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', pack: { percent: 0.26 }, fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', who: has('ulcerative-gingivitis'), fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', who: { canSpit: false }, fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', who: has('cannot-spit'), fires: 'stop' },
  { id: 'C16', agent: 'NAOCL', pack: { percent: 0.25 } },
  { id: 'C17', agent: 'CPP_ACP', who: allergic('milk-protein'), fires: 'stop' },
  { id: 'C17', agent: 'CPP_ACP', pack: traits('benzoate'), who: allergic('benzoate'), fires: 'stop' },
  { id: 'C17', agent: 'CPP_ACP' },
  { id: 'C18', agent: 'POLYOL_GUM', pack: traits('sorbitol'), who: has('hereditary-fructose-intolerance'), fires: 'stop' },
  { id: 'C18', agent: 'XYLITOL', who: has('irritable-bowel'), fires: 'caution' },
  { id: 'C18', agent: 'XYLITOL', who: has('hereditary-fructose-intolerance') },
  { id: 'C19', agent: 'XYLITOL', who: { dogAtHome: true }, fires: 'warn' },
  { id: 'C19', agent: 'SALIVA', pack: traits('xylitol'), who: { dogAtHome: true }, fires: 'warn' },
  { id: 'C19', agent: 'SALIVA', who: { dogAtHome: true } },
  { id: 'C19', agent: 'XYLITOL' },
  { id: 'C20', agent: 'CHX_RINSE', pack: traits('alcohol'), who: has('alcohol-use-or-recovery'), fires: 'stop' },
  { id: 'C20', agent: 'ESSENTIAL_OILS', pack: traits('alcohol'), who: { dryMouth: true }, fires: 'stop' },
  { id: 'C20', agent: 'CHX_RINSE', who: has('alcohol-use-or-recovery') },
  { id: 'C20', agent: 'SALIVA', pack: { ...traits('alcohol'), form: 'spray' }, who: { dryMouth: true }, fires: 'stop' },
  { id: 'C20', agent: 'HAP', pack: { ...traits('alcohol'), form: 'rinse' }, who: years(11), fires: 'stop' },
  { id: 'C20', agent: 'HAP', pack: { ...traits('alcohol'), form: 'rinse' }, who: years(12) },
  { id: 'C21', agent: 'F_PASTE_5000', who: has('kidney-disease-4-5'), fires: 'caution' },
  { id: 'C21', agent: 'F_PASTE_STD', who: has('kidney-disease-4-5') },
  { id: 'C21', agent: 'F_VARNISH', who: has('kidney-disease'), fires: 'warn' },
  { id: 'C21', agent: 'F_PASTE_STD', who: has('kidney-disease') },
  { id: 'C22', agent: 'F_SUPP', who: years(8, { waterFluorideMgPerL: 0.61 }), fires: 'stop' },
  { id: 'C22', agent: 'F_SUPP', who: years(8, { waterFluorideMgPerL: undefined }), fires: 'ask-first' },
  { id: 'C22', agent: 'F_SUPP', who: years(8, { waterFluorideMgPerL: 0.6 }) },
  { id: 'C23', agent: 'SALIVA', pack: traits('pilocarpine'), fires: 'stop' },
  { id: 'C23', agent: 'SALIVA' },
  { id: 'C24', agent: 'F_PASTE_STD', pack: traits('sorbitol'), who: has('hereditary-fructose-intolerance'), fires: 'caution' },
  { id: 'C24', agent: 'F_RINSE_005', pack: traits('propylene glycol'), who: allergic('propylene-glycol'), fires: 'caution' },
  { id: 'C24', agent: 'F_PASTE_STD', who: has('hereditary-fructose-intolerance') },
  { id: 'C25', agent: 'HAP', pack: traits('needle-shaped particles'), fires: 'stop' },
  { id: 'C25', agent: 'HAP', pack: { form: 'spray' }, fires: 'stop' },
  { id: 'C25', agent: 'HAP' },
  { id: 'C26', agent: 'F_GEL_SNF2', who: years(5), fires: 'stop' },
  { id: 'C26', agent: 'F_GEL_SNF2', who: { canSpit: false }, fires: 'stop' },
  { id: 'C26', agent: 'F_GEL_SNF2', who: years(6) },
  { id: 'C27', agent: 'CHX_RINSE', who: years(17), place: 'US', fires: 'stop' },
  { id: 'C27', agent: 'CHX_RINSE', who: years(11), place: 'UK', fires: 'stop' },
  { id: 'C27', agent: 'CHX_RINSE', who: years(12), place: 'UK' },
  { id: 'C27', agent: 'CHX_RINSE', who: { pregnant: true }, fires: 'caution' },
  { id: 'C28', agent: 'XYLITOL', who: years(4), fires: 'stop' },
  { id: 'C28', agent: 'SALIVA', pack: { form: 'lozenge' }, who: years(4), fires: 'stop' },
  { id: 'C28', agent: 'SALIVA', pack: { form: 'lozenge' }, who: has('swallowing-difficulty'), fires: 'stop' },
  { id: 'C28', agent: 'SALIVA', pack: { form: 'spray' }, who: years(4) },
  { id: 'C28', agent: 'POLYOL_GUM', who: { jawPain: true }, fires: 'stop' },
  { id: 'C28', agent: 'POLYOL_GUM', who: { braces: true }, fires: 'caution' },
  { id: 'C28', agent: 'XYLITOL', who: years(5) },
  { id: 'C29', agent: 'F_GEL_APF', who: { dryMouth: true }, fires: 'stop' },
  { id: 'C29', agent: 'F_GEL_APF' },
  { id: 'C30', agent: 'POLYOL_GUM', pack: traits('aspartame'), who: has('phenylketonuria'), fires: 'stop' },
  { id: 'C30', agent: 'POLYOL_GUM', who: has('phenylketonuria') },
  { id: 'C31', agent: 'F_PASTE_5000', who: { breastfeeding: true }, fires: 'caution' },
  { id: 'C31', agent: 'F_PASTE_5000', who: { pregnant: undefined }, fires: 'ask-first' },
  { id: 'C31', agent: 'F_PASTE_5000' },
  { id: 'C32', agent: 'BICARB', who: years(5), fires: 'stop' },
  { id: 'C32', agent: 'BICARB', who: has('kidney-disease'), fires: 'caution' },
  { id: 'C32', agent: 'BICARB', who: years(6) },
  { id: 'C33', agent: 'SEALANT', pack: traits('resin'), who: allergic('acrylate'), fires: 'stop' },
  { id: 'C33', agent: 'SEALANT', who: allergic('acrylate') },
  { id: 'C34', agent: 'F_PASTE_STD', pack: traits('sodium lauryl sulfate'), who: allergic('sodium-lauryl-sulfate'), fires: 'stop' },
  { id: 'C34', agent: 'F_PASTE_STD', who: { allergies: undefined }, fires: 'ask-first' },
  { id: 'C34', agent: 'F_PASTE_STD', who: allergic('sodium-lauryl-sulfate') },
  { id: 'C35', agent: 'CPP_ACP', pack: { fluoridePpm: 900 }, who: years(5), fires: 'stop' },
  { id: 'C35', agent: 'CPP_ACP', pack: { fluoridePpm: 900 }, who: years(6) },
  { id: 'C36', agent: 'F_SUPP', who: aged(5, 7), fires: 'stop' },
  { id: 'C36', agent: 'F_SUPP', who: years(8, { otherFluoride: ['fluoridated-salt'] }), fires: 'stop' },
  { id: 'C36', agent: 'F_SUPP', who: years(8, { waterFluoridated: true }), fires: 'stop' },
  { id: 'C36', agent: 'F_SUPP', who: { strongPasteInUse: true }, fires: 'stop' },
  { id: 'C36', agent: 'F_SUPP', who: years(8, { otherFluoride: undefined }), fires: 'ask-first' },
  { id: 'C36', agent: 'F_SUPP', who: years(8, { otherFluoride: ['fluoride-tablets-or-drops'] }) },
  { id: 'I04', agent: 'F_SUPP', who: years(8, { medicines: ['antacid-or-calcium'] }), fires: 'caution' },
  { id: 'I04', agent: 'F_SUPP', who: years(8) },
  { id: 'C37', agent: 'SDF38', who: aged(18, 9.9), fires: 'caution' },
  { id: 'C37', agent: 'SDF38', who: { weightKg: undefined }, fires: 'ask-first' },
  { id: 'C37', agent: 'SDF38', who: aged(18, 10) },
  { id: 'C38', agent: 'F_PASTE_2800', who: years(9, has('head-neck-radiotherapy')), fires: 'stop' },
  { id: 'C38', agent: 'F_PASTE_2800', who: years(10, has('head-neck-radiotherapy')) },
  { id: 'C39', agent: 'ESSENTIAL_OILS', who: years(11), fires: 'stop' },
  { id: 'C39', agent: 'ESSENTIAL_OILS', who: years(12) },
  { id: 'C40', agent: 'F_SUPP', who: years(2), place: 'US', fires: 'stop' },
  { id: 'C40', agent: 'F_SUPP', who: years(8), level: 'moderate', place: 'US', fires: 'stop' },
  { id: 'C40', agent: 'F_SUPP', who: years(8), level: undefined, place: 'US', fires: 'ask-first' },
  { id: 'C40', agent: 'F_SUPP', who: years(3), place: 'US' },

  { id: 'P01', agent: 'NAOCL', fires: 'stop' },
  { id: 'P01', agent: 'NAOCL', own: [PROTOCOL] },
  { id: 'P02', agent: 'SDF38', fires: 'caution' },
  { id: 'P02', agent: 'F_VARNISH' },
  { id: 'P03', agent: 'F_PASTE_5000', who: { canSpit: false }, fires: 'stop' },
  { id: 'P03', agent: 'F_PASTE_2800', who: { canSpit: undefined }, fires: 'ask-first' },
  { id: 'P03', agent: 'F_PASTE_STD', who: { canSpit: false } },
  { id: 'P04', agent: 'F_PASTE_5000', who: years(5), place: 'US', fires: 'stop' },
  { id: 'P04', agent: 'F_PASTE_5000', who: years(6), place: 'US' },
  { id: 'P05', agent: 'NEW_AGENT', fires: 'ask-first' },
  { id: 'P05', agent: 'F_PASTE_STD' },
  { id: 'P06', agent: 'F_PASTE_STD', pack: { fluoridePpm: undefined, percent: undefined }, fires: 'ask-first' },
  { id: 'P06', agent: 'F_PASTE_STD', pack: { fluoridePpm: 5_000 }, fires: 'ask-first' },
  { id: 'P06', agent: 'F_PASTE_STD' },
  { id: 'P07', agent: 'F_RINSE_005', who: years(7), place: 'UK', fires: 'warn' },
  { id: 'P07', agent: 'F_RINSE_005', who: years(8), place: 'UK' },
  { id: 'P07', agent: 'F_RINSE_005', who: years(7), place: 'US' },
  // 51 g of 5,000 ppm: 255 mg, 75 mL (about 100 g) of 2,800 ppm: 280 mg. Both are above 120 mg.
  {
    id: 'P08',
    agent: 'F_PASTE_5000',
    pack: { fluoridePpm: 5_000, packAmount: { value: 51, unit: 'g' } },
    who: { youngChildAtHome: true },
    fires: 'warn',
  },
  {
    id: 'P08',
    agent: 'F_PASTE_2800',
    pack: { fluoridePpm: 2_800, packAmount: { value: 100, unit: 'g' } },
    who: { youngChildAtHome: undefined },
    fires: 'warn',
  },
  { id: 'P08', agent: 'F_PASTE_5000', pack: { fluoridePpm: 5_000, packAmount: { value: 51, unit: 'g' } } },
  { id: 'P08', agent: 'F_PASTE_5000', pack: { fluoridePpm: 5_000, packAmount: { value: 24, unit: 'g' } }, who: { youngChildAtHome: true } },
  { id: 'P09', agent: 'F_VARNISH', who: aged(5, 7), fires: 'stop' },
  { id: 'P09', agent: 'F_VARNISH', who: { ...aged(23, 11), weightKg: undefined }, fires: 'ask-first' },
  { id: 'P09', agent: 'F_PASTE_STD', who: aged(5, 7) },
  { id: 'P09', agent: 'F_VARNISH', who: aged(23, 11) },
  { id: 'P11', agent: 'F_PASTE_STD', pack: { traits: undefined }, fires: 'ask-first' },
  { id: 'P11', agent: 'F_PASTE_STD' },
  { id: 'P12', agent: 'XYLITOL', pack: use({ amountG: 3.1, timesPerDay: 1 }), who: aged(72, 20), fires: 'stop' },
  {
    id: 'P12',
    agent: 'XYLITOL',
    pack: use({ amountG: 3, timesPerDay: 1 }),
    who: { ...aged(72, 20), weightKg: undefined },
    fires: 'ask-first',
  },
  { id: 'P12', agent: 'XYLITOL', pack: use({ amountG: 3, timesPerDay: 3 }), who: aged(72, 20) },
  // 10 mL of a gel of 12,300 ppm: 123 mg, from 24.6 kg down 5 mg/kg.
  { id: 'P14', agent: 'F_GEL_APF', pack: use({ atVisit: true, amountG: 10 }), who: aged(96, 24), fires: 'stop' },
  {
    id: 'P14',
    agent: 'F_GEL_APF',
    pack: use({ atVisit: true, amountG: 10 }),
    who: { ...aged(96, 24), weightKg: undefined },
    fires: 'ask-first',
  },
  { id: 'P14', agent: 'F_GEL_APF', pack: use({ atVisit: true, amountG: 4 }), who: aged(96, 24) },
  { id: 'P15', agent: 'F_PASTE_STD', hasNoTeeth: true, fires: 'stop' },
  { id: 'P15', agent: 'SALIVA', hasNoTeeth: true },
  { id: 'P16', agent: 'F_PASTE_5000', noLaw: true, place: 'by-hand', fires: 'ask-first' },
  { id: 'P16', agent: 'F_PASTE_5000', place: 'UK' },
  { id: 'P17', agent: 'F_GEL_SNF2', notSold: true, fires: 'stop' },
  { id: 'P17', agent: 'F_GEL_SNF2' },
  { id: 'P18', agent: 'F_PASTE_5000', who: { weightKg: 4 }, fires: 'ask-first' },
  { id: 'P18', agent: 'F_PASTE_STD', who: { weightKg: 4 } },
  { id: 'P18', agent: 'F_PASTE_5000' },
  { id: 'P19', agent: 'CHX_RINSE', pack: use({ amountMl: 10 }), fires: 'ask-first' },
  { id: 'P19', agent: 'CHX_RINSE', pack: use({ amountMl: 10, courseDays: 7 }) },
  { id: 'P20', agent: 'CHX_RINSE', pack: use({ amountMl: 10, courseDays: 31 }), fires: 'stop' },
  { id: 'P20', agent: 'CHX_RINSE', pack: use({ amountMl: 10, courseDays: 30 }) },
  { id: 'P21', agent: 'NAOCL', own: [PROTOCOL], level: 'low', fires: 'stop' },
  { id: 'P21', agent: 'NAOCL', own: [PROTOCOL] },
  { id: 'P22', agent: 'CHX_RINSE', who: has('cannot-spit'), fires: 'stop' },
  { id: 'P22', agent: 'ESSENTIAL_OILS', who: { canSpit: undefined }, fires: 'ask-first' },
  { id: 'P22', agent: 'HAP', pack: { form: 'rinse' }, who: years(5, { canSpit: false }), fires: 'stop' },
  { id: 'P22', agent: 'HAP', who: years(5, { canSpit: false }) },
  { id: 'P23', agent: 'SALIVA', pack: { pH: 5.4 }, fires: 'stop' },
  { id: 'P23', agent: 'SALIVA', pack: { pH: undefined }, fires: 'warn' },
  { id: 'P23', agent: 'SALIVA', pack: { pH: 5.5 } },
  { id: 'P23', agent: 'SALIVA', pack: { pH: 5.4 }, hasNoTeeth: true },
];

/** Two packs, and what becomes of them together; `remark`: told on request alone. */
export interface PairCase {
  readonly id: string;
  readonly a: ShelfItem;
  readonly b: ShelfItem;
  readonly fires?: 'never-both' | 'mind' | 'remark';
}

const atVisit = (agent: string, more: Partial<ShelfItem> = {}) => packOf(agent, { ...use({ atVisit: true, amountMl: 0.2 }), ...more });
const plainPaste = packOf('F_PASTE_STD');

export const pairCases: readonly PairCase[] = [
  { id: 'I01', a: packOf('CHX_RINSE'), b: packOf('F_PASTE_STD', traits('sodium lauryl sulfate')), fires: 'mind' },
  { id: 'I01', a: packOf('CHX_RINSE'), b: packOf('CPP_ACP') },
  { id: 'I01b', a: packOf('CHX_RINSE'), b: packOf('F_PASTE_STD', traits('sodium lauryl sulfate')), fires: 'remark' },
  { id: 'I01b', a: packOf('CHX_RINSE'), b: packOf('CPP_ACP') },
  { id: 'I02', a: packOf('CHX_RINSE'), b: packOf('NAOCL'), fires: 'never-both' },
  { id: 'I02', a: packOf('CHX_RINSE'), b: packOf('BICARB') },
  { id: 'I03', a: packOf('NAOCL', { pH: 11 }), b: packOf('F_RINSE_005', { pH: 6.9 }), fires: 'never-both' },
  { id: 'I03', a: packOf('NAOCL', { pH: 11 }), b: packOf('F_RINSE_005', { pH: undefined }), fires: 'never-both' },
  { id: 'I03', a: packOf('NAOCL', { pH: 11 }), b: packOf('F_RINSE_005', { pH: 7 }) },
  { id: 'I04', a: packOf('F_SUPP'), b: packOf('CPP_ACP', traits('milk protein')), fires: 'mind' },
  { id: 'I04', a: packOf('F_SUPP'), b: packOf('BICARB') },
  { id: 'I05', a: packOf('F_RINSE_005'), b: packOf('HAP'), fires: 'remark' },
  { id: 'I05', a: packOf('F_RINSE_005'), b: packOf('BICARB') },
  { id: 'I06', a: atVisit('F_VARNISH'), b: atVisit('F_GEL_APF'), fires: 'never-both' },
  { id: 'I06', a: atVisit('F_VARNISH'), b: packOf('F_PASTE_5000'), fires: 'mind' },
  { id: 'I06', a: atVisit('F_VARNISH'), b: plainPaste },
  { id: 'I07', a: packOf('F_PASTE_5000'), b: packOf('F_RINSE_005'), fires: 'mind' },
  { id: 'I07', a: packOf('F_PASTE_5000'), b: packOf('CPP_ACP') },
  { id: 'I08', a: plainPaste, b: packOf('BICARB'), fires: 'remark' },
  { id: 'I08', a: packOf('CPP_ACP'), b: packOf('BICARB') },
  { id: 'I09', a: packOf('CHX_RINSE'), b: plainPaste, fires: 'remark' },
  { id: 'I09', a: packOf('CHX_RINSE'), b: packOf('CPP_ACP') },
  { id: 'I10', a: packOf('F_GEL_SNF2', { compound: 'SnF2' }), b: packOf('BICARB'), fires: 'remark' },
  { id: 'I10', a: plainPaste, b: packOf('BICARB') },
  { id: 'I11', a: atVisit('PVPI'), b: atVisit('SDF38'), fires: 'never-both' },
  { id: 'I11', a: atVisit('PVPI'), b: atVisit('F_VARNISH') },
  { id: 'I12', a: packOf('CHX_RINSE'), b: packOf('BICARB'), fires: 'remark' },
  { id: 'I12', a: packOf('F_RINSE_005'), b: packOf('BICARB') },
  { id: 'I13', a: packOf('F_PASTE_2800'), b: packOf('F_PASTE_5000'), fires: 'never-both' },
  { id: 'I13', a: packOf('F_PASTE_5000'), b: packOf('F_GEL_SNF2'), fires: 'never-both' },
  { id: 'I13', a: packOf('F_PASTE_5000'), b: plainPaste },
  { id: 'C36', a: packOf('F_SUPP'), b: packOf('F_PASTE_5000'), fires: 'never-both' },
  { id: 'C36', a: packOf('F_SUPP'), b: plainPaste },
];
