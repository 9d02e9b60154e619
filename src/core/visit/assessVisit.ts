import { assessReading } from '../reading/assessReading.ts';
import { findNeeds } from '../regimen/findNeeds.ts';
import type { LastBitewings } from '../regimen/planBitewings.ts';
import { proposePlan } from '../regimen/proposePlan.ts';
import { compareProtocols } from '../risk/compareProtocols.ts';
import { appliesAtAge } from '../risk/conditions.ts';
import { evaluateProtocol } from '../risk/evaluateProtocol.ts';
import { uniqueSources } from '../risk/explainLevel.ts';
import { itemsFromAnswers } from '../risk/itemsFromAnswers.ts';
import { knownAnswers, unknownKindOf } from '../risk/knownAnswers.ts';
import { levelSentence } from '../risk/levelSentence.ts';
import { compareLevels } from '../risk/levels.ts';
import { fillFromMouth } from '../risk/mouthFill.ts';
import { decideMouth, GLANDS_FIRST, MOUTH_QUESTIONS } from '../risk/mouthFirst.ts';
import type { ProtocolTable, RiskSettings } from '../risk/protocol.ts';
import { questionsInMouth } from '../risk/questionsInMouth.ts';
import { FLOW_MEASURED, type LevelByFlow, sayGlands } from '../risk/sayGlands.ts';
import type { Items, LevelChange, RiskResult } from '../risk/types.ts';
import { listChangeableItems, whatWouldChange } from '../risk/whatWouldChange.ts';
import { ageOn } from './ageOn.ts';
import type { Answers } from './answer.ts';
import { personFacts } from './personFacts.ts';
import type { Question } from './question.ts';
import type { MouthDecision, PracticeSettings, VisitAssessment, VisitInput } from './types.ts';
import type { VisitContent } from './visitContent.ts';
import { leafletOf } from './withReleases.ts';

/**
 * Everything Ebbline says of one visit, from what is known of it so far: the reading, the level proposed by the practice's method, the
 * other lists, what could change the level, needs, a first plan and the leaflet. The same on the screen, on the server's record and on
 * the command line. Only the confirmed level feeds needs and plan; the reading is no item of any list.
 * @param input    checked by `checkVisit`; answers may be missing in any number
 * @param content  clinical tables, one edition of each
 * @throws RangeError when a date or a number lies outside its range; the message names it
 */
export function assessVisit(input: VisitInput, content: VisitContent): VisitAssessment {
  const { practice, person, visit } = input;
  const { ageYears, ageMonths } = ageOn(person.birthDate, visit.onDate);
  const { settings } = practice;
  const { answers, findings, allExamined, onDate } = visit;
  const { mouth, questions } = lookAtMouth(visit, ageYears, content);
  const told = itemsFromAnswers({
    answers,
    findings,
    allExamined,
    questions,
    findingFills: content.findingFills,
    exclusions: content.itemExclusions,
    ageYears,
    onDate,
    settings,
  });
  const { known, unknown } = told;
  const items = fillFromMouth(told.items, mouth.reasons, content.mouthFills);
  const facts = personFacts({ ageYears, ageMonths, known, items, questions });
  const meter = practice.meters.find((m) => m.id === visit.meterId);
  const reading = assessReading({
    reading: visit.reading,
    meter,
    lots: practice.lots,
    pastReadings: visit.pastReadings,
    onDate,
    conditions: content.swabConditions,
    timeZone: practice.timeZone,
  });
  const level = proposeLevel({ mouth, items, ageYears, settings, content });
  const confirmed = mouth.kind === 'level-does-not-apply' ? undefined : visit.confirmed;
  const needs = findNeeds({
    facts,
    mouth,
    confirmed,
    result: level.proposed,
    items,
    findings,
    reading,
    jurisdiction: settings.jurisdiction,
    tables: content.regimen,
  });
  const plan = proposePlan({
    facts,
    needs,
    shelf: practice.shelf,
    settings,
    confirmed,
    signed: visit.signed,
    refused: visit.refused,
    mouth,
    appliances: Array.isArray(known['appliance']) ? known['appliance'] : undefined,
    lastBitewings: lastBitewings(answers, questions, onDate),
    onDate,
    tables: content.regimen,
    instead: visit.agreed?.instead,
  });
  const couldChange = level.table ? listChanges({ ...level, items, ageYears, settings, mayLimitFood: plan.diet.allowed === 'any' }) : [];
  const leaflet = leafletOf({ plan, facts, needs, ageYears, mouth }, input, content);
  return {
    ageYears,
    ageMonths,
    mouth: {
      ...mouth,
      sentences: sayMouth(mouth, visit.confirmed !== undefined, () =>
        sayGlands({ known, items, levelByFlow: levelByFlow(level, items, ageYears, settings) }),
      ),
    },
    unknownAnswers: unknown,
    safetyUnknown: unknown.filter((u) => questions.some((q) => q.id === u.question && q.group === 'safety')).map((u) => u.question),
    facts,
    reading,
    proposed: level.proposed,
    proposedSentence: level.sentence,
    compare: level.compare,
    couldChange,
    confirmed: confirmed ?? null,
    needs,
    plan,
    leaflet,
    sources: uniqueSources([
      ...reading.sources,
      ...(level.proposed?.sources ?? []),
      ...needs.flatMap((n) => n.sources),
      ...plan.lines.flatMap((l) => l.sources),
    ]),
    versions: content.versions,
  };
}

