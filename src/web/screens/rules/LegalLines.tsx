import { placeDependentAgentIds } from '../../../content/legalStatus.ts';
import { LEGAL_STATUSES, type LegalStatus, legalStatusOf, type OwnLegalStatuses, presetStatus } from '../../../core/regimen/legalStatus.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content } from '../../content.ts';
import { SelectLine } from '../../parts/fields.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';

export const LEGAL_WORDS: Readonly<Record<LegalStatus, string>> = {
  'over-the-counter': 'sold without a prescription',
  pharmacy: 'sold by a pharmacist',
  professional: 'used by the professional',
  prescription: 'on prescription',
  dentist: 'by the dentist only',
  'not-sold': 'not sold or not allowed',
};
export const NOT_SET = 'not set: it is not offered until it is';
const AS_SOURCES_SAY = '';

const nameOf = (agentId: string) => content.regimen.agents.find((a) => a.id === agentId)?.name ?? agentId;

/** How each kind of product may be given here, where that differs by place. */
export function sayLegal(settings: PracticeSettings): readonly (readonly [string, string])[] {
  return placeDependentAgentIds.map((id) => {
    const status = legalStatusOf(id, settings, content.regimen.legalStatuses);
    return [`In law, ${nameOf(id)}`, status === undefined ? NOT_SET : LEGAL_WORDS[status]];
  });
}

interface LegalLinesProps {
  readonly settings: PracticeSettings;
  readonly onChange: (legal: OwnLegalStatuses) => void;
}

/** One choice for each product whose status differs by place; what the sources say of the place stands as the first choice. */
export function LegalLines({ settings, onChange }: LegalLinesProps) {
  const { legal = {}, jurisdiction } = settings;
  const set = (id: string, status: LegalStatus | typeof AS_SOURCES_SAY) => {
    const { [id]: _before, ...others } = legal;
    onChange(status === AS_SOURCES_SAY ? others : { ...others, [id]: status });
  };
  return (
    <fieldset>
      <legend>How it may be given here, by law</legend>
      {placeDependentAgentIds.map((id) => {
        const preset = presetStatus(id, jurisdiction, content.regimen.legalStatuses);
        const first = preset === undefined ? 'Not set: not offered' : `As the sources say: ${LEGAL_WORDS[preset.status]}`;
        return (
          <SelectLine<LegalStatus | ''>
            key={id}
            label={nameOf(id)}
            value={legal[id] ?? AS_SOURCES_SAY}
            options={[
              { id: AS_SOURCES_SAY, label: first },
              ...LEGAL_STATUSES.map((status) => ({ id: status, label: LEGAL_WORDS[status] })),
            ]}
            hint={
              preset && (
                <Why label="source" about={`the law on ${nameOf(id)}`}>
                  <SourceList sources={[preset.source]} />
                </Why>
              )
            }
            onChange={(status) => set(id, status)}
          />
        );
      })}
    </fieldset>
  );
}
