import { type Proposal, type ProposalInput, toProposal } from '../calculators/regimen/proposalOutput.ts';
import { regimenProposal } from '../calculators/regimen/regimenProposal.ts';
import { content } from '../content/allContent.ts';
import { usualRhythms } from '../content/dayRhythms.ts';
import { rhythmOfDay, usualRhythm } from '../core/regimen/dayStrip/rhythmOfDay.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import type { DescribedDays } from '../core/visit/describedDays.ts';
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
  return toProposal({ plan, needs, shelf, settings, ...dayOf(input.visit.acidDay, ageYears) });
}

/** Of several described days the one that stands on the leaflet, else the first; which it was is said. */
function dayOf(described: DescribedDays | undefined, ageYears: number): Pick<ProposalInput, 'rhythm' | 'day'> {
  const { days = [], onLeaflet = 0 } = described ?? {};
  const told = days[onLeaflet];
  if (!told) return { rhythm: usualRhythm(ageYears, usualRhythms) };
  return { rhythm: rhythmOfDay(told), day: days.length > 1 ? (told.label ?? `day ${onLeaflet + 1}`) : null };
}
