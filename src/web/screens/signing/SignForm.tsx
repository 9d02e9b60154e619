import { useState } from 'react';
import { TextLine } from '../../parts/fields.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import type { CoverLimits } from './coverDraft.ts';
import { problemOfLine, readCover } from './coverDraft.ts';

export interface Covers {
  readonly packs?: number;
  readonly until?: string;
}

interface SignFormProps {
  /** Words for a screen reader: what is signed, for whom. */
  readonly about: string;
  readonly limits: CoverLimits;
  /** What the server would not do, in its words. */
  readonly problem?: string | null | undefined;
  readonly onSign: (covers: Covers) => void;
  readonly onLeave: () => void;
}

/** For how many packs somebody signs, and to which day. */
export function SignForm({ about, limits, problem, onSign, onLeave }: SignFormProps) {
  const [packs, setPacks] = useState('');
  const [until, setUntil] = useState('');
  const [isTried, setTried] = useState(false);
  const { covers, problems } = readCover({ packs, until }, limits);
  const shown = isTried ? problems : {};
  const inServerWords = { packs: problemOfLine(problem, 'packs'), until: problemOfLine(problem, 'until') };
  const attempt = () => {
    setTried(true);
    const isReady = Object.keys(problems).length === 0;
    if (isReady) onSign(covers);
    return isReady;
  };
  return (
    <SmallForm
      about={about}
      className="sign-form"
      saveWords="Sign"
      problem={inServerWords.packs || inServerWords.until ? null : problem}
      refusal={problem}
      onTry={attempt}
      onLeave={onLeave}
    >
      <TextLine
        label="Packs in all"
        kind="number"
        value={packs}
        hint={hintOfPacks(limits)}
        problem={shown.packs ?? inServerWords.packs}
        onChange={setPacks}
      />
      <TextLine
        label="Last day"
        kind="number"
        value={until}
        hint={HINT_OF_DAY}
        problem={shown.until ?? inServerWords.until}
        onChange={setUntil}
      />
    </SmallForm>
  );
}

function hintOfPacks({ given, order }: CoverLimits): string {
  const most = order ? ` The order covers at most ${order.packs ?? 1}.` : '';
  if (given > 0) return `From the visit on: ${given} went already and ${given === 1 ? 'is' : 'are'} counted too.${most}`;
  return `Empty: one pack. From the visit on: what goes at the visit itself counts too.${most}`;
}

const HINT_OF_DAY =
  'Year, month and day, like 20270307: the last day on which a pack may go. Empty: no last day. Twelve months after a visit nothing more goes by it in any case, a limit of our own.';