/** Decided before anything else: what kind of mouth it is, and which questions are put to it. */
function lookAtMouth({ answers, findings, onDate }: VisitInput['visit'], ageYears: number, { questions }: VisitContent) {
  const asked = (ids: readonly string[]) =>
    knownAnswers({ answers, questions: questions.filter(({ id }) => ids.includes(id)), ageYears, onDate }).known;
  const mouth = decideMouth({ known: asked(MOUTH_QUESTIONS), findings, ageYears, questions });
  const measurements = questions.flatMap(({ wantedIn }) => wantedIn?.unlessKnown ?? []);
  return { mouth, questions: questionsInMouth(questions, mouth, asked(measurements)) };
}

/** The question is optional, so that why it is not known is read from the answer itself. */
function lastBitewings(answers: Answers, questions: readonly Question[], onDate: string): LastBitewings {
  const question = questions.find(({ id }) => id === 'bitewings_last');
  const answer = answers['bitewings_last'];
  const unknown = question === undefined ? 'not-asked' : unknownKindOf(answer, question, onDate);
  if (unknown !== undefined) return { unknown };
  return typeof answer?.value === 'string' ? { on: answer.value } : { unknown: 'not-asked' };
}

const CONFIRMED_BEFORE = 'A level was confirmed before this was recorded: it does not count.';

/** The sentences with what can only be said once the list has spoken. */
function sayMouth({ kind, reasons, sentences }: MouthDecision, isConfirmed: boolean, glands: () => string): readonly string[] {
  if (kind === 'level-does-not-apply') return isConfirmed ? [...sentences, CONFIRMED_BEFORE] : sentences;
  return reasons.includes('lost-gland-function') ? sentences.map((s) => (s === GLANDS_FIRST ? glands() : s)) : sentences;
}

function levelByFlow(
  { table, proposed }: Pick<ProposedLevel, 'table' | 'proposed'>,
  items: Items,
  ageYears: number,
  settings: RiskSettings,
): LevelByFlow | undefined {
  if (!table || !proposed || proposed.notYet) return undefined;
  const ifMeasured = (flow: Items) => evaluateProtocol(table, { ...items, ...flow }, ageYears, settings).levelUnknownNotTicked;
  return { low: ifMeasured(FLOW_MEASURED.low), normal: ifMeasured(FLOW_MEASURED.normal) };
}

interface ChangesInput extends Pick<ProposedLevel, 'table' | 'proposed'> {
  readonly items: Items;
  readonly ageYears: number;
  readonly settings: RiskSettings;
  readonly mayLimitFood: boolean;
}

/**
 * Upwards, what is not known yet and could be found; downwards, that and what can be changed. Nobody is told what would make it worse.
 */
function listChanges({ table, proposed, items, ageYears, settings, mayLimitFood }: ChangesInput): readonly LevelChange[] {
  if (!table || !proposed) return [];
  const present = proposed.levelUnknownNotTicked;
  const byFinding = whatWouldChange(table, items, ageYears, settings, []);
  const byChanging = whatWouldChange(table, items, ageYears, settings, listChangeableItems(table, { mayLimitFood }));
  return [
    ...byChanging.filter(({ to }) => compareLevels(to, present) < 0),
    ...byFinding.filter(({ to }) => compareLevels(to, present) > 0),
  ];
}

interface ProposedLevel {
  readonly table: ProtocolTable | undefined;
  readonly proposed: RiskResult | null;
  readonly sentence: string;
  readonly compare: readonly RiskResult[];
}

interface LevelInput {
  readonly mouth: MouthDecision;
  readonly items: Items;
  readonly ageYears: number;
  readonly settings: PracticeSettings & RiskSettings;
  readonly content: VisitContent;
}

/** The practice's own list for this age proposes; the other lists stand beside it. Where no level applies, the sentence says why. */
function proposeLevel({ mouth, items, ageYears, settings, content }: LevelInput): ProposedLevel {
  const none = (sentence: string): ProposedLevel => ({ table: undefined, proposed: null, sentence, compare: [] });
  if (mouth.kind === 'level-does-not-apply') return none(mouth.sentences.join(' '));
  const method = settings.methodByAge.find((m) => ageYears >= m.fromAgeYears && (m.belowAgeYears === null || ageYears < m.belowAgeYears));
  const table = content.protocols.find((t) => t.id === method?.protocol);
  if (!table) return none(`No method is set for age ${ageYears}: choose one under Rules.`);
  if (!appliesAtAge(table, ageYears)) return none(`${table.screenName} is not for age ${ageYears}: choose another method under Rules.`);
  const proposed = evaluateProtocol(table, items, ageYears, settings);
  const others = content.protocols.filter((t) => t.id !== table.id);
  const labelOf = (item: string) => table.items[item]?.label ?? item;
  return {
    table,
    proposed,
    sentence: levelSentence(proposed, labelOf),
    compare: compareProtocols(others, items, ageYears, settings).results,
  };
}
