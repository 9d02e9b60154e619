import type { Guardian, PatientProfile } from '../../../core/visit/patientProfile.ts';
import type { Speaker, VisitInput } from '../../../core/visit/types.ts';
import { formatDate, isolate } from '../../format.ts';
import type { Line, Reply } from './line.ts';

export const SPEAKER = 'speaker';
const CARER_NAME = 'speaker-name';
const INTERPRETER = 'speaker-interpreter';
/** Kept free of the letters of the safety check. */
export const SPEAKER_LETTERS = 'zwv';

/** Younger people are asked who speaks for them. From which age somebody decides alone is local law, not ours. */
const CHILD_BELOW_YEARS = 18;

export interface SpeakerPlace {
  readonly profile: Pick<PatientProfile, 'guardians' | 'interpreter'>;
  readonly ageYears: number;
  readonly speaker: Speaker | undefined;
  /** The visit is closed: what is on record is shown, and can be put right, but nothing is asked for. */
  readonly isPast?: boolean;
  readonly isCorrecting?: boolean;
}

const INTERPRETERS = [
  { id: 'not-needed', label: 'not needed' },
  { id: 'professional', label: 'professional' },
  { id: 'family', label: 'family' },
  { id: 'needed-not-there', label: 'needed and not there' },
] as const;

const BASE = { mayBeUnknown: false, reconfirmable: false, private: false, sources: [] } as const;

/**
 * Who speaks today: asked of children, of people with guardians and where somebody interprets. Nobody else is asked, and no key is spent;
 * but what stands on the record of a closed visit is shown, and can be put right for everybody.
 */
export function speakerLines(place: SpeakerPlace): readonly Line[] {
  const { speaker, isPast = false, isCorrecting = false } = place;
  if (!isAsked(place) && !isCorrecting && !(isPast && speaker)) return [];
  const proposed = isPast ? undefined : proposedSpeaker(place);
  const who: Line = {
    ...BASE,
    id: SPEAKER,
    letter: 'z',
    label: isPast ? 'Who spoke' : 'Who speaks today',
    prompt: isPast ? 'Who answered at this visit, and who was in the room?' : 'Who answers today, and who is in the room?',
    entry: { kind: 'choice', choices: listChoices(place).map(({ id, label }) => ({ id, label })) },
    text: speaker === undefined ? 'not asked' : saySpeaker(speaker),
    tone: speaker === undefined ? 'unknown' : 'new',
    note: speaker === undefined && proposed ? `perhaps ${saySpeaker(proposed)}; 1 says so` : undefined,
    wanted: speaker === undefined && !isPast,
    value: speaker === undefined ? undefined : listChoices(place).find(({ speaker: s }) => isSame(s, speaker))?.id,
  };
  return [who, ...carerLine(speaker), ...interpreterLine(place)];
}

function isAsked({ profile: { guardians = [], interpreter = '' }, ageYears }: SpeakerPlace): boolean {
  return ageYears < CHILD_BELOW_YEARS || guardians.length > 0 || interpreter !== '';
}

interface SpeakerChoice {
  readonly id: string;
  readonly label: string;
  readonly speaker: Speaker;
}

function listChoices(place: SpeakerPlace): readonly SpeakerChoice[] {
  const { guardians = [] } = place.profile;
  const named = guardians.map((guardian, i) => ({
    id: `guardian ${i}`,
    label: sayGuardian(guardian),
    speaker: { who: 'guardian', name: guardian.name } as const,
  }));
  const alone: SpeakerChoice = { id: 'patient', label: 'the patient alone', speaker: { who: 'patient' } };
  const first = proposedSpeaker(place);
  // The first key is the likeliest answer: it is the one that is pressed without looking.
  const isFirst = ({ speaker }: SpeakerChoice) => first !== undefined && isSame(speaker, first);
  const people = [alone, ...named];
  return [
    ...people.filter(isFirst),
    ...people.filter((choice) => !isFirst(choice)),
    ...(named.length === 0 ? [{ id: 'guardian', label: 'a parent or guardian', speaker: { who: 'guardian' } as const }] : []),
    { id: 'carer', label: 'a carer', speaker: { who: 'carer' } },
  ];
}

const sayGuardian = ({ name, relation }: Guardian) => (relation ? `${name}, ${relation}` : name);

const isSame = (a: Speaker, b: Speaker) => a.who === b.who && (a.who === 'carer' || a.name === b.name);

