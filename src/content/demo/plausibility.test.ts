import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { evaluateProtocol } from '../../core/risk/evaluateProtocol.ts';
import { itemsFromAnswers } from '../../core/risk/itemsFromAnswers.ts';
import type { Level } from '../../core/risk/types.ts';
import { ageOn } from '../../core/visit/ageOn.ts';
import { content } from '../allContent.ts';
import { fourLevel2019 } from '../protocols/fourLevel2019.ts';
import { ageAt, DECAYED_KINDS } from './drawFindings.ts';
import { buildDemoPerson, type DemoPerson } from './people.ts';
import { buildDemoPractice } from './practice.ts';

interface DecayRow {
  readonly teeth: 'milk' | 'permanent';
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly any?: number;
  readonly untreated?: number;
  readonly meanIfAny?: number;
  readonly decayedIfAny?: number;
  readonly missingIfAny?: number;
}
type ByLevel = Readonly<Record<Level, number>>;

// test/reference/outcomes/practice.json: read, from memory and assumed figures, see its README. Tolerances: three standard errors of this
// sample of 2,400 people (four seeds), unless a test says more.
const reference = JSON.parse(readFileSync(new URL('../../../test/reference/outcomes/practice.json', import.meta.url), 'utf8')) as {
  readonly decay: readonly DecayRow[];
  readonly milkTeethShapeAt7: { readonly shape: number };
  readonly newTeethIn18Months: { readonly mean: ByLevel; readonly ordinaryPractice: number; readonly shape: number };
  readonly levels: ByLevel;
  readonly adherence: { readonly usedSome: readonly [number, number]; readonly asAgreed: readonly [number, number] };
  readonly replies: Readonly<Record<'agreed' | 'declined' | 'not-affordable', number>>;
  readonly appointments: { readonly missed: number; readonly cancelled: number; readonly oddsFrom19To35: readonly [number, number] };
  readonly readings: {
    readonly ratioByLevel: ByLevel;
    readonly gsdBetweenPeople: number;
    readonly gsdBetweenDays: number;
    readonly cvOfOneSwab: number;
    readonly aucOfHighOrExtreme: number;
  };
};

const TODAY = '2026-11-25';
const LEVELS = ['low', 'moderate', 'high', 'extreme'] as const;
/** 150 children of 2 to 11, 100 of 12 to 19 and 350 adults of 20 to 89 for each of four seeds. */
const AGES = [...spread(150, 2, 11), ...spread(100, 12, 19), ...spread(350, 20, 89)];
const people = [1, 2, 3, 4].flatMap((seed) =>
  AGES.map((ageYears, i) => buildDemoPerson({ name: 'Invented', ageYears, traits: [] }, i, { seed, today: TODAY })),
);
const firstAge = ({ birthDate, visits }: DemoPerson) => ageAt({ birthDate }, visits[0]?.onDate ?? TODAY);
const ofLevel = (level: Level) => people.filter(({ drawnRisk }) => drawnRisk === level);

/** Untreated, missing and all touched teeth of one kind, of everybody whose first visit was in an age band. */
function countPastDecay({ teeth, fromAgeYears, belowAgeYears }: DecayRow) {
  const isOfKind = (tooth: string) => (teeth === 'milk') === tooth >= '5';
  const group = people.filter((person) => firstAge(person) >= fromAgeYears && firstAge(person) < belowAgeYears);
  return group.map(({ past }) => {
    const [untreated = 0, missing = 0, filled = 0] = [past.untreated, past.missing, past.filled].map(
      (list) => list.filter(isOfKind).length,
    );
    return { untreated, missing, all: untreated + missing + filled };
  });
}

const SHARES = { any: 'all', untreated: 'untreated' } as const;
const MEANS_IF_ANY = { meanIfAny: 'all', decayedIfAny: 'untreated', missingIfAny: 'missing' } as const;
const figuresOf = <T extends keyof DecayRow>(names: readonly T[]) =>
  reference.decay.flatMap((row) => names.flatMap((figure) => (row[figure] === undefined ? [] : [{ ...row, figure }])));

