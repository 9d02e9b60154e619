import { keepByKey } from '../../keep/keepByKey.ts';
import { keepByTable } from '../../keep/keepByTable.ts';
import type { Agent, FluorideLimit, RegimenTables } from '../tables.ts';
import type { ChosenPositions, SettableDisagreement, TableChange } from './types.ts';

/**
 * The tables with the position that the practice takes wherever sources disagree. What it has not chosen, or a position that this edition
 * does not know, goes by `unset`: the stricter one where safety is concerned.
 * @returns the same object for the same tables and choice, so that what is worked out from it once stands
 */
export const settleTables = (tables: RegimenTables, chosen: ChosenPositions = {}): RegimenTables => {
  const taken = listSettable(tables).map((disagreement) => takenPosition(disagreement, chosen).id);
  return settledFor(tables)(JSON.stringify(taken));
};

export const listSettable = ({ disagreements = [] }: Pick<RegimenTables, 'disagreements'>): readonly SettableDisagreement[] =>
  disagreements.filter((d) => d.kind === 'setting');

/** @throws RangeError when the content names no position of its own as the one that holds unset */
export function takenPosition(disagreement: SettableDisagreement, chosen: ChosenPositions = {}): SettableDisagreement['positions'][number] {
  const { id, positions, unset } = disagreement;
  const wanted = Object.hasOwn(chosen, id) ? positions.find((p) => p.id === chosen[id]) : undefined;
  const taken = wanted ?? positions.find((p) => p.id === unset);
  if (!taken) throw new RangeError(`unset must name a position of ${id}: ${unset}`);
  return taken;
}

const settledFor = keepByTable((tables: RegimenTables) =>
  keepByKey((key: string): RegimenTables => {
    const ids = JSON.parse(key) as readonly string[];
    const changes = listSettable(tables).flatMap(({ positions }, i) => positions.find((p) => p.id === ids[i])?.change ?? []);
    return changes.reduce(applyChange, tables);
  }),
);

function applyChange(tables: RegimenTables, change: TableChange): RegimenTables {
  const { rules = {}, moreRules = [], interactions = {}, without = [], byChoiceOnly, upperLevelsOf } = change;
  const stays = ({ id }: { readonly id: string }) => !without.includes(id);
  return {
    ...tables,
    agents: byChoiceOnly ? tables.agents.map((agent) => onlyByChoice(agent, byChoiceOnly)) : tables.agents,
    rules: [...tables.rules.filter(stays).map((rule) => ({ ...rule, ...rules[rule.id] })), ...moreRules],
    interactions: tables.interactions.filter(stays).map((row) => ({ ...row, ...interactions[row.id] })),
    fluoride: upperLevelsOf
      ? { ...tables.fluoride, limits: tables.fluoride.limits.map((limit) => keepsOutIf(limit, upperLevelsOf)) }
      : tables.fluoride,
  };
}

/** An agent that has a reason of its own keeps it. */
const onlyByChoice = (agent: Agent, { agentIds, because }: NonNullable<TableChange['byChoiceOnly']>): Agent =>
  agentIds.includes(agent.id) && !agent.byChoiceOnly ? { ...agent, byChoiceOnly: because } : agent;

function keepsOutIf(limit: FluorideLimit, keys: readonly string[]): FluorideLimit {
  const isUpper = limit.kind === 'upper-intake-level' || limit.kind === 'safe-level';
  return isUpper && !keys.includes(limit.source.key) ? { ...limit, shownOnly: true } : limit;
}
