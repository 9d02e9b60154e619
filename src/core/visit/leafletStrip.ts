import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { LeafletLanguage, LeafletStrip, ToldRow } from '../leaflet/types.ts';
import { acidLines, findAcidSide } from '../plaque/day/acidLines.ts';
import { listAcidStretches } from '../plaque/day/dayFigures.ts';
import { dayLimits } from '../plaque/day/dayLimits.ts';
import { buildDayModel, type DayTables } from '../plaque/day/dayModel.ts';
import type { DayLanguage } from '../plaque/day/dayWords.ts';
import { type EventNames, labelOfEvent } from '../plaque/day/nameOfEvent.ts';
import { nightSpans } from '../plaque/day/nightSpans.ts';
import { runDay } from '../plaque/day/runDay.ts';
import type { AcidDay, EatingEvent } from '../plaque/day/types.ts';
import type { Mouth, MouthPreset } from '../plaque/types.ts';
import type { PersonFacts } from '../regimen/types.ts';
import { hideAlcohol, isAlcoholReleased } from './hideAlcohol.ts';
import { mayShowChange, mayTry } from './mayTryChange.ts';
import { type MouthOfVisit, mouthOfVisit } from './mouthOfVisit.ts';
import { dayForUses, type ToldDay } from './rhythmOfVisit.ts';
import type { VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';

/** The tables of the acid day, and the mouths that can be named. */
export interface AcidDayContent {
  readonly tables: DayTables;
  readonly mouths: Readonly<Record<MouthPreset, Mouth>>;
  /** Of the events of ready-made days, in every language. */
  readonly eventNames: EventNames;
  /** Where the model runs in a worker beside the assessment, so that a page never waits for it: a page to hand over is not made there. */
  readonly runsElsewhere?: true | undefined;
}

const TOLERANCE_PH = 0.02;

/**
 * The strip that a professional put on the leaflet: where the plaque is on the acid side in the model, without any number; and under it the
 * changed day, where what was changed may be suggested to this person. Undefined where no strip was chosen.
 * @param language  of the page: food has names in English and Spanish; on another page the English one stands, and is named as such
 */
export function leafletStrip(
  { visit, practice }: VisitInput,
  facts: PersonFacts,
  { acidDay, questions, regimen }: Pick<VisitContent, 'acidDay' | 'questions' | 'regimen'>,
  language: LeafletLanguage,
): LeafletStrip | undefined {
  const { acidDay: told } = visit;
  const day = told?.onLeaflet === undefined ? undefined : told.days[told.onLeaflet];
  if (!told || !day) return undefined;
  const mouth = mouthOfVisit(visit, acidDay.mouths, questions);
  const may = mayTry(dayLimits(facts, regimen, practice.settings.jurisdiction));
  const tried = told.changed !== undefined && told.changed.of === told.onLeaflet ? told.changed.day : undefined;
  const changed = tried && mayShowChange(day, tried, may) ? tried : undefined;
  const { foods } = acidDay.tables;
  const isNamed = language === 'en' || language === 'es';
  const nameLanguage: DayLanguage = isNamed ? language : 'en';
  const named = (of: AcidDay) => (isAlcoholReleased(visit) ? of : hideAlcohol(of, { foods, language: nameLanguage }));
  const rowOf = (of: ToldRow['of'], shown: AcidDay): ToldRow => ({
    of,
    night: nightSpans(shown),
    acid: stretchesOf(acidDay.tables)(JSON.stringify({ day: shown, mouth })),
    eaten: eatenOf(named(shown)).map((event) => ({
      from: event.startMinute,
      to: event.startMinute + event.minutes,
      name: nameOf(event, nameLanguage, acidDay),
    })),
  });
  const days = [day, ...(changed ? [changed] : [])];
  const own = ownWords(days, acidDay);
  const standIns = isNamed
    ? []
    : days.flatMap((one) => eatenOf(named(one)).map((event) => nameOf(event, nameLanguage, acidDay))).filter((name) => !own.has(name));
  return {
    rows: [rowOf('told', day), ...(changed ? [rowOf('changed', changed)] : [])],
    ...(standIns.length > 0 && { notInLanguage: [...new Set(standIns)] }),
  };
}

/** The described day that uses are placed in, with names as a page in this language has them, and its acid side where that may be worked out here. */
export function toldDayForUses(
  { visit }: VisitInput,
  { acidDay, questions }: Pick<VisitContent, 'acidDay' | 'questions'>,
  language: LeafletLanguage,
): ToldDay | undefined {
  const day = dayForUses(visit);
  if (!day) return undefined;
  const nameLanguage: DayLanguage = language === 'es' ? 'es' : 'en';
  const seen = isAlcoholReleased(visit) ? day : hideAlcohol(day, { foods: acidDay.tables.foods, language: nameLanguage });
  const named = {
    ...seen,
    events: seen.events.map((event) => (event.kind === 'eating' ? { ...event, label: nameOf(event, nameLanguage, acidDay) } : event)),
  };
  if (acidDay.runsElsewhere) return { named };
  const mouth = mouthOfVisit(visit, acidDay.mouths, questions);
  return { named, acid: stretchesOf(acidDay.tables)(JSON.stringify({ day, mouth })) };
}

/** An assessment is made anew after every answer; the strip only when the day or the mouth is another one. */
const stretchesOf = keepByTable((tables: DayTables) =>
  keepByKey((key: string): ToldRow['acid'] => {
    const { day, mouth } = JSON.parse(key) as { readonly day: AcidDay; readonly mouth: MouthOfVisit };
    const curve = runDay(day, buildDayModel(mouth.mouth, tables), tables.foods, { tolerancePh: TOLERANCE_PH });
    return listAcidStretches(curve, findAcidSide(acidLines(tables, mouth.measured)).ph);
  }),
);

/** The person's own word, that of a ready-made day in the language of the leaflet, or the first of what was taken. */
function nameOf(event: EatingEvent, language: DayLanguage, { tables, eventNames }: AcidDayContent): string {
  const label = labelOfEvent(event, language, eventNames);
  const [first] = event.portions;
  if (label !== '') return label;
  if (!first) return '';
  return 'typed' in first ? first.typed.name : (tables.foods.get(first.food)?.name[language] ?? first.food);
}

/** Words that the person said; what stands on a ready-made day is the program's. */
function ownWords(days: readonly AcidDay[], { eventNames }: AcidDayContent): ReadonlySet<string> {
  const words = days
    .flatMap(eatenOf)
    .flatMap(({ id, label, portions }) => [
      ...(label !== undefined && label.trim() !== eventNames[id]?.en ? [label.trim()] : []),
      ...portions.flatMap((portion) => ('typed' in portion ? [portion.typed.name] : [])),
    ]);
  return new Set(['', ...words]);
}

const eatenOf = ({ events }: AcidDay): readonly EatingEvent[] => events.filter((event) => event.kind === 'eating');
