import { type Almanac, Engine, type RuleProperties, type TopLevelCondition } from 'json-rules-engine';
import type { Items } from '../src/core/risk/types.ts';

/** The Four-level 2019 list written a second time, by hand, as rules of a general-purpose rule engine. It shares nothing with ours. */
type Ticks = { disease: number; risk: number; protective: number };

const DISEASE = [
  'lesion_cavity_or_dentin_new',
  'lesion_white_spot_smooth_new',
  'lesion_enamel_radiographic_new',
  'restoration_for_decay_recent',
];
const RISK = [
  'biofilm_bacteria_high',
  'plaque_heavy_visible',
  'saliva_flow_reduced_measured',
  'pits_fissures_deep',
  'drug_recreational',
  'roots_exposed',
  'appliance_orthodontic_or_removable',
];
const DRYING = ['medicine_saliva_reducing', 'saliva_reducing_condition', 'chemo_radiotherapy'];
const PROTECTIVE = [
  'water_fluoridated',
  'toothpaste_f_once_daily',
  'toothpaste_f_twice_daily',
  'toothpaste_f_5000',
  'varnish_f_6m',
  'rinse_naf_005_daily',
  'rinse_chx_monthly_week',
  'saliva_normal',
];

const yes = (fact: string) => ({ fact, operator: 'equal', value: true });
const no = (fact: string) => ({ fact, operator: 'equal', value: false });
const atLeast = (fact: string, value: number) => ({ fact, operator: 'greaterThanInclusive', value });
const atMost = (fact: string, value: number) => ({ fact, operator: 'lessThanInclusive', value });

const manySnacks = atLeast('snacks_between_meals_per_day', 4);
const CALLED_HIGH: TopLevelCondition = { any: [atLeast('disease', 1), { all: [atLeast('risk', 4), atLeast('net', 1)] }] };
const CALLED_LOW: TopLevelCondition = {
  all: [
    atMost('risk', 1),
    atMost('net', -2),
    no('saliva_flow_reduced_measured'),
    { any: [yes('saliva_normal'), { all: [no('saliva_reducing_condition'), no('chemo_radiotherapy')] }] },
  ],
};
const named = (condition: string) => ({ condition });
const LEVELS: Readonly<Record<string, TopLevelCondition>> = {
  extreme: { all: [named('called high'), yes('saliva_flow_reduced_measured')] },
  high: { all: [named('called high'), no('saliva_flow_reduced_measured')] },
  moderate: { all: [{ not: named('called high') }, { not: named('called low') }] },
  low: { all: [{ not: named('called high') }, named('called low')] },
};

/** The level rules run after everything of a higher priority has run. */
function levelEngine(): Engine {
  const engine = new Engine();
  engine.setCondition('called high', CALLED_HIGH).setCondition('called low', CALLED_LOW);
  for (const [level, conditions] of Object.entries(LEVELS)) engine.addRule({ conditions, event: { type: level }, priority: 1 });
  const tick = (name: keyof Ticks) => async (_: unknown, almanac: Almanac) => (await almanac.factValue<Ticks>('ticks'))[name];
  engine.addFact('disease', tick('disease')).addFact('risk', tick('risk'));
  return engine.addFact('net', async (_, almanac) => {
    const ticks = await almanac.factValue<Ticks>('ticks');
    return ticks.risk - ticks.protective;
  });
}

/** Each line of the list is a rule of the engine, as one would write them to keep rules apart from code. */
export function lineRules(): (items: Items) => Promise<string> {
  const engine = levelEngine();
  const addLine = (side: keyof Ticks, conditions: TopLevelCondition) => {
    const onSuccess: RuleProperties['onSuccess'] = async (_, almanac) => {
      (await almanac.factValue<Ticks>('ticks'))[side] += 1;
    };
    engine.addRule({ conditions, event: { type: 'tick' }, priority: 2, onSuccess });
  };
  for (const item of DISEASE) addLine('disease', { all: [yes(item)] });
  for (const item of RISK) addLine('risk', { all: [yes(item)] });
  addLine('risk', { all: [manySnacks] });
  addLine('risk', { any: DRYING.map(yes) });
  for (const item of PROTECTIVE) addLine('protective', { all: [yes(item)] });
  return (items) => levelFrom(engine, { ...items, ticks: { disease: 0, risk: 0, protective: 0 } });
}

/** The ticks are counted in plain code beside the engine, which then has four rules: the quicker way to use it. */
export function levelRulesOnly(): (items: Items) => Promise<string> {
  const engine = levelEngine();
  return (items) => {
    const count = (list: readonly string[]) => list.filter((item) => items[item] === true).length;
    const snacks = Number(items.snacks_between_meals_per_day) >= 4 ? 1 : 0;
    const risk = count(RISK) + snacks + Math.min(1, count(DRYING));
    return levelFrom(engine, { ...items, ticks: { disease: count(DISEASE), risk, protective: count(PROTECTIVE) } });
  };
}

async function levelFrom(engine: Engine, facts: Record<string, unknown>): Promise<string> {
  const { events } = await engine.run(facts);
  const levels = events.map(({ type }) => type).filter((type) => type !== 'tick');
  if (levels.length !== 1) throw new Error(`the rules gave ${levels.length} levels instead of one: ${levels.join(', ')}`);
  return levels[0] ?? '';
}
