import type { NoisePrior, NoiseTable } from '../../../core/reading/noiseTable.ts';
import { content } from '../../content.ts';
import { formatNumber } from '../../format.ts';
import { RuleTable } from './RuleTable.tsx';

const FAILING = { 'not-counted': 'not counted', flag: 'counted, with caution' } as const;
const UNKNOWN = { flag: 'counted, with caution', say: 'said, nothing more', list: 'counted; stands under why' } as const;

const sayPrior = ({ name, cv, degreesOfFreedom }: NoisePrior): string[] => [
  name,
  cv === null ? 'as typed for the meter' : `${formatNumber(100 * cv)} %, only beside studies`,
  formatNumber(degreesOfFreedom),
];

const saySteps = ({ typed, looks }: NoiseTable): string =>
  `A figure typed as measured counts as ${formatNumber(typed.degreesOfFreedom)}. The limits of change allow for ${formatNumber(looks.visits)} readings in a row: noise alone passes one at least once in at most ${formatNumber(100 * looks.chance)} of 100 people. All these weights are our proposal.`;

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
      <h3>Noise of a reading</h3>
      <p>
        What is taken of it until the practice has measured its own, and what that counts beside its studies, in degrees of freedom. A part
        that stands only beside studies is left out by name until there is one. {saySteps(content.readingNoise)}
      </p>
      <RuleTable
        label="Noise of a reading"
        heads={['Part', 'Assumed', 'Counts as']}
        rows={Object.values(content.readingNoise.parts).map((prior) => ({ id: prior.part, cells: sayPrior(prior), source: prior.source }))}
      />
    </section>
  );
}
