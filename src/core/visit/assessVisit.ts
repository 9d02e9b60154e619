import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import { once } from '../keep/once.ts';
import { assessReading } from '../reading/assessReading.ts';
import { settleTables } from '../regimen/disagreement/settleTables.ts';
import { weightDoubtOf } from '../regimen/dose/weightDoubt.ts';
import { findNeeds } from '../regimen/findNeeds.ts';
import { protocolsOn } from '../regimen/local/localProtocol.ts';
import { mayLimitFood } from '../regimen/mayLimitFood.ts';
import { type ProposePlanInput, proposePlan } from '../regimen/proposePlan.ts';
import type { RegimenTables } from '../regimen/tables.ts';
import type { DroppedCare, Plan, ShelfItem } from '../regimen/types.ts';
import { compareProtocols } from '../risk/compareProtocols.ts';
import { uniqueSources } from '../risk/explainLevel.ts';
import { itemsFromAnswers } from '../risk/itemsFromAnswers.ts';
import type { KnownAnswers } from '../risk/knownAnswers.ts';
import { compareLevels } from '../risk/levels.ts';
import { fillFromMouth } from '../risk/mouthFill.ts';
import type { ProtocolTable, RiskSettings } from '../risk/protocol.ts';
import type { Items, LevelChange, RiskResult } from '../risk/types.ts';
import { listChangeableItems, whatWouldChange } from '../risk/whatWouldChange.ts';
import { ageOn } from './ageOn.ts';
import { lastBitewings } from './lastBitewings.ts';
import { lookAtMouth } from './lookAtMouth.ts';
import { personFacts } from './personFacts.ts';
import { proposeLevel } from './proposeLevel.ts';
import type { Question } from './question.ts';
import { sayMouth } from './sayMouth.ts';
import type { VisitAssessment, VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';
import { leafletsOf } from './withReleases.ts';

/** What can be asked for alone. */
export const VISIT_PARTS = ['reading', 'risk', 'plan', 'explain', 'leaflet'] as const;
export type VisitPart = (typeof VISIT_PARTS)[number];

/** The items stand in a part only: whoever takes the whole has the answers they come from. */
export type PartialAssessment = Partial<VisitAssessment> & { readonly items?: Items };

/**
 * Everything Ebbline says of one visit, from what is known of it so far: the reading, the level proposed by the practice's method, the
 * other lists, what could change the level, needs, a first plan and the leaflet. The same on the screen, on the server's record and on
 * the command line. Only the confirmed level feeds needs and plan; the reading is no item of any list.
 * @param input    checked by `checkVisit`; answers may be missing in any number
 * @param content  clinical tables, one edition of each; never changed once handed in, since what is compiled from them is kept
 * @throws RangeError when a date or a number lies outside its range; the message names it
 */
export function assessVisit(input: VisitInput, content: VisitContent): VisitAssessment {
  return assessInSteps(input, content).whole();
}

/** What an answer changes at once: all but what the plan is made from, the plan and what is printed of it. */
export type BeforePlan = Omit<VisitAssessment, 'facts' | 'needs' | 'plan' | 'leaflet' | 'leaflets' | 'sources'>;

export interface VisitSteps {
  readonly beforePlan: () => BeforePlan;
  /** Nothing that `beforePlan` computed is computed again. */
  readonly whole: () => VisitAssessment;
}

/**
 * `assessVisit` for a page that draws the answer before the plan, which takes longest. Each step is computed when it is first asked for,
 * and once.
 * @param input    as for `assessVisit`
 * @param content  as for `assessVisit`
 * @throws RangeError as `assessVisit`, from the step that looks at the number
 */
export function assessInSteps(input: VisitInput, content: VisitContent): VisitSteps {
  const steps = stepsOf(input, content);
  const beforePlan = once((): BeforePlan => {
    const { items: _, ...risk } = steps.risk();
    return { ...risk, ...steps.reading(), ...steps.explain(), confirmed: steps.confirmed(), versions: content.versions };
  });
  const whole = once((): VisitAssessment => {
    const { reading, proposed, proposedSentence, compare, couldChange, confirmed, versions, ...mouth } = beforePlan();
    const { facts, needs, plan } = steps.plan();
    return {
      ...mouth,
      facts,
      reading,
      proposed,
      proposedSentence,
      compare,
      couldChange,
      confirmed,
      needs,
      plan,
      ...steps.leaflet(),
      sources: uniqueSources([
        ...reading.sources,
        ...(proposed?.sources ?? []),
        ...needs.flatMap((n) => n.sources),
        ...plan.lines.flatMap((l) => l.sources),
      ]),
      versions,
    };
  });
  return { beforePlan, whole };
}

/**
 * Some parts of `assessVisit`, in the order of `VISIT_PARTS`, with the versions that made them. Nothing is computed that these parts do
 * not need.
 * @param input    as for `assessVisit`
 * @param content  as for `assessVisit`
 * @throws RangeError as `assessVisit`, for what these parts look at
 */
export function assessParts(input: VisitInput, content: VisitContent, parts: readonly VisitPart[]): PartialAssessment {
  const steps = stepsOf(input, content);
  const wanted = VISIT_PARTS.filter((part) => parts.includes(part)).map((part) => steps[part]());
  return Object.assign({}, ...wanted, { versions: content.versions });
}

/** How each part is computed: nothing before it is asked for, and what several parts need only once. */
function stepsOf(input: VisitInput, content: VisitContent) {
  const { practice, person, visit } = input;
  const { ageYears, ageMonths } = ageOn(person.birthDate, visit.onDate);
  const { settings, shelf } = practice;
  const tables = once(() => settleTables(content.regimen, settings.disagreements));
  const { answers, findings, onDate } = visit;

  const looked = once(() => lookAtMouth(visit, ageYears, content.questions));
  const mouth = () => looked().mouth;
  const answered = once(() => {
    const { items, ...told } = itemsFromAnswers({
      answers,
      findings,
      allExamined: visit.allExamined,
      questions: looked().questions,
      findingFills: content.findingFills,
      exclusions: content.itemExclusions,
      ageYears,
      onDate,
      settings,
    });
    return { ...told, items: fillFromMouth(items, mouth().reasons, content.mouthFills) };
  });
  const facts = once(() => personFacts({ ageYears, ageMonths, ...answered(), questions: looked().questions }));
  const reading = once(() =>
    assessReading({
      reading: visit.reading,
      meter: practice.meters.find((m) => m.id === visit.meterId),
      lots: practice.lots,
      pastReadings: visit.pastReadings,
      studySwabs: visit.studySwabs,
      onDate,
      conditions: content.swabConditions,
      noise: content.readingNoise,
      timeZone: practice.timeZone,
      controls: visit.controls,
    }),
  );
  const level = once(() => proposeLevel({ mouth: mouth(), items: answered().items, ageYears, settings, protocols: content.protocols }));
  const confirmed = () => (mouth().kind === 'level-does-not-apply' ? undefined : visit.confirmed);
  const needs = once(() =>
    findNeeds({
      facts: facts(),
      mouth: mouth(),
      confirmed: confirmed(),
      result: level().proposed,
      items: answered().items,
      findings,
      reading: reading(),
      jurisdiction: settings.jurisdiction,
      tables: tables(),
    }),
  );
  const plan = once(() =>
    planFor(
      tables(),
      shelf,
    )({
      facts: facts(),
      needs: needs(),
      settings: {
        ...settings,
        localProtocols: protocolsOn(practice.localProtocols ?? [], onDate),
        mostTasksPerDay: mostTasksPerDay(visit.agreed),
      },
      confirmed: confirmed(),
      signed: visit.signed,
      refused: visit.refused,
      mouth: mouth(),
      appliances: listAppliances(answered().known),
      lastBitewings: lastBitewings(answers, looked().questions, onDate),
      onDate,
      instead: visit.agreed?.instead,
      history: droppedCare(visit),
      chosenRegimen: visit.agreed?.regimen,
    }),
  );

  return {
    reading: () => ({ reading: reading() }),
    risk: () => {
      const { known, unknown, items } = answered();
      const isConfirmed = visit.confirmed !== undefined;
      const weightDoubt = weightDoubtOf(facts(), tables().fluoride.weights);
      const safetyUnknown = listSafetyUnknown(unknown, looked().questions);
      const sentences = sayMouth({ mouth: mouth(), isConfirmed, known, items, level: level(), ageYears, settings });
      return {
        ageYears,
        ageMonths,
        mouth: { ...mouth(), sentences },
        unknownAnswers: unknown,
        safetyUnknown: weightDoubt === undefined ? safetyUnknown : [...new Set([...safetyUnknown, ...(tables().askFor.weightKg ?? [])])],
        ...(weightDoubt === undefined ? {} : { weightDoubt }),
        items,
        proposed: level().proposed,
        proposedSentence: level().sentence,
      };
    },
    confirmed: () => confirmed() ?? null,
    plan: () => ({ facts: facts(), confirmed: confirmed() ?? null, needs: needs(), plan: plan() }),
    explain: () => {
      const { table, proposed } = level();
      if (!table || !proposed) return { compare: [], couldChange: [] };
      const others = content.protocols.filter((t) => t.id !== table.id);
      const mayLimit = mayLimitFood(facts(), tables()).allowed === 'any';
      const { items } = answered();
      return {
        compare: compareProtocols(others, items, ageYears, settings).results,
        couldChange: listChanges({ table, proposed, items, ageYears, settings, mayLimitFood: mayLimit }),
      };
    },
    leaflet: () => ({
      ...leafletsOf({ plan: plan(), facts: facts(), needs: needs(), ageYears, mouth: mouth() }, input, content),
    }),
  } as const;
}

type PlanInput = Omit<ProposePlanInput, 'tables' | 'shelf'>;

/** An assessment is made anew after every answer; the plan, which takes longest, only where something it goes by is another. */
const planFor = (tables: RegimenTables, shelf: readonly ShelfItem[]) => (input: PlanInput) => plansOf(tables)(shelf)(JSON.stringify(input));

const plansOf = keepByTable((tables: RegimenTables) =>
  keepByTable((shelf: readonly ShelfItem[]) =>
    keepByKey((key: string): Plan => proposePlan({ ...(JSON.parse(key) as PlanInput), tables, shelf })),
  ),
);

function listSafetyUnknown(unknown: KnownAnswers['unknown'], questions: readonly Question[]): readonly string[] {
  return unknown.map((u) => u.question).filter((id) => questions.some((q) => q.id === id && q.group === 'safety'));
}

/** Turned down, stopped or never begun, as told at earlier visits or today. What merely left the plan is no judgement of the person's. */
function droppedCare({ pastCare = [], used = {} }: VisitInput['visit']): readonly DroppedCare[] {
  return pastCare.flatMap(({ shelfItemId, stopReason, turnedDown, adherence }): DroppedCare[] => {
    const today = used[shelfItemId];
    const said = today?.adherence ?? adherence;
    if (turnedDown === undefined && said !== 'stopped' && said !== 'not-begun') return [];
    return [{ shelfItemId, why: today?.why || stopReason || (turnedDown === 'not-affordable' ? 'price' : undefined) }];
  });
}

/** Not asked, or any number: no limit. */
function mostTasksPerDay(agreed: VisitInput['visit']['agreed']): number | undefined {
  return typeof agreed?.tasksAccepted === 'number' ? agreed.tasksAccepted : undefined;
}

function listAppliances(known: KnownAnswers['known']): readonly string[] | undefined {
  const { appliance } = known;
  return Array.isArray(appliance) ? appliance : undefined;
}

interface ChangesInput {
  readonly table: ProtocolTable;
  readonly proposed: RiskResult;
  readonly items: Items;
  readonly ageYears: number;
  readonly settings: RiskSettings;
  readonly mayLimitFood: boolean;
}

/**
 * Upwards, what is not known yet and could be found; downwards, that and what can be changed. Nobody is told what would make it worse.
 */
function listChanges({ table, proposed, items, ageYears, settings, mayLimitFood }: ChangesInput): readonly LevelChange[] {
  const present = proposed.levelUnknownNotTicked;
  const byFinding = whatWouldChange(table, items, ageYears, settings, []);
  const byChanging = whatWouldChange(table, items, ageYears, settings, listChangeableItems(table, { mayLimitFood }));
  return [
    ...byChanging.filter(({ to }) => compareLevels(to, present) < 0),
    ...byFinding.filter(({ to }) => compareLevels(to, present) > 0),
  ];
}