describe('past decay', () => {
  test.each(figuresOf(['any', 'untreated']))('share with $figure of $teeth teeth, $fromAgeYears to below $belowAgeYears', (row) => {
    const counts = countPastDecay(row);
    expect(counts.length).toBeGreaterThan(100);
    expectShare(counts.filter((one) => one[SHARES[row.figure]] > 0).length, counts.length, row[row.figure]);
  });

  test.each(figuresOf(['meanIfAny', 'decayedIfAny', 'missingIfAny']))(
    '$figure of $teeth teeth, $fromAgeYears to below $belowAgeYears',
    (row) => {
      const withAny = countPastDecay(row).filter(({ all }) => all > 0);
      expectMean(
        withAny.map((one) => one[MEANS_IF_ANY[row.figure]]),
        row[row.figure],
      );
    },
  );
});

test('decayed and filled milk teeth are spread as unevenly as they are among children of 6 to 8', () => {
  const counts = people
    .filter((person) => firstAge(person) >= 6 && firstAge(person) < 9)
    .map(({ past }) => [...past.untreated, ...past.filled].filter((tooth) => tooth >= '5').length);
  const mean = meanOf(counts);
  // By moments; with some 170 children a shape of 0.6 is known to about a third.
  const shape = mean ** 2 / (varianceOf(counts) - mean);
  expect(Math.abs(Math.log(shape / reference.milkTeethShapeAt7.shape))).toBeLessThan(Math.log(2));
});

describe.each(LEVELS)('new teeth with decay, level %s', (level) => {
  const { mean, ordinaryPractice, shape } = reference.newTeethIn18Months;
  // The expected count of each person follows from the time between the first visit and the last.
  const seen = ofLevel(level)
    .filter(({ visits }) => visits.length > 1)
    .map((person) => ({ expected: (mean[level] * ordinaryPractice * daysSeen(person)) / 548, found: countNewTeeth(person) }));

  test('come at the expected rate, over all', () => {
    const expected = sumOf(seen.map((one) => one.expected));
    const variance = sumOf(seen.map((one) => one.expected + one.expected ** 2 / shape));
    expect(Math.abs(sumOf(seen.map(({ found }) => found)) - expected)).toBeLessThan(3 * Math.sqrt(variance));
  });

  test('spare as many people as their spread says', () => {
    const spared = seen.map((one) => (shape / (shape + one.expected)) ** shape);
    const variance = sumOf(spared.map((chance) => chance * (1 - chance)));
    const found = seen.filter(({ found: count }) => count === 0).length;
    expect(Math.abs(found - sumOf(spared))).toBeLessThan(3 * Math.sqrt(variance));
  });
});

describe('levels', () => {
  const adults = people.filter(({ birthDate }) => ageAt({ birthDate }, TODAY) >= 18);

  test.each(LEVELS)('%s is drawn as often among adults as assumed', (level) => {
    expectShare(adults.filter(({ drawnRisk }) => drawnRisk === level).length, adults.length, reference.levels[level]);
  });

  test("the practice's own list gives about the same shares at the last visit", () => {
    const { settings } = buildDemoPractice(TODAY);
    const { questions, findingFills, itemExclusions: exclusions } = content;
    const given = adults
      .filter(({ visits }, i) => i % 7 === 0 && visits.length > 0)
      .map(({ birthDate, visits }) => {
        const { onDate, answers, findings, allExamined } = visits.at(-1) ?? missing('a visit');
        const { ageYears } = ageOn(birthDate, onDate);
        const { items } = itemsFromAnswers({
          answers,
          findings,
          allExamined,
          questions,
          findingFills,
          exclusions,
          ageYears,
          onDate,
          settings,
        });
        return evaluateProtocol(fourLevel2019, items, ageYears, settings).level;
      });
    expect(given.length).toBeGreaterThan(180);
    // Three standard errors at a share of a third are 0.1; the list weighs answers and is not told the level that was drawn.
    for (const level of LEVELS) {
      const share = given.filter((one) => one === level).length / given.length;
      expect({ level, share, isNear: Math.abs(share - reference.levels[level]) < 0.12 }).toEqual({ level, share, isNear: true });
    }
  });
});

