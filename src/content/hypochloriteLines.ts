import type { SourceRef } from '../core/visit/answer.ts';

/** Said wherever a hypochlorite rinse is worked out, whatever the figures are. */
export interface HypochloriteLine {
  readonly says: string;
  readonly source: SourceRef;
}

const notes: SourceRef = { key: 'hypochloriteNotes', status: 'memory' };

/** For the professional, most urgent first. The rules that stop the rinse for a person are C16, I02 and I03 of the safety rules. */
export const hypochloriteLines: readonly HypochloriteLine[] = [
  {
    says: 'Never mix bleach with acid, ammonia, cleaners or any other agent: acid frees chlorine gas.',
    source: { key: 'generalChemistry', status: 'derived' },
  },
  { says: 'Never with chlorhexidine in one plan: they form a brown solid.', source: { key: 'khatib2020', status: 'read' } },
  {
    says: 'Never under 18, in pregnancy or breast-feeding, with asthma, a sore or ulcerated mouth, trouble swallowing or spitting out, an eating disorder, a risk of self-harm, failing memory, an allergy to chlorine, or with a young child in the home.',
    source: { key: 'hypochloriteNotes', status: 'mixed', note: 'memory and our own rule' },
  },
  {
    says: 'Plain household bleach only: nothing scented, thickened or made not to splash.',
    source: notes,
  },
  {
    says: 'Make it fresh and throw the rest away the same day. Note the date on which the stock was opened: it weakens, so the rinse may be weaker than worked out.',
    source: { key: 'project', status: 'proposal', note: 'the careful end of what was published' },
  },
  {
    says: 'It is used in gum care; no trial on decay and no licensed product was found.',
    source: { key: 'hypochloriteTrials', status: 'read' },
  },
];
