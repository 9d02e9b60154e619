import type { Choice } from '../../../core/visit/question.ts';
import type { Finding } from '../../../core/visit/types.ts';
import type { Entry, Line, Reply } from './line.ts';

type Kind = Finding['kind'];

/** A kind as it is keyed: what it becomes, whether activity is asked, and else whether it counts as new. */
interface KeyedKind extends Choice {
  readonly kind: Kind;
  readonly asksActivity: boolean;
  readonly isNew: boolean;
}

/** In the order of their keys, 1 to 9 and 0; the order never depends on the tooth or surface, so that hands can learn it. */
const KEYED_KINDS: readonly KeyedKind[] = [
  { id: 'white-spot', kind: 'white-spot', label: 'white spot', asksActivity: true, isNew: true },
  { id: 'cavity', kind: 'cavity', label: 'cavity', asksActivity: true, isNew: true },
  { id: 'dentine-radiograph', kind: 'dentine-radiograph', label: 'in dentine on a radiograph', asksActivity: true, isNew: true },
  { id: 'enamel-radiograph', kind: 'enamel-radiograph', label: 'in enamel on a radiograph', asksActivity: true, isNew: true },
  { id: 'root-lesion', kind: 'root-lesion', label: 'root lesion', asksActivity: true, isNew: true },
  { id: 'restoration-recent', kind: 'restoration', label: 'restoration, recent', asksActivity: false, isNew: true },
  { id: 'restoration-older', kind: 'restoration', label: 'restoration, older', asksActivity: false, isNew: false },
  { id: 'restoration-defective', kind: 'restoration-defective', label: 'restoration, defective', asksActivity: false, isNew: true },
  { id: 'root-exposed', kind: 'root-exposed', label: 'root showing', asksActivity: false, isNew: true },
  { id: 'acid-wear', kind: 'acid-wear', label: 'acid wear', asksActivity: false, isNew: true },
];

const KIND_LABELS: Readonly<Record<Kind, string>> = {
  'white-spot': 'white spot',
  cavity: 'cavity',
  'dentine-radiograph': 'in dentine on a radiograph',
  'enamel-radiograph': 'in enamel on a radiograph',
  'root-lesion': 'root lesion',
  restoration: 'restoration',
  'restoration-defective': 'restoration, defective',
  'root-exposed': 'root showing',
  'acid-wear': 'acid wear',
};

const NOT_NOTED = 'not-noted';
const SURFACES: readonly Choice[] = [
  { id: 'occlusal', label: 'biting surface or edge' },
  { id: 'mesial', label: 'mesial' },
  { id: 'distal', label: 'distal' },
  { id: 'facial', label: 'facial' },
  { id: 'lingual', label: 'lingual' },
  { id: 'root', label: 'root' },
  { id: NOT_NOTED, label: 'not noted' },
];

const SEEN_BEFORE = ' seen-before';
/** One key says both whether it is active and whether it is new, and ends the finding. */
const ACTIVITIES: readonly Choice[] = [
  { id: 'active', label: 'active, new' },
  { id: 'inactive', label: 'inactive, new' },
  { id: 'not-assessed', label: 'activity not assessed, new' },
  { id: `active${SEEN_BEFORE}`, label: 'active, seen before' },
  { id: `inactive${SEEN_BEFORE}`, label: 'inactive, seen before' },
  { id: `not-assessed${SEEN_BEFORE}`, label: 'activity not assessed, seen before' },
];

const TOOTH = /^([1-4][1-8]|[5-8][1-5])$/;
export const NO_TOOTH = 'A tooth has two digits: 11 to 48, or 51 to 85 for a milk tooth.';
/** Only enamel has these. */
const ENAMEL_KINDS: ReadonlySet<string> = new Set(['white-spot', 'enamel-radiograph']);

export const isTooth = (text: string): boolean => TOOTH.test(text);

/** A finding on its way in, one step after the other: tooth, where, what, and for a lesion how active and whether new. */
export interface FindingDraft {
  readonly tooth?: string;
  readonly surface?: string;
  readonly kind?: string;
  /** A finding that is there already is looked for by its tooth. */
  readonly isChange?: boolean;
}

type Step = 'tooth' | 'surface' | 'kind' | 'activity';

export function stepOf(draft: FindingDraft): Step {
  if (draft.tooth === undefined) return 'tooth';
  if (draft.surface === undefined) return 'surface';
  return draft.kind === undefined ? 'kind' : 'activity';
}

const STEP_ENTRIES: Readonly<Record<Step, Entry>> = {
  tooth: { kind: 'tooth' },
  surface: { kind: 'choice', choices: SURFACES },
  kind: { kind: 'choice', choices: KEYED_KINDS },
  activity: { kind: 'choice', choices: ACTIVITIES },
};

