import { content } from '../../content.ts';
import { RuleTable } from './RuleTable.tsx';

const FAILING = { 'not-counted': 'not counted', flag: 'counted, with caution' } as const;
const UNKNOWN = { flag: 'counted, with caution', say: 'said, nothing more', list: 'counted; stands under why' } as const;

export function SwabRules() {
  return (
    <section id="swab" aria-label="Swab">
      <h2>Swab</h2>
      <p>
        When a reading counts. It informs one question, whether an antimicrobial belongs in the home care; it enters no level, because no
        published list has it as an item.
      </p>
      <RuleTable
        label="Conditions of a swab"
        heads={['Condition', 'When it fails', 'When it is not known']}
        rows={content.swabConditions.map((c) => ({ id: c.id, cells: [c.label, FAILING[c.failing], UNKNOWN[c.unknown]], source: c.source }))}
      />
    </section>
  );
}
