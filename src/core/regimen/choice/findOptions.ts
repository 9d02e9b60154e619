import type { Candidate } from '../candidates.ts';
import type { Programme } from './buildProgramme.ts';
import { mergeGoals } from './goals.ts';
import type { Row, Terms } from './row.ts';
import { type Solved, solveInOrder } from './solveInOrder.ts';

/** Regimens that are shown. */
export const MOST_OPTIONS = 5;
const taken = (place: number): string => `taken ${place}`;
const unmet = (need: number): string => `unmet ${need}`;
const passedOver = (place: number): string => `passed over ${place}`;
const alone = (place: number, need: number): string => `alone ${place} ${need}`;

/**
 * The best sets of packs, each with another set of agents and none with all agents of a better one. Every set leaves as few and as
 * unimportant needs open as can be; then the goals decide, one after the other.
 * @param most  how many are wanted
 * @returns the empty set where nothing can or must be taken
 */
export function findOptions(programme: Programme, most = MOST_OPTIONS): readonly (readonly Candidate[])[] {
  const goals = goalTerms(programme);
  const options: (readonly number[])[] = [];
  let rows = rowsOf(programme);
  let wanted = goals;
  while (options.length < most) {
    const solved = solveInOrder(rows, wanted);
    if (!solved) break;
    const places = placesOf(solved, programme);
    if (passesADay(places, programme)) {
      rows = [...rows, { terms: places.map((i) => [taken(i), 1] as const), atMost: places.length - 1 }];
      continue;
    }
    if (options.length === 0) {
      rows = [...rows, { terms: goals[0] ?? [], atMost: solved.optima[0] }];
      wanted = goals.slice(1);
    }
    options.push(places);
    if (places.length === 0) break;
    rows = [...rows, ...otherAgents(places, programme, options.length)];
  }
  return options.map((places) => places.flatMap((i) => programme.packs[i]?.candidate ?? []));
}

/** Needs by their weight, each more than all that come after it; packs passed over that were chosen at the chair; then goals of the packs. */
export function goalTerms({ packs, needs, pins }: Programme): readonly Terms[] {
  const weights = needs.map((_, k): Terms[number] => [unmet(k), 2 ** (needs.length - 1 - k)]);
  const merged = mergeGoals(
    packs.map((pack, i) => [...pack.goals, i + 1]),
    Math.max(1, needs.length),
  );
  const ofPacks = (merged[0] ?? []).map(
    (_, g): Terms =>
      merged.flatMap((values, i) => {
        const value = values[g] ?? 0;
        return value === 0 ? [] : [[taken(i), value] as const];
      }),
  );
  return [weights, ...(pins.length > 0 ? [pins.map((i) => [passedOver(i), 1] as const)] : []), ...ofPacks];
}

export function rowsOf({ packs, needs, pairs, days, pins }: Programme): readonly Row[] {
  const serving = needs.map((_, k) => packs.flatMap((pack, i) => (pack.serves.includes(k) ? [i] : [])));
  return [
    ...serving.map((places, k): Row => ({ terms: [[unmet(k), 1], ...places.map((i) => [taken(i), 1] as const)], atLeast: 1 })),
    ...pairs.map(
      ({ places: [i, j] }): Row => ({
        terms: [
          [taken(i), 1],
          [taken(j), 1],
        ],
        atMost: 1,
      }),
    ),
    ...days.map(
      ({ coefficients, atMost }): Row => ({ terms: coefficients.flatMap((c, i) => (c === 0 ? [] : [[taken(i), c] as const])), atMost }),
    ),
    ...pins.flatMap((i) => pinRows(i, serving)),
  ];
}

/** A chosen pack is taken or passed over, and is taken only where it alone serves some need. */
function pinRows(pin: number, serving: readonly (readonly number[])[]): Row[] {
  const served = serving.flatMap((places, k) => (places.includes(pin) ? [k] : []));
  return [
    {
      terms: [
        [taken(pin), 1],
        [passedOver(pin), 1],
      ],
      atLeast: 1,
    },
    { terms: [[taken(pin), 1], ...served.map((k) => [alone(pin, k), -1] as const)], atMost: 0 },
    ...served.flatMap((k) =>
      (serving[k] ?? [])
        .filter((i) => i !== pin)
        .map(
          (i): Row => ({
            terms: [
              [alone(pin, k), 1],
              [taken(i), 1],
            ],
            atMost: 1,
          }),
        ),
    ),
    ...served.map((k): Row => ({ terms: [[alone(pin, k), 1]], atMost: 1 })),
  ];
}

const placesOf = ({ values }: Solved, { packs }: Programme): readonly number[] =>
  packs.flatMap((_, i) => ((values.get(taken(i)) ?? 0) > 0 ? [i] : []));

/** The solver keeps bounds to its own precision; a set that is a hair above one is not taken. */
const passesADay = (places: readonly number[], { days }: Programme): boolean =>
  days.some(({ coefficients, atMost }) => places.reduce((sum, i) => sum + (coefficients[i] ?? 0), 0) > atMost + Number.EPSILON);

/** From now on at least one agent of this set is missing. */
function otherAgents(places: readonly number[], { packs }: Programme, cut: number): Row[] {
  const agentAt = (i: number) => packs[i]?.candidate.item.agentId ?? '';
  const agents = [...new Set(places.map(agentAt))];
  const missing = (agent: string): string => `without ${agent} ${cut}`;
  return [
    { terms: agents.map((agent) => [missing(agent), 1] as const), atLeast: 1 },
    ...agents.flatMap((agent) =>
      packs.flatMap((_, i): Row[] =>
        agentAt(i) === agent
          ? [
              {
                terms: [
                  [missing(agent), 1],
                  [taken(i), 1],
                ],
                atMost: 1,
              },
            ]
          : [],
      ),
    ),
  ];
}
