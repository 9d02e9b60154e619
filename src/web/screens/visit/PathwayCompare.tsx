import { settleTables } from '../../../core/regimen/disagreement/settleTables.ts';
import { comparePathways, type PathwayView } from '../../../core/regimen/needs/comparePathways.ts';
import { pathwayTopicName } from '../../../core/regimen/needs/sayDifferences.ts';
import { content } from '../../content.ts';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { useVisit } from './visitContext.ts';

/** What published pathways would give this person at this level, folded: the one that the plan is made from first. */
export function PathwayCompare() {
  const { assessment, isPrivateHidden } = useVisit();
  const { confirmed, mouth } = assessment;
  if (!confirmed || isPrivateHidden || mouth.kind === 'level-does-not-apply') return null;
  return (
    <div className="small">
      Published pathways differ.{' '}
      <Why label="compare" about="published pathways">
        <Compared />
      </Why>
    </div>
  );
}

function Compared() {
  const { assessment, input } = useVisit();
  const { facts, confirmed } = assessment;
  const { jurisdiction, disagreements } = input.practice.settings;
  const comparison = comparePathways({
    facts,
    confirmed: confirmed ?? undefined,
    findings: input.visit.findings,
    jurisdiction,
    tables: settleTables(content.regimen, disagreements),
  });
  if (!comparison) return null;
  const { level, pathways, silent, differences } = comparison;
  return (
    <>
      <p>
        What each would give at level {level}. Each was written for its own list of levels, none is the truth, and none lifts a safety rule.
        The swab has no part in them.
      </p>
      {differences.length > 0 && (
        <>
          <p>Where they differ:</p>
          <ul className="plain-list">
            {differences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {pathways.map((pathway) => (
        <details key={pathway.id} open={pathway.isOwn}>
          <summary>
            {pathway.name} <span className="aside">{pathway.isOwn ? "your practice's" : 'not used for this plan'}</span>
          </summary>
          <PathwayLines pathway={pathway} />
        </details>
      ))}
      {silent.length > 0 && <p>Nothing for this person: {silent.map(({ name, because }) => `${name} (${because})`).join('; ')}.</p>}
    </>
  );
}

function PathwayLines({ pathway: { called, edition, gives, source } }: { readonly pathway: PathwayView }) {
  return (
    <>
      <p>
        Edition {edition}; its row: {called}.
      </p>
      <ul className="plain-list">
        {gives.map(({ topic, says, tooYoung }) => (
          <li key={topic}>
            {pathwayTopicName(topic)}: {says}
            {tooYoung.length > 0 && <span className="unknown block">Not at this age here: {tooYoung.join(', ')}</span>}
          </li>
        ))}
      </ul>
      <SourceList sources={[source]} />
    </>
  );
}
