import type { Choice } from '../../../core/visit/question.ts';
import type { Finding } from '../../../core/visit/types.ts';
import { findingId, sayFinding, sayPlace } from './findings.ts';
import type { Line } from './line.ts';

/** What may have become of a finding since it was noted, or what was wrong with it. */
interface Change extends Choice {
  /** What stands in its place; empty = taken out. */
  readonly becomes: (finding: Finding) => readonly Finding[];
}

const without = ({ activity: _, ...finding }: Finding): Finding => finding;
/** A change of kind is new today; how active it is was not asked. */
const turnsInto =
  (kind: Finding['kind'], hasActivity: boolean) =>
  (finding: Finding): readonly Finding[] => [
    { ...without(finding), kind, isNew: true, ...(hasActivity ? { activity: 'not-assessed' } : {}) },
  ];

const ACTIVE: Change = { id: 'active', label: 'active', becomes: (f) => [{ ...f, activity: 'active' }] };
const INACTIVE: Change = { id: 'inactive', label: 'arrested, inactive', becomes: (f) => [{ ...f, activity: 'inactive' }] };
const NOT_ASSESSED: Change = { id: 'not-assessed', label: 'activity not assessed', becomes: (f) => [{ ...f, activity: 'not-assessed' }] };
const CAVITY: Change = { id: 'cavity', label: 'now a cavity', becomes: turnsInto('cavity', true) };
const RESTORED: Change = { id: 'restored', label: 'restored', becomes: turnsInto('restoration', false) };
const REPLACED: Change = { ...RESTORED, label: 'replaced because of decay' };
const DEFECTIVE: Change = { id: 'defective', label: 'now defective', becomes: turnsInto('restoration-defective', false) };
const DECAY_BESIDE: Change = { id: 'decay-beside', label: 'new cavity beside it', becomes: (f) => [f, ...turnsInto('cavity', true)(f)] };
const ROOT_LESION: Change = { id: 'root-lesion', label: 'now a root lesion', becomes: turnsInto('root-lesion', true) };
const NEWNESS: Change = { id: 'newness', label: '', becomes: (f) => [{ ...f, isNew: !f.isNew }] };
const OUT: Change = { id: 'out', label: 'wrong or gone: take it out', becomes: () => [] };

const LESION = [ACTIVE, INACTIVE, NOT_ASSESSED];
const CHANGES: Readonly<Record<Finding['kind'], readonly Change[]>> = {
  'white-spot': [...LESION, CAVITY, RESTORED, NEWNESS, OUT],
  'enamel-radiograph': [...LESION, CAVITY, RESTORED, NEWNESS, OUT],
  'dentine-radiograph': [...LESION, CAVITY, RESTORED, NEWNESS, OUT],
  cavity: [...LESION, RESTORED, NEWNESS, OUT],
  'root-lesion': [...LESION, RESTORED, NEWNESS, OUT],
  restoration: [DEFECTIVE, DECAY_BESIDE, REPLACED, NEWNESS, OUT],
  'restoration-defective': [DECAY_BESIDE, REPLACED, NEWNESS, OUT],
  'root-exposed': [ROOT_LESION, RESTORED, NEWNESS, OUT],
  'acid-wear': [RESTORED, NEWNESS, OUT],
};

function changesOf(finding: Finding): readonly Change[] {
  const newness = finding.isNew ? 'seen before, not new' : finding.kind === 'restoration' ? 'recent' : 'new since last time';
  return CHANGES[finding.kind].map((change) => (change === NEWNESS ? { ...change, label: newness } : change));
}

/**
 * A line for each finding, so that one key opens it and one says what became of it.
 * @param letters  free letters, in order; carried restorations take none, since a tooth finds them too
 */
export function findingLines(findings: readonly Finding[], letters: readonly string[]): readonly Line[] {
  const free = [...letters];
  return findings.map((finding, i) => ({
    id: findingId(i),
    letter: isOldRestoration(finding) ? '' : (free.shift() ?? ''),
    label: sayPlace(finding),
    prompt: 'What became of it, or what was wrong?',
    entry: { kind: 'choice', choices: changesOf(finding) },
    mayBeUnknown: false,
    text: sayFinding(finding),
    tone: finding.isNew ? 'new' : 'carried',
    note: finding.isNew ? 'new' : 'seen before',
    wanted: false,
    reconfirmable: false,
    private: false,
    value: finding.activity,
    sources: [],
  }));
}

export const isOldRestoration = ({ kind, isNew }: Finding): boolean => kind === 'restoration' && !isNew;

/** The findings after one of them was changed; undefined where the line is none of theirs or the change does not fit. */
export function findingsAfter(findings: readonly Finding[], line: string, change: string): readonly Finding[] | undefined {
  const at = findings.findIndex((_, i) => findingId(i) === line);
  const finding = findings[at];
  const becomes = finding && changesOf(finding).find(({ id }) => id === change)?.becomes;
  return becomes && [...findings.slice(0, at), ...becomes(finding), ...findings.slice(at + 1)];
}
