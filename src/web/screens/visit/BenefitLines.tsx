import { benefitOf } from '../../../core/regimen/benefit/benefitOf.ts';
import { content } from '../../content.ts';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { useVisit } from './visitContext.ts';

/** What trials found, and how many it takes, for the clinician alone: under an open line, and never where a patient looks. */
export function BenefitLines({ shelfItemId }: { readonly shelfItemId: string }) {
  const { assessment, input, isPrivateHidden, isShownToPatient } = useVisit();
  const item = input.practice.shelf.find(({ id }) => id === shelfItemId);
  if (!item || isPrivateHidden || isShownToPatient) return null;
  const benefit = benefitOf({
    agentId: item.agentId,
    ageYears: assessment.ageYears,
    confirmed: assessment.confirmed ?? undefined,
    tables: content.regimen,
  });
  if (!benefit) return null;
  return (
    <div>
      What trials found, for clinicians.{' '}
      <Why label="figures" about={`figures of trials for ${item.name}`}>
        <ul className="plain-list">
          {benefit.says.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <p>Figures of different trials are not multiplied.</p>
        <SourceList sources={benefit.sources} />
      </Why>
    </div>
  );
}
