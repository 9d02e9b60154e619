import { useQuery } from '@tanstack/react-query';
import type { NewMeterCheck } from '../../api/meterChecks.ts';
import type {
  ChecksView,
  NewControl,
  QuestionBody,
  ReadingsBeforeStop,
  ResolveBody,
  TargetBody,
  TrainingBody,
} from '../../api/swabChecks.ts';
import type { Control, ControlPlan } from '../../core/checks/control.ts';
import type { MeterCheckPlan } from '../../core/checks/meterCheck.ts';
import type { SwabLot } from '../../core/reading/types.ts';
import { callApi } from './api.ts';

const readChecks = () => callApi<ChecksView>('GET', '/api/checks');

/** Meters, lots, controls, studies and training. */
export function useChecks() {
  return useQuery({ queryKey: ['checks'], queryFn: readChecks });
}

export const recordControl = (control: NewControl) => callApi<{ id: string }>('POST', '/api/controls', control);

export const voidReading = (id: string, version: number, reason: string) =>
  callApi<{ version: number }>('POST', `/api/readings/${id}/void`, { version, reason });

export const overrideStop = (controlId: string, reason: string) => callApi('POST', '/api/overrides', { controlId, reason });

export const resolveStop = (outId: string, body: ResolveBody) => callApi('POST', `/api/stops/${outId}/resolve`, body);

/** The readings that a stop may put under question. */
export function useReadingsBeforeStop(outId: string) {
  return useQuery({
    queryKey: ['before-stop', outId],
    queryFn: () => callApi<ReadingsBeforeStop>('GET', `/api/stops/${outId}/readings`),
  });
}

export const questionReadings = (outId: string, body: QuestionBody) =>
  callApi<{ version: number; changed: number }>('POST', `/api/stops/${outId}/readings`, body);

export const setTarget = ({ meterId, lotId }: Pick<Control, 'meterId' | 'lotId'>, body: TargetBody) =>
  callApi<{ version: number }>('PUT', `/api/control-plans/${encodeURIComponent(meterId)}/targets/${encodeURIComponent(lotId)}`, body);

/** The lot as it stands then. */
export const sendUncompared = (lotId: string, reason: string) =>
  callApi<{ lot: SwabLot }>('POST', `/api/lots/${encodeURIComponent(lotId)}/uncompared`, { reason });

export const saveControlPlan = (plan: ControlPlan, version: number) =>
  callApi<{ version: number }>('PUT', `/api/control-plans/${encodeURIComponent(plan.meterId)}`, { plan, version });

export async function readControlPlan(meterId: string) {
  const found = (await readChecks()).plans.find(({ plan }) => plan.meterId === meterId);
  return found && { value: found.plan, version: found.version };
}

export const recordMeterCheck = (check: NewMeterCheck) => callApi<{ id: string; passed: boolean }>('POST', '/api/meter-checks', check);

export const saveMeterCheckPlan = (plan: MeterCheckPlan, version: number) =>
  callApi<{ version: number }>('PUT', `/api/meter-check-plans/${encodeURIComponent(plan.meterId)}`, { plan, version });

export async function readMeterCheckPlan(meterId: string) {
  const found = (await readChecks()).meterCheckPlans.find(({ plan }) => plan.meterId === meterId);
  return found && { value: found.plan, version: found.version };
}

export const recordTraining = (memberId: string, body: TrainingBody) =>
  callApi<{ version: number }>('POST', `/api/members/${memberId}/training`, body);
