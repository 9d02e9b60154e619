import { weightDoubtOf, withoutDoubtfulWeight } from './dose/weightDoubt.ts';
import { itemPpm, itemTraits } from './itemTraits.ts';
import { legalStatusOf, type OwnLegalStatuses, releaseUnder } from './legalStatus.ts';
import { type LocalProtocol, ruleByProtocol } from './local/localProtocol.ts';
import { hitsOfPlanRules } from './planRuleHits.ts';
import type { Agent, SafetyRule } from './tables.ts';
import { findAllergiesToPack, type RuleView, type TriggerPart, triggerState } from './triggerState.ts';
import type { Exclusion, PlanLine, ShelfItem } from './types.ts';

/** A reason to keep a pack out, and whether a dentist's signature with a reason may lift it. */
export interface Bar extends Exclusion {
  readonly overridable: boolean;
  /** What to do instead, or to check. */
  readonly action: string;
  /** Ask first: names of the facts that are not known. */
  readonly unknown?: readonly string[] | undefined;
}

export type Warning = PlanLine['warnings'][number];

/** Everything that the rules say of one pack for one person. */
export interface ItemCheck {
  readonly item: ShelfItem;
  readonly agent: Agent | undefined;
  readonly stops: readonly Bar[];
  readonly asks: readonly Bar[];
  readonly cautions: readonly Bar[];
  readonly warnings: readonly Warning[];
  /** The release that holds, the stricter of shelf item and agent. */
  readonly release: ShelfItem['release'];
  /** Something in the pack answers to an allergy that was told. */
  readonly isAllergic: boolean;
  /** The practice's own protocol that covers this person and pack. It lifts nothing of the above. */
  readonly localProtocol?: LocalProtocol | undefined;
}

export interface CheckView extends RuleView {
  /** Legal statuses that the practice set itself. */
  readonly legal?: OwnLegalStatuses | undefined;
  /** The practice's own, those that hold on the day. */
  readonly localProtocols?: readonly LocalProtocol[] | undefined;
  /** A mouth without natural teeth: nothing that is for teeth. */
  readonly hasNoTeeth?: boolean | undefined;
  /** A weight that cannot be right, asked back; it is then not among the facts. */
  readonly weightDoubt?: string | undefined;
}

export type CheckItemInput = Omit<CheckView, 'traits' | 'weightDoubt'>;

const RELEASES: readonly ShelfItem['release'][] = ['anyone', 'prescription', 'dentist'];

/**
 * Applies every safety rule to one pack and one person. An unknown fact that a rule depends on makes the pack "ask first"; it never passes
 * the rule. Two packs together are looked at by `checkTogether`.
 * @returns stops, asks, cautions and warnings, in the order of the rules, then the rules with arithmetic
 */
export function checkItem(input: CheckItemInput): ItemCheck {
  const { item, tables } = input;
  const { weights } = tables.fluoride;
  const facts = withoutDoubtfulWeight(input.facts, weights);
  const view: CheckView = { ...input, facts, traits: itemTraits(item), weightDoubt: weightDoubtOf(input.facts, weights) };
  const agent = tables.agents.find((a) => a.id === item.agentId);
  const hits = tables.rules.filter((rule) => isAbout(rule, view)).map((rule) => ({ rule, ...triggerState(rule.trigger, view) }));
  const fired = hits.filter(({ state, rule }) => state !== 'not-met' && rule.level !== 'info' && !isSaidByAnother(rule, hits, view));
  const planHits = hitsOfPlanRules(view, agent, itemPpm(item));
  const bars = [
    ...fired.filter(({ rule }) => rule.level !== 'warn').map(({ rule, state, parts }) => barOf(rule, state, parts, view)),
    ...planHits.bars,
  ];
  const ruling = agent && ruleByProtocol(view, agent);
  const warned = fired.filter(({ rule }) => rule.level === 'warn');
  return {
    item,
    agent,
    stops: bars.filter((b) => b.level === 'stop'),
    asks: bars.filter((b) => b.level === 'ask-first'),
    cautions: bars.filter((b) => b.level === 'caution'),
    warnings: [...warned.map(({ rule }) => ({ ruleId: rule.id, text: rule.action, source: rule.source })), ...planHits.warnings],
    release: releaseHere(view, agent),
    isAllergic: findAllergiesToPack(view).length > 0,
    ...(ruling?.kind === 'covers' && { localProtocol: ruling.protocol }),
  };
}

function isAbout(rule: SafetyRule, { item, traits, facts, jurisdiction }: CheckView): boolean {
  const isPlaceKnown = jurisdiction !== 'unknown' && jurisdiction !== 'by-hand';
  if (rule.onlyIn && isPlaceKnown && !rule.onlyIn.includes(jurisdiction)) return false;
  if (rule.onlyBelowAgeYears !== undefined && facts.ageYears >= rule.onlyBelowAgeYears) return false;
  const isNamed = rule.agentIds.includes('*') || rule.agentIds.includes(item.agentId);
  const holds = rule.traits?.some((t) => traits.has(t)) ?? false;
  return rule.appliesOnlyIfTrait ? isNamed && holds : isNamed || holds;
}

/** The general allergy rule steps back where rules of their own name every allergy that this pack answers to. */
function isSaidByAnother(rule: SafetyRule, hits: readonly { rule: SafetyRule; state: string }[], view: CheckView): boolean {
  if (!rule.trigger.allergyToContents) return false;
  const allergies = findAllergiesToPack(view);
  const named = hits.filter((h) => h.state === 'met' && h.rule.level === 'stop').flatMap((h) => h.rule.trigger.allergies ?? []);
  return allergies.length > 0 && allergies.every((id) => named.includes(id));
}

function barOf(rule: SafetyRule, state: 'met' | 'unknown' | 'not-met', parts: readonly TriggerPart[], view: CheckView): Bar {
  const isAsk = state === 'unknown';
  const labels = parts.map((p) => p.label).join(', ');
  const questions = parts.flatMap(({ ask }) => (ask === 'pack' ? [] : (view.tables.askFor[ask] ?? [])));
  return {
    shelfItemId: view.item.id,
    ruleId: rule.id,
    level: isAsk ? 'ask-first' : rule.level === 'stop' ? 'stop' : 'caution',
    because: `${isAsk ? 'not known yet: ' : ''}${labels === '' ? '' : `${labels}: `}${rule.because}`,
    ask: isAsk ? [...new Set(questions)] : undefined,
    private: parts.some((p) => p.private),
    source: rule.source,
    overridable: rule.overridable !== false,
    action: rule.action,
    unknown: isAsk ? parts.map((p) => p.label) : undefined,
  };
}

/** Of what the item, its agent and the law of the place ask, the strictest. */
function releaseHere(view: CheckView, agent: Agent | undefined): ShelfItem['release'] {
  const byLaw = releaseUnder(legalStatusOf(view.item.agentId, view, view.tables.legalStatuses));
  return [agent?.release ?? 'dentist', byLaw].reduce(stricter, view.item.release);
}

function stricter(a: ShelfItem['release'], b: ShelfItem['release']): ShelfItem['release'] {
  return RELEASES.indexOf(a) >= RELEASES.indexOf(b) ? a : b;
}
