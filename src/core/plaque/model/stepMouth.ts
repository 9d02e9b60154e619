// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { PlaqueModel } from './buildModel.ts';
import {
  ACETATE,
  CARBONATE,
  MOUTH_ACETATE,
  MOUTH_CARBONATE,
  MOUTH_PHOSPHATE,
  MOUTH_PROTONS,
  MOUTH_SUGAR,
  MOUTH_UREA,
  PHOSPHATE,
  PROTONS,
  SUGAR,
  tailAt,
  UREA,
} from './layout.ts';
import { filmExchangePerS, flowAt, type Phase, releaseAt } from './phases.ts';
import type { Workspace } from './workspace.ts';

/** Between two values, in proportion to where the flow stands between its two marks. */
function byFlow(model: PlaqueModel, flow: number, low: number, high: number): number {
  const { salivaLowFlowMlPerMin, salivaHighFlowMlPerMin } = model.constants;
  const share = (flow - salivaLowFlowMlPerMin) / (salivaHighFlowMlPerMin - salivaLowFlowMlPerMin);
  return low + (high - low) * Math.max(0, Math.min(1, share));
}

/** Saliva as it comes from the glands at a flow, mmol/L, by solute; the last are its protons. @source bardow2000 */
export function fillFreshSaliva(model: PlaqueModel, flowMlPerMin: number, saliva: Float64Array): void {
  const { acidity, constants } = model;
  const bicarbonate = Math.min(
    constants.salivaBicarbonateMost,
    constants.salivaBicarbonateAtRest + constants.salivaBicarbonatePerFlow * flowMlPerMin,
  );
  const dioxide = constants.salivaCarbonDioxideMmolPerL;
  const h = (acidity.carbonic * dioxide) / bicarbonate;
  const carbonate = (bicarbonate * acidity.bicarbonate) / h;
  const phosphate = byFlow(model, flowMlPerMin, constants.salivaPhosphateLowFlow, constants.salivaPhosphateHighFlow);
  const acetate = constants.salivaAcetateMmolPerL;
  saliva[ACETATE] = acetate;
  saliva[PHOSPHATE] = phosphate;
  saliva[CARBONATE] = dioxide + bicarbonate + carbonate;
  saliva[UREA] = byFlow(model, flowMlPerMin, constants.salivaUreaLowFlow, constants.salivaUreaHighFlow);
  const weak = (acetate * h) / (h + acidity.acetic) + (phosphate * h) / (h + acidity.phosphate);
  saliva[PROTONS] = weak + dioxide - carbonate + acidity.free * h - acidity.water / h;
}

/** The places of the mouth and the solutes they stand for. */
const PAIRS = [
  [MOUTH_ACETATE, ACETATE],
  [MOUTH_PHOSPHATE, PHOSPHATE],
  [MOUTH_CARBONATE, CARBONATE],
  [MOUTH_UREA, UREA],
  [MOUTH_PROTONS, PROTONS],
] as const;

/**
 * One step of the saliva in the mouth: towards the food while that lasts, else cleared by swallowing at the rate of the flow at the start
 * of the step. Fills in what the film meets at the end of the step.
 */
export function stepMouth(model: PlaqueModel, work: Workspace, phase: Phase, from: Float64Array, to: Float64Array): void {
  const { seconds, saliva } = work;
  const tail = tailAt(model.cells);
  const sugar = from[tail + MOUTH_SUGAR]!;
  const { food } = phase;
  const perS = food === undefined ? model.clearancePerSPerFlow * flowAt(phase, sugar) : 1 / model.constants.mixingTimeS;
  const kept = Math.exp(-perS * seconds);
  const towards = food === undefined ? releaseAt(phase.releases, work.endS) / perS : food[MOUTH_SUGAR]!;
  const sugarAfter = towards + (sugar - towards) * kept;
  const flow = flowAt(phase, sugarAfter);
  fillFreshSaliva(model, flow, saliva);
  to[tail + MOUTH_SUGAR] = sugarAfter;
  saliva[SUGAR] = sugarAfter;
  for (let j = 0; j < PAIRS.length; j += 1) {
    const place = PAIRS[j]![0];
    const solute = PAIRS[j]![1];
    const given = food === undefined ? Number.NaN : food[place]!;
    const more = Number.isNaN(given) ? 0 : given - saliva[solute]!;
    const after = more + (from[tail + place]! - more) * kept;
    to[tail + place] = after;
    saliva[solute] = saliva[solute]! + after;
  }
  work.exchangePerS = Math.max(phase.exchangePerS, filmExchangePerS(model, flow));
}
