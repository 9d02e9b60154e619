import type { RegimenTables } from '../tables.ts';
import { HYPOCHLORITE, type LocalProtocol } from './localProtocol.ts';

export interface ProtocolProblem {
  readonly field: keyof LocalProtocol;
  readonly says: string;
}

const GROWN_UP_YEARS = 18;
const DAYS_PER_YEAR = 366;
/** Ten times a day on every day. */
const MOST_TIMES_PER_WEEK = 70;
const OLDEST_YEARS = 130;

/**
 * What is wrong with a protocol before anybody signs it. Whatever passes here still stands behind every safety rule.
 * @returns one entry for each field that has to be put right, in the order of the form; empty = it may be written
 */
export function checkLocalProtocol(protocol: LocalProtocol, tables: RegimenTables): readonly ProtocolProblem[] {
  return [...aboutWhat(protocol, tables), ...howMuch(protocol, tables), ...forWhom(protocol, tables)];
}

function aboutWhat({ name, date, agentId, needs }: LocalProtocol, { agents }: RegimenTables): ProtocolProblem[] {
  const problems: ProtocolProblem[] = [];
  const agent = agents.find((a) => a.id === agentId);
  if (name.trim() === '') problems.push({ field: 'name', says: 'It needs a name.' });
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) problems.push({ field: 'date', says: 'It needs the day from which it holds.' });
  if (!agent?.byChoiceOnly) {
    problems.push({ field: 'agentId', says: 'A protocol is about something that is never proposed by itself.' });
  } else if (needs.length === 0 || needs.some((need) => !agent.meets.includes(need))) {
    problems.push({ field: 'needs', says: `${agent.name} meets: ${agent.meets.join(', ')}. Choose of these.` });
  }
  return problems;
}

function howMuch(
  { agentId, percentAtMost, timesPerWeekAtMost, courseDaysAtMost }: LocalProtocol,
  { highestHypochloritePercent }: RegimenTables,
): ProtocolProblem[] {
  const problems: ProtocolProblem[] = [];
  const most = agentId === HYPOCHLORITE ? highestHypochloritePercent : 100;
  const isAsked = agentId === HYPOCHLORITE || percentAtMost !== undefined;
  if (isAsked && !(percentAtMost !== undefined && percentAtMost > 0 && percentAtMost <= most))
    problems.push({ field: 'percentAtMost', says: `The strength is above 0 and at most ${most} %.` });
  if (!(timesPerWeekAtMost > 0 && timesPerWeekAtMost <= MOST_TIMES_PER_WEEK))
    problems.push({ field: 'timesPerWeekAtMost', says: `How often: above 0 and at most ${MOST_TIMES_PER_WEEK} times a week.` });
  if (!(Number.isInteger(courseDaysAtMost) && courseDaysAtMost > 0 && courseDaysAtMost <= DAYS_PER_YEAR))
    problems.push({ field: 'courseDaysAtMost', says: `How long: whole days, at most ${DAYS_PER_YEAR}.` });
  return problems;
}

function forWhom({ agentId, levels, fromAgeYears, belowAgeYears, exclusions }: LocalProtocol, tables: RegimenTables): ProtocolProblem[] {
  const problems: ProtocolProblem[] = [];
  const youngest = agentId === HYPOCHLORITE ? GROWN_UP_YEARS : 0;
  const isAge = (years: number) => Number.isInteger(years) && years >= 0 && years <= OLDEST_YEARS;
  if (levels.length === 0) problems.push({ field: 'levels', says: 'It names no level.' });
  if (!isAge(fromAgeYears) || fromAgeYears < youngest) problems.push({ field: 'fromAgeYears', says: `Whole years, ${youngest} or more.` });
  if (belowAgeYears !== undefined && !(isAge(belowAgeYears) && belowAgeYears > fromAgeYears))
    problems.push({ field: 'belowAgeYears', says: 'Whole years, above the first age; or empty.' });
  const unknown = (['conditions', 'medicines', 'allergies'] as const).flatMap((list) =>
    exclusions[list].filter((id) => tables[list][id] === undefined),
  );
  if (unknown.length > 0) problems.push({ field: 'exclusions', says: `Not on the lists: ${unknown.join(', ')}.` });
  return problems;
}
