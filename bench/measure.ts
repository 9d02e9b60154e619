/** One of the things measured against each other: a fixed amount of work, done from start to end. */
export interface Contender {
  readonly name: string;
  run(): void | Promise<void>;
}

/** Times in ms, one per round, by contender; the same round of two contenders ran within the same seconds. */
export type Rounds = ReadonlyMap<string, readonly number[]>;

/** Linear between the two nearest values (quantile type 7). @throws RangeError without values */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('values must not be empty');
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** One unmeasured round, then `rounds` measured ones. Each round begins with another contender, so that nobody always runs first. */
export async function measure(contenders: readonly Contender[], rounds: number): Promise<Rounds> {
  const times = new Map<string, number[]>(contenders.map(({ name }) => [name, []]));
  for (const { run } of contenders) await run();
  for (let round = 0; round < rounds; round += 1) {
    for (let turn = 0; turn < contenders.length; turn += 1) {
      const contender = contenders[(round + turn) % contenders.length];
      if (!contender) continue;
      const began = performance.now();
      await contender.run();
      times.get(contender.name)?.push(performance.now() - began);
    }
  }
  return times;
}

/** Median of the ratios round by round, with the smallest and the largest: other work on the machine then falls on both. */
export function ratioOf(ours: readonly number[], peers: readonly number[]): string {
  const ratios = ours.map((value, round) => value / (peers[round] ?? Number.NaN));
  return `${digits(median(ratios))} (${digits(Math.min(...ratios))} to ${digits(Math.max(...ratios))})`;
}

/** Three significant digits. */
export function digits(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);
}

export function timesOf(rounds: Rounds, name: string): readonly number[] {
  const times = rounds.get(name);
  if (!times) throw new RangeError(`nothing was measured under this name: ${name}`);
  return times;
}
