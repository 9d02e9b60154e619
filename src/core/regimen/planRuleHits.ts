import type { Bar, CheckView, Warning } from './checkItem.ts';
import { LONGEST_COURSE_DAYS } from './dose/chlorhexidineCourse.ts';
import { leastFittingKg } from './dose/weightDoubt.ts';
import { legalStatusOf } from './legalStatus.ts';
import { HYPOCHLORITE, ruleByProtocol } from './local/localProtocol.ts';
import type { Agent, PlanRuleId } from './tables.ts';

const HALF_YEAR_MONTHS = 6;
const TWO_YEARS_MONTHS = 24;
const MG_PER_G_AT_1000_PPM = 1_000;
const SALIVA_SUBSTITUTE = 'SALIVA';
const LOWEST_SALIVA_PH = 5.5;

/** The rules that need arithmetic or the practice's settings. `ppm` is the pack's fluoride, undefined when the pack does not tell. */
export function hitsOfPlanRules(
  view: CheckView,
  agent: Agent | undefined,
  ppm: number | undefined,
): { readonly bars: readonly Bar[]; readonly warnings: readonly Warning[] } {
  if (!agent) return { bars: [planRuleBar(view, 'P05', 'ask-first')], warnings: [] };
  const bars = [
    ...(view.item.traits === undefined ? [planRuleBar(view, 'P11', 'ask-first')] : []),
    ...legalBars(view),
    ...choiceBars(view, agent),
    ...strengthBars(view, agent, ppm),
    ...smearBars(view, agent),
    ...xylitolBars(view),
    ...(view.hasNoTeeth === true && !view.item.meets.includes('saliva') ? [planRuleBar(view, 'P15', 'stop')] : []),
    ...acidBars(view),
    ...swallowedBars(view, ppm),
    ...weightDoubtBars(view, agent),
    ...courseBars(view),
  ];
  return { bars, warnings: [...packWarnings(view, ppm), ...acidWarnings(view)] };
}

/** A bar of one of these rules; `fact` is what has to be asked first. */
export function planRuleBar(view: Pick<CheckView, 'item' | 'tables'>, ruleId: PlanRuleId, level: Bar['level'], fact?: 'weightKg'): Bar {
  const { because, source, overridable } = view.tables.planRules[ruleId];
  const ask = fact === undefined ? undefined : view.tables.askFor[fact];
  return { shelfItemId: view.item.id, ruleId, level, because, action: '', ask, private: false, source, overridable };
}

/** Whatever the law of the place decides asks first while nobody has said what that law is. */
function legalBars(view: CheckView): Bar[] {
  const status = legalStatusOf(view.item.agentId, view, view.tables.legalStatuses);
  if (status === undefined) return [planRuleBar(view, 'P16', 'ask-first')];
  return status === 'not-sold' ? [planRuleBar(view, 'P17', 'stop')] : [];
}

function choiceBars(view: CheckView, agent: Agent): Bar[] {
  const bars: Bar[] = [];
  bars.push(...protocolBars(view, agent));
  if (agent.byChoiceOnly) {
    bars.push({ ...planRuleBar(view, 'P02', 'caution'), because: agent.byChoiceOnly.says, source: agent.byChoiceOnly.source });
  }
  return bars;
}

/** What the practice's own protocols keep back. Hypochlorite is off without one that covers this person and this pack. */
function protocolBars(view: CheckView, agent: Agent): Bar[] {
  const ruling = ruleByProtocol(view, agent);
  const isOffWithout = agent.id === HYPOCHLORITE;
  if (ruling.kind === 'none') return isOffWithout ? [planRuleBar(view, 'P01', 'stop')] : [];
  if (ruling.kind === 'covers') return [];
  const { kind, protocol, parts } = ruling;
  const isAsk = kind === 'ask';
  const bar = planRuleBar(view, 'P21', isAsk ? 'ask-first' : 'stop');
  const labels = parts.map((p) => p.label).join(', ');
  const ask = [...new Set(parts.flatMap((p) => (p.ask === 'pack' ? [] : (view.tables.askFor[p.ask] ?? []))))];
  return [
    {
      ...bar,
      because: `${bar.because} "${protocol.name}": ${isAsk ? 'not known yet: ' : ''}${labels}`,
      private: parts.some((p) => p.private),
      overridable: bar.overridable && !isOffWithout,
      ...(isAsk && { ask, unknown: parts.map((p) => p.label) }),
    },
  ];
}

function strengthBars(view: CheckView, { ppmRange }: Agent, ppm: number | undefined): Bar[] {
  if (!ppmRange) return [];
  const fits = ppm !== undefined && ppm >= ppmRange[0] && ppm <= ppmRange[1];
  return fits ? [] : [planRuleBar(view, 'P06', 'ask-first')];
}