describe('readings', () => {
  const { ratioByLevel, gsdBetweenPeople, gsdBetweenDays, cvOfOneSwab, aucOfHighOrExtreme } = reference.readings;
  const logsOf = ({ visits }: DemoPerson) => visits.flatMap(({ reading: { rlu } }) => (rlu === undefined ? [] : [Math.log(rlu)]));
  const firstLogs = (list: readonly DemoPerson[]) => list.flatMap((person) => logsOf(person).slice(0, 1));
  const varianceWithin = Math.log(gsdBetweenDays) ** 2 + Math.log1p(cvOfOneSwab ** 2);
  const varianceAll = Math.log(gsdBetweenPeople) ** 2 + varianceWithin;

  test.each(['moderate', 'high', 'extreme'] as const)('of level %s stand in the assumed ratio to those of low', (level) => {
    const [low, other] = [firstLogs(ofLevel('low')), firstLogs(ofLevel(level))];
    const se = Math.sqrt(varianceAll * (1 / low.length + 1 / other.length));
    expect(Math.abs(meanOf(other) - meanOf(low) - Math.log(ratioByLevel[level]))).toBeLessThan(3 * se);
  });

  test('scatter within one person as days and swabs do, and between people as assumed', () => {
    const repeated = people.map(logsOf).filter((logs) => logs.length > 1);
    const freedom = sumOf(repeated.map((logs) => logs.length - 1));
    const within = sumOf(repeated.map((logs) => varianceOf(logs) * (logs.length - 1))) / freedom;
    expect(Math.abs(within / varianceWithin - 1)).toBeLessThan(3 * Math.sqrt(2 / freedom));
    const byLevel = LEVELS.map((level) => firstLogs(ofLevel(level)));
    const n = sumOf(byLevel.map((logs) => logs.length));
    const all = sumOf(byLevel.map((logs) => varianceOf(logs) * (logs.length - 1))) / (n - LEVELS.length);
    expect(Math.abs(all / varianceAll - 1)).toBeLessThan(3 * Math.sqrt(2 / n));
  });

  test('tell high from low levels as weakly as they should', () => {
    const high = firstLogs(people.filter(({ drawnRisk }) => drawnRisk === 'high' || drawnRisk === 'extreme'));
    const low = firstLogs(people.filter(({ drawnRisk }) => drawnRisk === 'low' || drawnRisk === 'moderate'));
    const auc = meanOf(high.map((one) => low.filter((other) => other < one).length / low.length));
    // Hanley and McNeil's standard error at 0.634 for some 700 and 1,100 people is 0.013.
    expect(Math.abs(auc - aucOfHighOrExtreme)).toBeLessThan(0.04);
  });

  test('are missing now and then, each time with a reason, and a few do not count', () => {
    const swabs = people
      .flatMap(({ birthDate, visits }) => visits.map((visit) => ({ ...visit, ageYears: ageAt({ birthDate }, visit.onDate) })))
      .filter(({ ageYears }) => ageYears > 6)
      .map(({ reading }) => reading);
    expect(swabs.filter(({ rlu, notTaken, failed }) => (rlu === undefined) !== (notTaken !== undefined || failed === true))).toEqual([]);
    // Assumed: 7 % not taken, and 4 % of the others after polishing.
    expectShare(swabs.filter(({ notTaken }) => notTaken !== undefined).length, swabs.length, 0.07);
    expectShare(swabs.filter(({ beforeCleaning }) => beforeCleaning === false).length, swabs.length, 0.93 * 0.04);
    expect(new Set(swabs.flatMap(({ notTaken }) => notTaken ?? [])).size).toBeGreaterThan(4);
  });
});