/** Only a thought of the page, never saved: a child's first guardian who may say yes, else the first. */
function proposedSpeaker({ profile: { guardians = [] }, ageYears }: SpeakerPlace): Speaker | undefined {
  if (ageYears >= CHILD_BELOW_YEARS) return { who: 'patient' };
  const guardian = guardians.find((g) => g.mayConsent) ?? guardians[0];
  return guardian && { who: 'guardian', name: guardian.name };
}

function carerLine(speaker: Speaker | undefined): readonly Line[] {
  if (speaker?.who !== 'carer') return [];
  const { name } = speaker;
  return [
    {
      ...BASE,
      id: CARER_NAME,
      letter: 'v',
      label: 'Name of the carer',
      entry: { kind: 'text', hint: 'kept on the record' },
      text: name ?? 'not asked',
      tone: name === undefined ? 'unknown' : 'new',
      wanted: name === undefined,
      value: name,
    },
  ];
}

function interpreterLine({ profile: { interpreter = '' }, speaker }: SpeakerPlace): readonly Line[] {
  if (interpreter === '' || speaker === undefined) return [];
  const said = INTERPRETERS.find(({ id }) => id === speaker.interpreter);
  return [
    {
      ...BASE,
      id: INTERPRETER,
      letter: 'w',
      label: `Interpreter, ${interpreter}`,
      entry: { kind: 'choice', choices: INTERPRETERS },
      text: said?.label ?? 'not asked',
      tone: said ? 'new' : 'unknown',
      wanted: !said,
      value: said?.id,
    },
  ];
}

/** "Mai Tran, guardian", "the patient alone". */
export function saySpeaker({ who, name }: Speaker): string {
  if (who === 'patient') return 'the patient alone';
  if (name !== undefined) return who === 'guardian' ? `${name}, guardian` : `${name}, carer`;
  return who === 'guardian' ? 'a parent or guardian' : 'a carer';
}

/** With the interpreter, where that was said: "the patient alone; interpreter: professional". */
export function saySpeakerInFull(speaker: Speaker): string {
  const said = INTERPRETERS.find(({ id }) => id === speaker.interpreter);
  return said ? `${saySpeaker(speaker)}; interpreter: ${said.label}` : saySpeaker(speaker);
}

/** The speaker after an answer on one of these lines; undefined for another line. */
export function speakerAfter(line: string, reply: Reply, place: SpeakerPlace): Speaker | undefined {
  if (reply.how !== 'asked') return undefined;
  const value = String(reply.value);
  const { speaker } = place;
  if (line === SPEAKER) {
    const chosen = listChoices(place).find(({ id }) => id === value)?.speaker;
    return chosen && { ...chosen, ...(speaker?.interpreter && { interpreter: speaker.interpreter }) };
  }
  if (speaker === undefined) return undefined;
  if (line === CARER_NAME && value.trim() !== '') return { ...speaker, name: value.trim() };
  const interpreter = line === INTERPRETER ? INTERPRETERS.find(({ id }) => id === value)?.id : undefined;
  return interpreter && { ...speaker, interpreter };
}

/** Marks an answer that is told with nobody there who speaks for the person, or that was told so before. */
export function markAlone({ speaker, answers }: Pick<VisitInput['visit'], 'speaker' | 'answers'>, question: string): { alone?: true } {
  return speaker?.who === 'patient' || answers[question]?.alone ? { alone: true } : {};
}

/** What must be plain before a child's plan is agreed; nothing is held up by it. */
export function consentSentence({ profile: { guardians = [] }, ageYears, speaker }: SpeakerPlace): string | undefined {
  if (ageYears >= CHILD_BELOW_YEARS) return undefined;
  const here = speaker?.who === 'guardian' ? guardians.find(({ name }) => name === speaker.name) : undefined;
  if (here?.mayConsent === true) return undefined;
  return 'Nobody here who may say yes to care is recorded: local law decides. An emergency does not wait for it.';
}

/** Permission for care, where it is not given. */
export function permissionSentence({ permissions }: Pick<PatientProfile, 'permissions'>): string | undefined {
  const care = permissions?.care;
  if (care === undefined) return 'Permission for care: not asked.';
  return care.given ? undefined : `Permission for care: not given, said by ${isolate(care.by)} on ${formatDate(care.on)}.`;
}
