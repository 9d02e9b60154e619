import { listPrintableLines } from '../leaflet/listPrintableLines.ts';
import type { LeafletLanguage } from '../leaflet/types.ts';
import type { DayStrip } from '../regimen/dayStrip/types.ts';
import { toldDayForUses } from './leafletStrip.ts';
import { planDay } from './planDay.ts';
import { plannedAtHome } from './plannedAtHome.ts';
import { rhythmOfVisit } from './rhythmOfVisit.ts';
import type { VisitAssessment, VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';

type UsesContent = Pick<VisitContent, 'leaflet' | 'acidDay' | 'questions' | 'regimen' | 'dayUses'>;

/** What is used when, of what a page may show: nothing that waits for a signature or was turned down. Undefined where nothing has a time. */
export function leafletUses(
  { plan, ageYears }: Pick<VisitAssessment, 'plan' | 'ageYears'>,
  input: VisitInput,
  content: UsesContent,
  language: LeafletLanguage,
): DayStrip | undefined {
  const { visit, practice } = input;
  const printed = listPrintableLines(plan.lines, practice.shelf, visit.agreed?.items).map(({ line }) => line);
  const planned = plannedAtHome(printed, practice.shelf, visit.agreed);
  if (planned.length === 0) return undefined;
  const rhythm = rhythmOfVisit(visit, ageYears, content.dayUses, toldDayForUses(input, content, language));
  const { jurisdiction, disagreements } = practice.settings;
  const { now } = planDay({ planned, place: jurisdiction, rhythm, disagreements }, content);
  return now.placed.length === 0 ? undefined : now;
}
