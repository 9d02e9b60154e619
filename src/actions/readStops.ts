import type { StopResolution } from '../core/checks/control.ts';
import { type JudgedControl, type JudgedLot, judgeControls } from '../core/checks/judgeControls.ts';
import { type ControlStop, isInLine, listStops } from '../core/checks/listStops.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listControls } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** Every control of one meter as the plan of now judges it. */
export async function readJudged(db: Db, scope: SiteScope, meterId: string): Promise<readonly JudgedLot[]> {
  const plans = (await listCatalog(db, scope, 'control-plan')).map(({ body }) => body);
  return judgeControls(await listControls(db, scope, { meterId }), plans, await listResolutions(db, scope));
}

export async function listResolutions(db: Db, scope: SiteScope): Promise<readonly StopResolution[]> {
  return (await listCatalog(db, scope, 'stop-resolved')).map(({ body }) => body);
}

export interface StopsOfMeter {
  readonly stops: readonly ControlStop[];
  readonly judged: readonly JudgedControl[];
}

/** Every stop of one meter, and the controls that it is seen from. */
export async function readStops(db: Db, scope: SiteScope, meterId: string): Promise<StopsOfMeter> {
  const lots = await readJudged(db, scope, meterId);
  return { stops: listStops(lots, await listResolutions(db, scope)), judged: lots.flatMap(({ controls }) => controls) };
}

export const idsOfStop = ({ out }: ControlStop): readonly string[] => out.map(({ control }) => control.id);

/** In line, and not void. */
export function isShownInLine(judged: readonly JudgedControl[], controlId: string): boolean {
  const found = judged.find(({ control }) => control.id === controlId);
  return found !== undefined && isInLine(found);
}
