import type { RuleLevel, SafetyRule } from '../../../core/regimen/tables.ts';
import { content } from '../../content.ts';
import { RuleTable } from './RuleTable.tsx';

const LEVEL_WORDS: Readonly<Record<RuleLevel, string>> = {
  stop: 'never proposed',
  caution: "waits for a dentist's signature",
  warn: 'shown on the line',
  info: 'on request',
};

export function SafetyRules() {
  const { rules, interactions, planRules } = content.regimen;
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
          heads={['Rule', 'About', 'Because', 'Then', 'Do instead']}
          rows={rules.map((r) => ({ id: r.id, cells: [r.id, aboutOf(r), r.because, sayLevel(r), r.action], source: r.source }))}
        />
      </details>
      <details>
        <summary>
          What is kept apart <span className="aside">{interactions.length} rules</span>
        </summary>
        <RuleTable
          label="What is kept apart"
          heads={['Rule', 'About', 'Because', 'Then', 'Do instead']}
          rows={interactions.map((r) => ({
            id: r.id,
            cells: [
              r.id,
              `${namesOf(r.agentIds)} with ${namesOf(r.withAgentIds)}`,
              r.because,
              r.apart === 'regimen' ? 'never both in one plan' : `not in the same ${r.apart}`,
              r.action,
            ],
            source: r.source,
          }))}
        />
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

const namesOf = (ids: readonly string[]) =>
  ids.map((id) => (id === '*' ? 'every item' : (content.regimen.agents.find((a) => a.id === id)?.name ?? id))).join(', ');

function aboutOf({ agentIds, traits = [] }: SafetyRule): string {
  return [namesOf(agentIds), traits.join(', ')].filter(Boolean).join('; ');
}

const sayLevel = (rule: SafetyRule) =>
  `${LEVEL_WORDS[rule.level]}${rule.level === 'stop' && rule.overridable === false ? '; cannot be overridden' : ''}`;
