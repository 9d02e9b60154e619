import type { Choice } from '../../../core/visit/question.ts';
import type { Finding } from '../../../core/visit/types.ts';
import type { Entry, Line, Reply } from './line.ts';

type Kind = Finding['kind'];

export const FINDING_KINDS: readonly (Choice & { readonly id: Kind })[] = [
  { id: 'white-spot', label: 'white spot' },
  { id: 'cavity', label: 'cavity' },
  { id: 'dentine-radiograph', label: 'in dentine on a radiograph' },
  { id: 'enamel-radiograph', label: 'in enamel on a radiograph' },
  { id: 'root-lesion', label: 'root lesion' },
  { id: 'restoration', label: 'restoration' },
  { id: 'restoration-defective', label: 'restoration, defective' },
  { id: 'root-exposed', label: 'root showing' },
  { id: 'acid-wear', label: 'acid wear' },
];

const NOT_NOTED = 'not-noted';
const SURFACES: readonly Choice[] = [
  { id: 'occlusal', label: 'occlusal' },
  { id: 'mesial', label: 'mesial' },
  { id: 'distal', label: 'distal' },
  { id: 'facial', label: 'facial' },
  { id: 'lingual', label: 'lingual' },
  { id: 'root', label: 'root' },
  { id: NOT_NOTED, label: 'not noted' },
];

const ACTIVITIES: readonly Choice[] = [
  { id: 'active', label: 'active' },
  { id: 'inactive', label: 'inactive' },
  { id: 'not-assessed', label: 'activity not assessed' },
];

const WITH_ACTIVITY: ReadonlySet<Kind> = new Set(['white-spot', 'cavity', 'root-lesion', 'dentine-radiograph', 'enamel-radiograph']);
const WITHOUT_SURFACE: ReadonlySet<Kind> = new Set(['root-exposed']);

const TOOTH = /^([1-4][1-8]|[5-8][1-5])$/;

/** A finding on its way in, one step after the other: tooth, what, where, active, new. */
export interface FindingDraft {
  readonly tooth?: string;
  readonly kind?: Kind;
  readonly surface?: string;
  readonly activity?: string;
}

type Step = 'tooth' | 'kind' | 'surface' | 'activity' | 'isNew';

export function stepOf(draft: FindingDraft): Step {
  if (draft.tooth === undefined) return 'tooth';
  if (draft.kind === undefined) return 'kind';
  if (draft.surface === undefined && !WITHOUT_SURFACE.has(draft.kind)) return 'surface';
  if (draft.activity === undefined && WITH_ACTIVITY.has(draft.kind)) return 'activity';
  return 'isNew';
}

const STEP_ENTRIES: Readonly<Record<Step, Entry>> = {
  tooth: { kind: 'text', hint: 'two digits, 11 to 48 or 51 to 85' },
  kind: { kind: 'choice', choices: FINDING_KINDS },
  surface: { kind: 'choice', choices: SURFACES },
  activity: { kind: 'choice', choices: ACTIVITIES },
  isNew: { kind: 'yes-no' },
};

const STEP_PROMPTS: Readonly<Record<Step, string>> = {
  tooth: 'Which tooth?',
  kind: 'What was seen?',
  surface: 'On which surface?',
  activity: 'Is it active?',
  isNew: 'New since the last examination? In a new patient: untreated?',
};

export const NEW_FINDING = 'new-finding';

/** The line that takes a new finding; its answers are those of the step it stands at. */
export function newFindingLine(draft: FindingDraft): Line {
  const step = stepOf(draft);
  return {
    id: NEW_FINDING,
    letter: '+',
    label: 'New finding',
    prompt: STEP_PROMPTS[step],
    entry: STEP_ENTRIES[step],
    mayBeUnknown: false,
    text: [draft.tooth, draft.surface !== NOT_NOTED && draft.surface, draft.kind && labelOfKind(draft.kind), draft.activity]
      .filter(Boolean)
      .join(', '),
    tone: 'new',
    wanted: false,
    reconfirmable: false,
    private: false,
    sources: [],
  };
}

/** The draft after one more answer, the finished finding, or what was wrong. */
export function afterFindingReply(
  draft: FindingDraft,
  reply: Reply,
): { readonly draft: FindingDraft } | { readonly finding: Finding } | { readonly problem: string } {
  if (reply.how !== 'asked') return { draft };
  const step = stepOf(draft);
  const value = String(reply.value);
  if (step === 'tooth')
    return TOOTH.test(value) ? { draft: { tooth: value } } : { problem: 'A tooth has two digits: 11 to 48, or 51 to 85 for a milk tooth.' };
  if (step !== 'isNew') return { draft: { ...draft, [step]: value } };
  return { finding: finish(draft, reply.value === true) };
}

function finish({ tooth, kind, surface, activity }: FindingDraft, isNew: boolean): Finding {
  if (tooth === undefined || kind === undefined) throw new RangeError('a finding needs its tooth and kind');
  return {
    tooth,
    kind,
    isNew,
    ...(surface && surface !== NOT_NOTED ? { surface: surface as NonNullable<Finding['surface']> } : {}),
    ...(activity ? { activity: activity as NonNullable<Finding['activity']> } : {}),
  };
}

export const labelOfKind = (kind: Kind): string => FINDING_KINDS.find((k) => k.id === kind)?.label ?? kind;

/** "13, facial" */
export const sayPlace = ({ tooth, surface }: Finding): string => (surface ? `${tooth}, ${surface}` : tooth);

/** "white spot, active" */
export function sayFinding({ kind, activity }: Finding): string {
  if (activity === undefined) return labelOfKind(kind);
  return `${labelOfKind(kind)}, ${activity === 'not-assessed' ? 'activity not assessed' : activity}`;
}