/** Under 6 months, or under 2 years without a weight, a smear of ordinary paste is all the fluoride that may be proposed. */
function smearBars(view: CheckView, agent: Agent): Bar[] {
  const { ageMonths, weightKg } = view.facts;
  if (!agent.ppmRange || agent.id === 'F_PASTE_STD') return [];
  if (ageMonths < HALF_YEAR_MONTHS) return [planRuleBar(view, 'P09', 'stop')];
  return ageMonths < TWO_YEARS_MONTHS && weightKg === undefined ? [planRuleBar(view, 'P09', 'ask-first', 'weightKg')] : [];
}

/** An acid saliva substitute wears natural teeth. */
function acidBars({ item, hasNoTeeth, tables }: CheckView): Bar[] {
  const isAcid = item.agentId === SALIVA_SUBSTITUTE && item.pH !== undefined && item.pH < LOWEST_SALIVA_PH;
  return isAcid && hasNoTeeth !== true ? [planRuleBar({ item, tables }, 'P23', 'stop')] : [];
}

/** Few packs print a pH: one that is not noted is told, and leaves nobody with a dry mouth without anything. */
function acidWarnings({ item, hasNoTeeth, traits, tables }: CheckView): Warning[] {
  if (item.agentId !== SALIVA_SUBSTITUTE || hasNoTeeth === true || !traits.has('pH unknown')) return [];
  const { because, source } = tables.planRules.P23;
  return [{ ruleId: 'P23', text: `Its pH is not noted. ${because.charAt(0).toUpperCase()}${because.slice(1)}.`, source }];
}

/** The limit is per kg of the child, so an assumed weight does not do. */
function xylitolBars(view: CheckView): Bar[] {
  const { item, facts, tables } = view;
  const { belowAgeYears, perUseGPerKg, perDayGPerKg } = tables.xylitolLimit;
  if (item.agentId !== 'XYLITOL' || facts.ageYears >= belowAgeYears) return [];
  if (facts.weightKg === undefined) return [planRuleBar(view, 'P12', 'ask-first', 'weightKg')];
  const { amountG, timesPerDay } = item.use;
  if (amountG === undefined) return [planRuleBar(view, 'P11', 'ask-first')];
  const isOver = amountG > perUseGPerKg * facts.weightKg || amountG * timesPerDay > perDayGPerKg * facts.weightKg;
  return isOver ? [planRuleBar(view, 'P12', 'stop')] : [];
}

function packWarnings({ item, facts, tables }: CheckView, ppm: number | undefined): Warning[] {
  const pack = item.packAmount;
  if (item.use.atVisit === true || ppm === undefined || !pack || pack.unit === 'piece' || facts.youngChildAtHome === false) return [];
  // mL is taken as g: a paste is denser, so the true figure is higher still.
  if ((ppm * pack.value) / MG_PER_G_AT_1000_PPM <= tables.packWarnMg) return [];
  const { because, source } = tables.planRules.P08;
  return [{ ruleId: 'P08', text: because, source }];
}

/** Without a weight it passes only what would be no emergency at the least weight that fits the age. */
function swallowedBars(view: CheckView, ppm: number | undefined): Bar[] {
  const { item, facts, tables } = view;
  const amount = item.use.amountG ?? item.use.amountMl;
  if (item.use.atVisit !== true || ppm === undefined || amount === undefined) return [];
  const kg = facts.weightKg ?? leastFittingKg(facts.ageMonths, tables.fluoride.weights);
  if ((ppm * amount) / MG_PER_G_AT_1000_PPM / kg < tables.fluoride.emergencyMgPerKg) return [];
  return [facts.weightKg === undefined ? planRuleBar(view, 'P14', 'ask-first', 'weightKg') : planRuleBar(view, 'P14', 'stop')];
}

/** Either the weight or the age is wrong, so nothing whose amount hangs on one of them; ordinary paste goes on. */
function weightDoubtBars(view: CheckView, agent: Agent): Bar[] {
  const isByWeight = (agent.ppmRange !== undefined && agent.id !== 'F_PASTE_STD') || agent.id === 'XYLITOL';
  if (view.weightDoubt === undefined || !isByWeight) return [];
  return [{ ...planRuleBar(view, 'P18', 'ask-first', 'weightKg'), because: view.weightDoubt.replace(/\.$/, '') }];
}

/** A course has an end: without one noted it is asked for, and beyond the longest on any label it stops. */
function courseBars(view: CheckView): Bar[] {
  const { agentId, use } = view.item;
  if (agentId !== 'CHX_RINSE' || use.atVisit === true) return [];
  if (use.courseDays === undefined) return [planRuleBar(view, 'P19', 'ask-first')];
  return use.courseDays > LONGEST_COURSE_DAYS ? [planRuleBar(view, 'P20', 'stop')] : [];
}
