import { type Proposal, toProposal } from '../calculators/regimen/proposalOutput.ts';
import { regimenProposal } from '../calculators/regimen/regimenProposal.ts';
import { content } from '../content/allContent.ts';
import { settleTables } from '../core/regimen/disagreement/settleTables.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { rhythmOfVisit } from '../core/visit/rhythmOfVisit.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { answerOne } from './answerOne.ts';
import { outputOf } from './calcCommand.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { openInput } from './openInput.ts';
import { planText } from './planText.ts';
import { readVisit } from './readVisit.ts';
import { reportFailure } from './reportFailure.ts';
import { visitWords } from './visitWords.ts';

export interface PlanOptions {
  readonly json?: boolean | undefined;
}

/** `plan FILE`: regimens for the person of a visit file, or of an input of the calculator `regimen-proposal`. */
export function planCommand(file: string, { json }: PlanOptions, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, () =>
    answerOne(io, openInput(file, io).chunks, (value) => {
      const proposal = isVisit(value) ? proposalOfVisit(value) : (outputOf(regimenProposal, value) as Proposal);
      return json ? JSON.stringify(proposal, null, 2) : planText(proposal, visitWords);
    }),
  );
}

const isVisit = (value: unknown): boolean => typeof value === 'object' && value !== null && 'visit' in value;

function proposalOfVisit(value: unknown): Proposal {
  const input = readVisit(value);
  const { plan, needs, ageYears } = assessVisit(input, content);
  const { shelf, settings } = input.practice;
  const tables = settleTables(content.regimen, settings.disagreements);
  return toProposal({
    plan,
    needs,
    shelf,
    settings,
    tables,
    rhythm: rhythmOfVisit(input.visit, ageYears, content.dayUses),
    day: nameOfDay(input.visit.acidDay),
  });
}

/** Of several described days the one that the regimen is placed in is said. */
function nameOfDay(described: VisitInput['visit']['acidDay']): string | null {
  const { days = [], onLeaflet = 0 } = described ?? {};
  return days.length > 1 ? (days[onLeaflet]?.label ?? `day ${onLeaflet + 1}`) : null;
}
