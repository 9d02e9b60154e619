import type { Meter } from '../core/reading/types.ts';

/** What a real practice must say of itself before its first visit. Nothing clinical is assumed for it. */
export interface NewPractice {
  readonly practiceName: string;
  readonly memberName: string;
  readonly passphrase: string;
  readonly meter: Meter;
}

/** The questions, each with the option that answers it without a terminal. The passphrase never stands on the command line. */
const FIELDS = {
  'practice-name': { ask: 'Name of the practice', kind: 'text' },
  'member-name': { ask: 'Your name', kind: 'text' },
  'meter-name': { ask: 'Name of the swab meter, as you call it', kind: 'text' },
  'meter-lowest': { ask: 'Lowest number the meter can show, RLU (from its instructions)', kind: 'number' },
  'meter-highest': { ask: 'Highest number the meter can show, RLU', kind: 'number' },
  'meter-cutoff': { ask: "The meter's own cut-off, RLU (there is no usual one)", kind: 'number' },
  'meter-countdown': { ask: 'Count-down before the number appears, seconds', kind: 'number' },
} as const;
export type PracticeOption = keyof typeof FIELDS;
export const PRACTICE_OPTIONS = Object.keys(FIELDS) as readonly PracticeOption[];

const SHORTEST_PASSPHRASE = 12;

/**
 * Spread of one reading until the practice has measured its own: inside the 12 to 50 % published for ATP swabs and meters
 * (vogel2014, whiteley2015), and assumed from day to day. Both are shown as assumed wherever they are used.
 */
const ASSUMED_NOISE = { cvAnalytical: 0.3, cvAnalyticalAssumed: true, cvWithinPerson: 0.5, cvWithinPersonAssumed: true } as const;

/** Options first, then the terminal; without a terminal a missing answer is named. */
export async function askPractice(
  options: Partial<Record<PracticeOption, string>>,
  env: { passphrase?: string | undefined; interactive: boolean },
): Promise<NewPractice> {
  const answers = {} as Record<PracticeOption, string>;
  for (const option of PRACTICE_OPTIONS) answers[option] = await answerOf(option, options[option], answers, env.interactive);
  return {
    practiceName: answers['practice-name'],
    memberName: answers['member-name'],
    passphrase: await newPassphrase(env),
    meter: meterOf(answers),
  };
}

/** What is wrong with an answer after those before it, or undefined. Said at once, so that nothing typed is lost. */
export function problemWith(option: PracticeOption, value: string, before: Partial<Record<PracticeOption, string>>): string | undefined {
  if (value.trim() === '') return `${option}: needs an answer`;
  if (FIELDS[option].kind === 'number' && !(Number(value) >= 0 && Number.isFinite(Number(value))))
    return `${option}: must be a number, 0 or more, not "${value}"`;
  const lowest = Number(before['meter-lowest']);
  const highest = Number(before['meter-highest']);
  if (option === 'meter-highest' && !(Number(value) > lowest))
    return `meter-highest: ${value} must be above the lowest reading (${lowest})`;
  if (option === 'meter-cutoff' && !(Number(value) > lowest && Number(value) < highest)) {
    return `meter-cutoff: ${value} must lie between the lowest (${lowest}) and the highest (${highest}) reading`;
  }
  return undefined;
}

/** Loaded only where somebody is asked. */
const terminalQuestions = () => import('@inquirer/prompts');

async function answerOf(
  option: PracticeOption,
  given: string | undefined,
  before: Partial<Record<PracticeOption, string>>,
  interactive: boolean,
): Promise<string> {
  if (given !== undefined) {
    const problem = problemWith(option, given, before);
    if (problem !== undefined) throw new RangeError(problem);
    return given.trim();
  }
  if (!interactive) throw new RangeError(`${option}: needs an answer; give it as --${option}, or start in a terminal`);
  const { input } = await terminalQuestions();
  return (await input({ message: FIELDS[option].ask, validate: (value) => problemWith(option, value, before) ?? true })).trim();
}

async function newPassphrase(env: { passphrase?: string | undefined; interactive: boolean }): Promise<string> {
  const isLongEnough = (value: string) =>
    value.length >= SHORTEST_PASSPHRASE || `passphrase: must have ${SHORTEST_PASSPHRASE} characters or more`;
  if (env.passphrase !== undefined) {
    const checked = isLongEnough(env.passphrase);
    if (checked !== true) throw new RangeError(checked);
    return env.passphrase;
  }
  if (!env.interactive) throw new RangeError('passphrase: needs an answer; set EBBLINE_PASSPHRASE, or start in a terminal');
  const { password } = await terminalQuestions();
  const first = await password({
    message: `A passphrase for the data file (${SHORTEST_PASSPHRASE} characters or more; it cannot be recovered)`,
    mask: true,
    validate: isLongEnough,
  });
  await password({
    message: 'The same passphrase again',
    mask: true,
    validate: (again) => again === first || 'passphrase: the two differ',
  });
  return first;
}

function meterOf(answers: Readonly<Record<PracticeOption, string>>): Meter {
  return {
    id: 'meter-1',
    name: answers['meter-name'],
    lowestRlu: Number(answers['meter-lowest']),
    highestRlu: Number(answers['meter-highest']),
    cutoffRlu: Number(answers['meter-cutoff']),
    countdownS: Number(answers['meter-countdown']),
    ...ASSUMED_NOISE,
  };
}

/** The passphrase of a practice that is already there. */
export async function askPassphrase(env: { passphrase?: string | undefined; interactive: boolean }): Promise<string> {
  if (env.passphrase !== undefined) return env.passphrase;
  if (!env.interactive) throw new RangeError('passphrase: needs an answer; set EBBLINE_PASSPHRASE, or start in a terminal');
  const { password } = await terminalQuestions();
  return password({ message: 'Passphrase of the data file', mask: true });
}
