import type { TrendObservation } from '../../../src/core/stats/mixed/trendDesign.ts';
import type { CrossedObservation } from '../../../src/core/stats/variance/crossedCells.ts';
import type { NestedObservation } from '../../../src/core/stats/variance/nestedCells.ts';

/** `normal` gives standard normal numbers; components are variances. */
interface Study<Name extends string> {
  readonly normal: () => number;
  readonly components: Readonly<Record<Name, number>>;
}

const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));

export function simulateCrossed(
  { normal, components }: Study<'part' | 'operator' | 'interaction' | 'repeatability'>,
  size: Readonly<Record<'parts' | 'operators' | 'repeats', number>>,
): CrossedObservation[] {
  const draw = (variance: number) => Math.sqrt(variance) * normal();
  const operators = times(size.operators, () => draw(components.operator));
  return times(size.parts, (i) => {
    const part = draw(components.part);
    return operators.map((operator, j) => {
      const mean = part + operator + draw(components.interaction);
      return times(size.repeats, () => ({ part: `${i}`, operator: `${j}`, value: mean + draw(components.repeatability) }));
    });
  }).flat(2);
}

export function simulateNested(
  { normal, components }: Study<'group' | 'member' | 'residual'>,
  size: Readonly<Record<'groups' | 'members' | 'repeats', number>>,
): NestedObservation[] {
  const draw = (variance: number) => Math.sqrt(variance) * normal();
  return times(size.groups, (i) => {
    const group = draw(components.group);
    return times(size.members, (j) => {
      const mean = group + draw(components.member);
      return times(size.repeats, () => ({ group: `${i}`, member: `${j}`, value: mean + draw(components.residual) }));
    });
  }).flat(2);
}

export function simulateOneWay(
  { normal, components }: Study<'group' | 'residual'>,
  size: Readonly<Record<'groups' | 'repeats', number>>,
): number[][] {
  const draw = (variance: number) => Math.sqrt(variance) * normal();
  return times(size.groups, () => {
    const group = draw(components.group);
    return times(size.repeats, () => group + draw(components.residual));
  });
}

/** Readings of people over a year and a half on the log scale, 2 to 6 each; `levels` are their true levels at time 0. */
export function simulateTrend({ normal, uniform }: { readonly normal: () => number; readonly uniform: () => number }, people: number) {
  const truth = { intercept: 7.5, slope: -0.05, subjectSd: 0.6, residualSd: 0.35 };
  const levels = times(people, () => truth.intercept + truth.subjectSd * normal());
  const observations: TrendObservation[] = levels.flatMap((level, s) =>
    times(2 + Math.floor(5 * uniform()), () => 18 * uniform()).map((time) => ({
      subject: `s${s}`,
      time,
      value: level + truth.slope * time + truth.residualSd * normal(),
    })),
  );
  return { truth, levels, observations };
}
