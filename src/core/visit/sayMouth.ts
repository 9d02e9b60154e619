import { evaluateProtocol } from '../risk/evaluateProtocol.ts';
import { GLANDS_FIRST } from '../risk/mouthFirst.ts';
import type { RiskSettings } from '../risk/protocol.ts';
import { FLOW_MEASURED, type LevelByFlow, sayGlands } from '../risk/sayGlands.ts';
import type { Items } from '../risk/types.ts';
import type { AnswerValue } from './answer.ts';
import type { ProposedLevel } from './proposeLevel.ts';
import type { MouthDecision } from './types.ts';

const CONFIRMED_BEFORE = 'A level was confirmed before this was recorded: it does not count.';

export interface MouthSentencesInput {
  readonly mouth: MouthDecision;
  readonly isConfirmed: boolean;
  readonly known: Readonly<Record<string, AnswerValue>>;
  readonly items: Items;
  readonly level: Pick<ProposedLevel, 'table' | 'proposed'>;
  readonly ageYears: number;
  readonly settings: RiskSettings;
}

/** The sentences of a mouth with what can only be said once the list has spoken. */
export function sayMouth({ mouth, isConfirmed, known, items, level, ageYears, settings }: MouthSentencesInput): readonly string[] {
  const { kind, reasons, sentences } = mouth;
  if (kind === 'level-does-not-apply') return isConfirmed ? [...sentences, CONFIRMED_BEFORE] : sentences;
  if (!reasons.includes('lost-gland-function')) return sentences;
  const glands = sayGlands({ known, items, levelByFlow: levelByFlow(level, items, ageYears, settings) });
  return sentences.map((sentence) => (sentence === GLANDS_FIRST ? glands : sentence));
}

function levelByFlow(
  { table, proposed }: Pick<ProposedLevel, 'table' | 'proposed'>,
  items: Items,
  ageYears: number,
  settings: RiskSettings,
): LevelByFlow | undefined {
  if (!table || !proposed || proposed.notYet) return undefined;
  const ifMeasured = (flow: Items) => evaluateProtocol(table, { ...items, ...flow }, ageYears, settings).levelUnknownNotTicked;
  return { low: ifMeasured(FLOW_MEASURED.low), normal: ifMeasured(FLOW_MEASURED.normal) };
}
