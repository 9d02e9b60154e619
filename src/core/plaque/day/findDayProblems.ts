import { DAY_MINUTES, nightSpans } from './nightSpans.ts';
import type { AcidDay, DayEvent, DayEventKind, DayProblem, Food, Portion } from './types.ts';

const MOST_EVENTS = 60;
const MOST_PORTIONS = 20;
const MOST_LETTERS = 80;
const LEAST_MINUTES = 0.1;

/** Longest that an event of this kind may last. Beyond, a slip of the finger is likelier than the truth. */
const MOST_MINUTES: Readonly<Record<DayEventKind, number>> = {
  eating: 720,
  gum: 240,
  cheese: 60,
  water: 60,
  brushing: 30,
  rinse: 15,
  nap: 480,
};

type Range = readonly [low: number, high: number];
export const DAY_RANGES = {
  clockMinute: [0, DAY_MINUTES - 1],
  amount: [0.1, 3000],
  sugarsGPer100: [0, 100],
  pH: [2, 12],
  fluoridePpm: [0, 25_000],
  bicarbonateMmolPerL: [1, 1000],
  ureaPercent: [0.1, 20],
} as const satisfies Readonly<Record<string, Range>>;

/**
 * Everything that is wrong with a day, each with its field and the allowed range; empty when it can be worked out. Nothing is moved,
 * shortened or dropped to make a day fit.
 * @param foods   the table by id that the portions name
 */
export function findDayProblems(day: AcidDay, foods: ReadonlyMap<string, Food>): readonly DayProblem[] {
  const problems = [
    ...rangeProblem('wakeMinute', day.wakeMinute, DAY_RANGES.clockMinute),
    ...rangeProblem('sleepMinute', day.sleepMinute, DAY_RANGES.clockMinute),
    ...(day.wakeMinute === day.sleepMinute ? [{ path: 'sleepMinute', message: 'must differ from wakeMinute' }] : []),
    ...lengthProblem('label', day.label),
    ...(day.events.length > MOST_EVENTS ? [{ path: 'events', message: `must have at most ${MOST_EVENTS} entries` }] : []),
    ...day.events.flatMap((event, i) => eventProblems(event, `events.${i}`, foods)),
    ...twiceProblems(day.events),
  ];
  return problems.length > 0 ? problems : [...sleepProblems(day), ...overlapProblems(day.events)];
}

/** @throws RangeError with the first problem of `findDayProblems` */
export function requireDay(day: AcidDay, foods: ReadonlyMap<string, Food>): AcidDay {
  const [first] = findDayProblems(day, foods);
  if (first) throw new RangeError(`${first.path} ${first.message}`);
  return day;
}

function eventProblems(event: DayEvent, path: string, foods: ReadonlyMap<string, Food>): DayProblem[] {
  const problems = [
    ...(event.id === '' ? [{ path: `${path}.id`, message: 'must not be empty' }] : []),
    ...lengthProblem(`${path}.label`, event.label),
    ...rangeProblem(`${path}.startMinute`, event.startMinute, DAY_RANGES.clockMinute),
    ...rangeProblem(`${path}.minutes`, event.minutes, [LEAST_MINUTES, MOST_MINUTES[event.kind]]),
  ];
  if (problems.length === 0 && event.startMinute + event.minutes > DAY_MINUTES) {
    const left = DAY_MINUTES - event.startMinute;
    problems.push({
      path: `${path}.minutes`,
      message: `must be ${LEAST_MINUTES} to ${left}, so that it ends by midnight: ${event.minutes}`,
    });
  }
  return [...problems, ...kindProblems(event, path, foods)];
}

function kindProblems(event: DayEvent, path: string, foods: ReadonlyMap<string, Food>): DayProblem[] {
  switch (event.kind) {
    case 'eating':
      return portionsProblems(event.portions, `${path}.portions`, foods);
    case 'brushing':
      return optionalProblem(`${path}.fluoridePpm`, event.fluoridePpm, DAY_RANGES.fluoridePpm);
    case 'rinse':
      return [
        ...optionalProblem(`${path}.fluoridePpm`, event.fluoridePpm, DAY_RANGES.fluoridePpm),
        ...neededProblem(
          `${path}.bicarbonateMmolPerL`,
          event.bicarbonateMmolPerL,
          DAY_RANGES.bicarbonateMmolPerL,
          event.rinse === 'alkaline',
        ),
        ...neededProblem(`${path}.ureaPercent`, event.ureaPercent, DAY_RANGES.ureaPercent, event.rinse === 'urea'),
      ];
    default:
      return [];
  }
}