describe('appointments after the first, which is kept by definition', () => {
  const { missed, cancelled, oddsFrom19To35 } = reference.appointments;
  const later = people.flatMap(({ birthDate, appointments }) =>
    appointments
      .slice(1)
      .map(({ onDate, state }) => ({ state, isYoung: ageAt({ birthDate }, onDate) >= 19 && ageAt({ birthDate }, onDate) <= 35 })),
  );
  const count = (state: string, isYoung?: boolean) =>
    later.filter((one) => one.state === state && (isYoung === undefined || one.isYoung === isYoung)).length;

  test('are cancelled and missed as often as in the clinic that counted', () => {
    expectShare(count('cancelled'), later.length, cancelled);
    // The ages of that clinic are not known, and young adults weigh heavily: within 4 points.
    expect(Math.abs(count('missed') / later.length - missed)).toBeLessThan(0.04);
  });

  test('are missed by young adults with the odds that were seen', () => {
    const cells = [count('missed', true), count('planned', true), count('missed', false), count('planned', false)] as const;
    const [a, b, c, d] = cells;
    const n = later.filter(({ isYoung }) => isYoung).length;
    const others = later.length - n;
    const odds = a / (n - a) / (c / (others - c));
    const slack = 3 * Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
    expect(Math.log(odds)).toBeGreaterThan(Math.log(oddsFrom19To35[0]) - slack);
    expect(Math.log(odds)).toBeLessThan(Math.log(oddsFrom19To35[1]) + slack);
  });
});

describe('home care', () => {
  const visits = people.flatMap((person) => person.visits);

  test('is used as agreed, or at least partly, by as many as after a month', () => {
    const uses = visits.flatMap((visit) => visit.uses.map(({ adherence }) => adherence));
    const { usedSome, asAgreed } = reference.adherence;
    expectShare(uses.filter((one) => one === 'as-agreed').length, uses.length, asAgreed[0] / asAgreed[1]);
    expectShare(uses.filter((one) => one === 'as-agreed' || one === 'less-often').length, uses.length, usedSome[0] / usedSome[1]);
  });

  test.each(['agreed', 'declined', 'not-affordable'] as const)('is %s as often as assumed', (said) => {
    const replies = visits.flatMap((visit) => visit.replies);
    expectShare(replies.filter((reply) => reply.said === said).length, replies.length, reference.replies[said]);
  });
});

function daysSeen({ visits }: DemoPerson): number {
  return (Date.parse(visits.at(-1)?.onDate ?? '') - Date.parse(visits[0]?.onDate ?? '')) / 86_400_000;
}

function countNewTeeth({ visits }: DemoPerson): number {
  return visits.slice(1).flatMap(({ findings }) => findings.filter(({ isNew, kind }) => isNew && DECAYED_KINDS.includes(kind))).length;
}

function expectShare(count: number, of: number, share = Number.NaN): void {
  const limit = 3 * Math.sqrt((share * (1 - share)) / of);
  expect({ share: count / of, isWithin: Math.abs(count / of - share) <= limit }).toEqual({ share: count / of, isWithin: true });
}

function expectMean(values: readonly number[], mean = Number.NaN): void {
  const limit = 3 * Math.sqrt(varianceOf(values) / values.length);
  expect({ mean: meanOf(values), isWithin: Math.abs(meanOf(values) - mean) <= limit }).toEqual({ mean: meanOf(values), isWithin: true });
}

function spread(count: number, from: number, to: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => from + (i % (to - from + 1)));
}

function missing(what: string): never {
  throw new Error(`there is no ${what}`);
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function meanOf(values: readonly number[]): number {
  return sumOf(values) / values.length;
}

function varianceOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return sumOf(values.map((value) => (value - mean) ** 2)) / (values.length - 1);
}