const STEP_PROMPTS: Readonly<Record<Step, string>> = {
  tooth: 'Which tooth?',
  surface: 'On which surface?',
  kind: 'What was seen? A restoration is recent when it was placed for decay within the time that the list looks back.',
  activity: 'Is it active? New since the last examination; in a new patient, untreated.',
};

export const NEW_FINDING = 'new-finding';

const PLAIN = { mayBeUnknown: false, wanted: false, reconfirmable: false, private: false, sources: [] } as const;

/** The line that takes a finding; its answers are those of the step it stands at. */
export function newFindingLine(draft: FindingDraft, findings: readonly Finding[] = []): Line {
  if (draft.isChange) return changeLine(draft, findings);
  const step = stepOf(draft);
  return {
    ...PLAIN,
    id: NEW_FINDING,
    letter: 'f',
    label: 'New finding',
    prompt: STEP_PROMPTS[step],
    entry: STEP_ENTRIES[step],
    text: [draft.tooth, draft.surface !== NOT_NOTED && draft.surface, KEYED_KINDS.find(({ id }) => id === draft.kind)?.label]
      .filter(Boolean)
      .join(', '),
    tone: 'new',
  };
}

/** Looks a finding up by its tooth; where the tooth has several, by one more key. */
function changeLine({ tooth }: FindingDraft, findings: readonly Finding[]): Line {
  const choices = findings.flatMap((finding, i) =>
    finding.tooth === tooth ? [{ id: findingId(i), label: `${finding.surface ?? 'surface not noted'}, ${sayFinding(finding)}` }] : [],
  );
  return {
    ...PLAIN,
    id: NEW_FINDING,
    letter: 'c',
    label: 'Change a finding',
    prompt: tooth === undefined ? 'Which tooth?' : 'Which of its findings?',
    entry: tooth === undefined ? { kind: 'tooth' } : { kind: 'choice', choices },
    text: tooth ?? '',
    tone: 'new',
  };
}

export type AfterFindingReply =
  | { readonly draft: FindingDraft }
  | { readonly finding: Finding }
  /** Goes on at the line of a finding that is there already. */
  | { readonly open: string }
  | { readonly problem: string };

/** The draft after one more answer, the finished finding, the one to change, or what was wrong. */
export function afterFindingReply(draft: FindingDraft, reply: Reply, findings: readonly Finding[] = []): AfterFindingReply {
  if (reply.how !== 'asked') return { draft };
  const value = String(reply.value);
  const step = stepOf(draft);
  if (draft.isChange && draft.tooth !== undefined) return { open: value };
  if (step === 'tooth' && !isTooth(value)) return { problem: NO_TOOTH };
  if (draft.isChange) return afterToothOfChange(value, findings);
  const next = { ...draft, [step]: value };
  if (step !== 'kind' && step !== 'activity') return { draft: next };
  if (ENAMEL_KINDS.has(next.kind ?? '') && next.surface === 'root') return { problem: 'That is seen in enamel. On a root: root lesion.' };
  const kind = KEYED_KINDS.find(({ id }) => id === next.kind);
  if (!kind) return { problem: 'Choose what was seen.' };
  return step === 'kind' && kind.asksActivity ? { draft: next } : { finding: finish(next, kind, step === 'activity' ? value : undefined) };
}

function afterToothOfChange(tooth: string, findings: readonly Finding[]): AfterFindingReply {
  const places = findings.flatMap((finding, i) => (finding.tooth === tooth ? [findingId(i)] : []));
  const [only] = places;
  if (only === undefined) return { problem: `Nothing is noted at ${tooth}: enter it as a new finding.` };
  return places.length === 1 ? { open: only } : { draft: { isChange: true, tooth } };
}

function finish({ tooth, surface }: FindingDraft, { kind, isNew }: KeyedKind, keyed: string | undefined): Finding {
  if (tooth === undefined) throw new RangeError('a finding needs its tooth');
  const activity = keyed?.replace(SEEN_BEFORE, '') as Finding['activity'];
  return {
    tooth,
    kind,
    isNew: keyed === undefined ? isNew : !keyed.endsWith(SEEN_BEFORE),
    ...(surface && surface !== NOT_NOTED ? { surface: surface as NonNullable<Finding['surface']> } : {}),
    ...(activity ? { activity } : {}),
  };
}

/** "13, facial" */
export const sayPlace = ({ tooth, surface }: Finding): string => (surface ? `${tooth}, ${surface}` : tooth);

/** "white spot, active" */
export function sayFinding({ kind, activity }: Finding): string {
  if (activity === undefined) return KIND_LABELS[kind];
  return `${KIND_LABELS[kind]}, ${activity === 'not-assessed' ? 'activity not assessed' : activity}`;
}

export const findingId = (index: number): string => `finding ${index}`;