function portionsProblems(portions: readonly Portion[], path: string, foods: ReadonlyMap<string, Food>): DayProblem[] {
  if (portions.length === 0 || portions.length > MOST_PORTIONS) {
    return [{ path, message: `must have 1 to ${MOST_PORTIONS} entries: ${portions.length}` }];
  }
  return portions.flatMap((portion, i) => {
    const at = `${path}.${i}`;
    const amount = rangeProblem(`${at}.amount`, portion.amount, DAY_RANGES.amount);
    if ('food' in portion) {
      return foods.has(portion.food)
        ? amount
        : [{ path: `${at}.food`, message: `is not in the table of foods: ${portion.food}` }, ...amount];
    }
    const { name, sugarsGPer100, pH } = portion.typed;
    return [
      ...(name.trim() === '' ? [{ path: `${at}.typed.name`, message: 'must not be empty' }] : lengthProblem(`${at}.typed.name`, name)),
      ...rangeProblem(`${at}.typed.sugarsGPer100`, sugarsGPer100, DAY_RANGES.sugarsGPer100),
      ...optionalProblem(`${at}.typed.pH`, pH, DAY_RANGES.pH),
      ...amount,
    ];
  });
}

function twiceProblems(events: readonly DayEvent[]): DayProblem[] {
  return events.flatMap(({ id }, i) =>
    events.findIndex((other) => other.id === id) < i ? [{ path: `events.${i}.id`, message: `stands twice: ${id}` }] : [],
  );
}

/** At night one may eat, drink and swallow; nobody chews gum, brushes or rinses asleep. */
function sleepProblems(day: AcidDay): DayProblem[] {
  const night = nightSpans(day);
  return day.events.flatMap((event, i) => {
    if (event.kind === 'eating' || event.kind === 'water') return [];
    const asleep = night.some(({ from, to }) => event.startMinute < to && event.startMinute + event.minutes > from);
    const range = `must lie between waking (${day.wakeMinute}) and going to sleep (${day.sleepMinute}): ${event.startMinute}`;
    return asleep ? [{ path: `events.${i}.startMinute`, message: range }] : [];
  });
}

const isSipped = (event: DayEvent): boolean => event.kind === 'eating' && event.sipped === true;

/** Two things at one time: only what is sipped goes on beside other things. */
function overlapProblems(events: readonly DayEvent[]): DayProblem[] {
  return events.flatMap((event, i) => {
    if (isSipped(event)) return [];
    const other = events.find(
      (earlier, k) =>
        k !== i &&
        !isSipped(earlier) &&
        (earlier.startMinute < event.startMinute || (earlier.startMinute === event.startMinute && k < i)) &&
        earlier.startMinute + earlier.minutes > event.startMinute,
    );
    if (!other) return [];
    const free = other.startMinute + other.minutes;
    return [
      { path: `events.${i}.startMinute`, message: `must be ${free} or later, after the event ${other.id} ends: ${event.startMinute}` },
    ];
  });
}

function rangeProblem(path: string, value: number, [low, high]: Range): DayProblem[] {
  return value >= low && value <= high ? [] : [{ path, message: `must be ${low} to ${high}: ${value}` }];
}

function optionalProblem(path: string, value: number | undefined, range: Range): DayProblem[] {
  return value === undefined ? [] : rangeProblem(path, value, range);
}

function neededProblem(path: string, value: number | undefined, range: Range, isNeeded: boolean): DayProblem[] {
  if (value === undefined) return isNeeded ? [{ path, message: `is missing: must be ${range[0]} to ${range[1]}` }] : [];
  return rangeProblem(path, value, range);
}

function lengthProblem(path: string, text: string | undefined): DayProblem[] {
  return text !== undefined && text.length > MOST_LETTERS ? [{ path, message: `must have at most ${MOST_LETTERS} characters` }] : [];
}
