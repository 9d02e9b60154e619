import type { SourceRef } from '../visit/answer.ts';
import type { Candidate } from './candidates.ts';
import type { Warning } from './checkItem.ts';
import { checkTogether, remarksOn } from './checkTogether.ts';
import { sayDose } from './dose/sayDose.ts';
import { protocolNameOf } from './local/localProtocol.ts';
import { findOverride, findSignature, type Signatures } from './signatures.ts';
import type { RegimenTables } from './tables.ts';
import type { Need, PersonFacts, PlanLine, SignedBy, SignedItem } from './types.ts';

interface LineView {
  readonly facts: PersonFacts;
  readonly needs: readonly Need[];
  readonly signatures: Signatures;
  readonly tables: RegimenTables;
}

/** One line of a plan, with everything that has to be said beside it. `others` are the lines that it would stand with. */
export function buildLine(candidate: Candidate, others: readonly Candidate[], view: LineView): PlanLine {
  const { item, state, meets, use, amountNote, amountKind, check } = candidate;
  const signature = state === 'signed' ? findSignature(view.signatures, item.id) : undefined;
  const reasons = needsOf(candidate, view.needs);
  const dose = sayDose(item, use, view.facts, view.tables);
  const remarks = remarksOn(
    item,
    others.map((o) => o.item),
    view.tables.interactions,
  ).map(({ id, action, source }): Warning => ({ ruleId: id, text: action, source }));
  return {
    shelfItemId: item.id,
    name: item.name,
    meets,
    state,
    ...(signature ? { signedBy: signedByOf(signature) } : {}),
    use,
    ...(check.localProtocol && { byProtocol: protocolNameOf(check.localProtocol) }),
    ...(amountNote === undefined ? {} : { amountNote }),
    ...(amountKind === undefined ? {} : { amountKind }),
    because: [
      ...reasons.map((n) => n.because),
      ...(isUntilSigned(candidate, others) ? [UNTIL_SIGNED] : []),
      ...(signature ? [`Signed by ${signature.by}.`] : []),
    ],
    ...(dose.length === 0 ? {} : { dose }),
    warnings: warningsOf(candidate, others, view),
    ...(remarks.length === 0 ? {} : { remarks }),
    sources: uniqueSources([...reasons.flatMap((n) => n.sources), ...(check.agent?.evidence ?? []).map((e) => e.source)]),
  };
}

export function signedByOf({ by, at, packs, until, standingOrder, override }: SignedItem): SignedBy {
  const covers = { ...(packs !== undefined && { packs }), ...(until !== undefined && { until }) };
  return { name: by, at, ...covers, ...(standingOrder && { standingOrder }), ...(override && { override }) };
}

const UNTIL_SIGNED = 'Until the high-fluoride paste is signed: then that one takes its place.';

const isUntilSigned = ({ item, meets }: Candidate, others: readonly Candidate[]): boolean =>
  meets.includes('fluoride-base') &&
  others.some((o) => o.item.id !== item.id && o.state === 'waiting-for-signature' && o.meets.includes('fluoride-base'));

/** The reading speaks through the antimicrobial need alone: what needs a signature never gives it as a reason. */
function needsOf({ meets, chosenFor }: Candidate, needs: readonly Need[]): readonly Need[] {
  return needs.filter(
    (n) => n.state === 'needed' && meets.includes(n.kind) && (n.kind !== 'antimicrobial' || chosenFor === 'antimicrobial'),
  );
}

function warningsOf({ item, check }: Candidate, others: readonly Candidate[], { signatures, tables }: LineView): readonly Warning[] {
  const lifted = check.stops.flatMap((bar): Warning[] => {
    const override = findOverride(signatures, bar);
    if (!override) return [];
    return [{ ruleId: bar.ruleId, text: `Lifted by ${override.by}, ${override.override?.reason}: ${bar.because}.`, source: bar.source }];
  });
  const toCheck = check.cautions.map(
    (c): Warning => ({ ruleId: c.ruleId, text: `Check and record: ${c.because}. ${c.action}`.trim(), source: c.source }),
  );
  const met = others.filter((o) => o.item.id !== item.id).flatMap((o) => checkTogether(item, o.item, tables.interactions));
  const together = met.map(({ interaction: { id, action, source } }): Warning => ({ ruleId: id, text: action, source }));
  const all = [...lifted, ...toCheck, ...check.warnings, ...together];
  return all.filter((w, i) => all.findIndex((o) => o.ruleId === w.ruleId && o.text === w.text) === i);
}

function uniqueSources(sources: readonly SourceRef[]): readonly SourceRef[] {
  return sources.filter((s, i) => sources.findIndex((o) => o.key === s.key && o.status === s.status) === i);
}
