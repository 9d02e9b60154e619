import { appliesAtAge } from '../risk/conditions.ts';
import { evaluateProtocol } from '../risk/evaluateProtocol.ts';
import { levelSentence } from '../risk/levelSentence.ts';
import type { ProtocolTable, RiskSettings } from '../risk/protocol.ts';
import type { Items, RiskResult } from '../risk/types.ts';
import type { MouthDecision, PracticeSettings } from './types.ts';

export interface LevelInput {
  readonly mouth: MouthDecision;
  readonly items: Items;
  readonly ageYears: number;
  readonly settings: PracticeSettings & RiskSettings;
  readonly protocols: readonly ProtocolTable[];
}

export interface ProposedLevel {
  /** The list that proposes; absent where no level applies or no list of the practice takes this age. */
  readonly table: ProtocolTable | undefined;
  readonly proposed: RiskResult | null;
  readonly sentence: string;
}

/** The practice's own list for this age proposes. Where no level applies, the sentence says why. */
export function proposeLevel({ mouth, items, ageYears, settings, protocols }: LevelInput): ProposedLevel {
  const none = (sentence: string): ProposedLevel => ({ table: undefined, proposed: null, sentence });
  if (mouth.kind === 'level-does-not-apply') return none(mouth.sentences.join(' '));
  const method = settings.methodByAge.find((m) => ageYears >= m.fromAgeYears && (m.belowAgeYears === null || ageYears < m.belowAgeYears));
  const table = protocols.find((t) => t.id === method?.protocol);
  if (!table) return none(`No method is set for age ${ageYears}: choose one under Rules.`);
  if (!appliesAtAge(table, ageYears)) return none(`${table.screenName} is not for age ${ageYears}: choose another method under Rules.`);
  const proposed = evaluateProtocol(table, items, ageYears, settings);
  return { table, proposed, sentence: levelSentence(proposed, (item) => table.items[item]?.label ?? item) };
}
