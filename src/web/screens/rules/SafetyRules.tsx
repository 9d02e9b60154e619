import { settableByRule } from '../../../core/regimen/disagreement/settableByRule.ts';
import { settleTables } from '../../../core/regimen/disagreement/settleTables.ts';
import { atPlace } from '../../../core/regimen/places.ts';
import type { Interaction, RuleLevel, SafetyRule } from '../../../core/regimen/tables.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content } from '../../content.ts';
import { sayBothSides } from './disagreements.ts';
import { RuleTable } from './RuleTable.tsx';

const LEVEL_WORDS: Readonly<Record<RuleLevel, string>> = {
  stop: 'never proposed',
  caution: "waits for a dentist's signature",
  warn: 'shown on the line',
  info: 'on request',
};

interface SettingsProp {
  readonly settings: PracticeSettings;
}

/** The rules as they hold in this practice: where sources disagree, by the side that it takes. */
export function SafetyRules({ settings }: SettingsProp) {
  const { rules, interactions, planRules } = settleTables(content.regimen, settings.disagreements);
  return (
    <section id="safety" aria-label="Safety rules">
      <h2>Safety rules</h2>
      <p>What keeps an item of the shelf from a person. A fact that is not known never passes a rule: the item asks first.</p>
      <details>
        <summary>
          Who an item is not for <span className="aside">{rules.length} rules</span>
        </summary>
        <RuleTable
          label="Who an item is not for"
          isProse
          heads={['Rule', 'About', 'Because', 'Then', 'Do instead']}
          rows={rules.map((r) => ({
            id: r.id,
            cells: [r.id, aboutOf(r), <RuleBecause key={r.id} rule={r} settings={settings} />, sayLevel(r), r.action],
            source: r.source,
          }))}
        />
        <NotInForce printed={content.regimen.rules} inForce={rules} settings={settings} />
      </details>
      <details>
        <summary>
          What is kept apart <span className="aside">{interactions.length} rules</span>
        </summary>
        <RuleTable
          label="What is kept apart"
          isProse
          heads={['Rule', 'About', 'Because', 'Then', 'Do instead']}
          rows={interactions.map((r) => ({
            id: r.id,
            cells: [
              r.id,
              `${namesOf(r.agentIds)} with ${namesOf(r.withAgentIds)}`,
              <span key={r.id}>
                {r.because}
                <ByChoice id={r.id} settings={settings} />
              </span>,
              sayApart(r),
              r.action,
            ],
            source: r.source,
          }))}
        />
        <NotInForce printed={content.regimen.interactions} inForce={interactions} settings={settings} />
      </details>
      <details>
        <summary>
          Rules that need arithmetic or a setting <span className="aside">{Object.keys(planRules).length} rules</span>
        </summary>
        <RuleTable
          label="Rules that need arithmetic or a setting"
          heads={['Rule', 'Because', 'A dentist may override']}
          rows={Object.entries(planRules).map(([id, r]) => ({
            id,
            cells: [id, r.because, r.overridable ? 'yes, with a reason' : 'no'],
            source: r.source,
          }))}
        />
      </details>
    </section>
  );
}

/** The reason, the age that holds here, and whose choice it is. */
function RuleBecause({ rule: { id, because, trigger }, settings }: SettingsProp & { readonly rule: SafetyRule }) {
  const years = trigger.ageBelowYears ? atPlace(trigger.ageBelowYears, settings.jurisdiction) : 0;
  return (
    <>
      {because}
      {years > 0 && <span className="aside block">Applies here under {years} years.</span>}
      <ByChoice id={id} settings={settings} />
    </>
  );
}

function ByChoice({ id, settings }: SettingsProp & { readonly id: string }) {
  const row = settableByRule(content.regimen).get(id);
  return row ? <span className="aside block">{sayBothSides(row, settings)}</span> : null;
}

interface NotInForceProps extends SettingsProp {
  readonly printed: readonly { readonly id: string; readonly because: string }[];
  readonly inForce: readonly { readonly id: string }[];
}

/** What falls away by the side that is taken is named, so that nobody looks for it in vain. */
function NotInForce({ printed, inForce, settings }: NotInForceProps) {
  const fallen = printed.filter(({ id }) => !inForce.some((rule) => rule.id === id));
  if (fallen.length === 0) return null;
  return (
    <ul className="plain-list small">
      {fallen.map(({ id, because }) => (
        <li key={id}>
          {id} does not hold here: {because}. <ByChoice id={id} settings={settings} />
        </li>
      ))}
    </ul>
  );
}

const namesOf = (ids: readonly string[]) =>
  ids.map((id) => (id === '*' ? 'every item' : (content.regimen.agents.find((a) => a.id === id)?.name ?? id))).join(', ');

function aboutOf({ agentIds, traits = [] }: SafetyRule): string {
  return [namesOf(agentIds), traits.join(', ')].filter(Boolean).join('; ');
}

const sayLevel = (rule: SafetyRule) =>
  `${LEVEL_WORDS[rule.level]}${rule.level === 'stop' && rule.overridable === false ? '; cannot be overridden' : ''}`;

function sayApart({ apart, apartMinutes, level }: Interaction): string {
  if (level === 'info') return LEVEL_WORDS.info;
  if (apartMinutes !== undefined) return `${apartMinutes} minutes apart`;
  if (apart !== 'regimen') return `not in the same ${apart}`;
  return level === 'stop' ? 'never both in one plan' : `both in one plan: ${LEVEL_WORDS[level]}`;
}
