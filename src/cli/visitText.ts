import type { Leaflet } from '../core/leaflet/types.ts';
import { sayAmount } from '../core/regimen/sayDirections.ts';
import { saySigner } from '../core/regimen/saySigner.ts';
import type { Plan, PlanLine } from '../core/regimen/types.ts';
import type { RiskResult } from '../core/risk/types.ts';
import type { VisitAssessment, VisitInput } from '../core/visit/types.ts';

/** Words for the ids that an assessment holds. */
export interface VisitWords {
  readonly itemLabel: (id: string) => string;
  readonly questionLabel: (id: string) => string;
  readonly needLabel: (kind: string) => string;
}

const WIDTH = 96;

/** An assessment as a page to read at the terminal: the same sentences as on the screen, in the same order. */
export function visitText(input: VisitInput, assessment: VisitAssessment, words: VisitWords): string {
  const { practice, person, visit } = input;
  const invented = practice.invented ? ' (an invented practice)' : '';
  const blocks = [
    [`${person.name}, ${assessment.ageYears} years. Visit of ${visit.onDate}, ${practice.name}${invented}.`, ...sayMouth(assessment)],
    block('Safety check', saySafety(assessment, words)),
    block('Swab reading', sayReading(assessment)),
    block('Level', sayLevel(assessment, words)),
    block('Other lists', sayOthers(assessment.compare)),
    block('What would change the level on this list', sayChanges(assessment, words)),
    block('Needs', sayNeeds(assessment, words)),
    block(
      'Advice for this mouth',
      assessment.plan.advice.map(({ says }) => `- ${says}`),
    ),
    block('Plan', sayPlan(assessment.plan, practice.shelf, words)),
    block('Leaflet', sayLeaflet(assessment.leaflet)),
    [`Code ${assessment.versions.code}, content ${assessment.versions.content}. A professional decides; sources stand in the JSON.`],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.flatMap(wrap).join('\n'))
    .join('\n\n');
}

const sayMouth = ({ mouth }: VisitAssessment): readonly string[] => [...mouth.sentences, ...(mouth.swab ? [mouth.swab.says] : [])];

function block(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [title.toUpperCase(), ...lines];
}

function saySafety({ safetyUnknown }: VisitAssessment, { questionLabel }: VisitWords): readonly string[] {
  if (safetyUnknown.length === 0) return ['Complete.'];
  return ['Not complete: whatever depends on these is not proposed. Ask first:', ...safetyUnknown.map((id) => `- ${questionLabel(id)}`)];
}

function sayReading({ reading }: VisitAssessment): readonly string[] {
  const notMet = reading.conditions.filter(({ state }) => state === 'failing').map(({ says }) => `- not met: ${says}`);
  return [reading.headline, ...notMet, ...reading.sentences];
}

function sayLevel({ proposed, proposedSentence, confirmed }: VisitAssessment, { itemLabel }: VisitWords): readonly string[] {
  const confirmation = confirmed
    ? [`Confirmed: ${confirmed.level}, by ${confirmed.by}${confirmed.reason ? ` (${confirmed.reason})` : ''}.`]
    : [];
  if (!proposed) return [proposedSentence, ...confirmation];
  const bullets = (title: string, ids: readonly string[]) => (ids.length === 0 ? [] : [title, ...ids.map((id) => `- ${itemLabel(id)}`)]);
  const couldChange = proposed.missing.filter((missing) => missing.couldChangeLevel);
  return [
    proposedSentence,
    ...confirmation,
    ...bullets(
      'Drivers:',
      proposed.drivers.map(({ item }) => item),
    ),
    ...bullets(
      'Protective:',
      proposed.protections.map(({ item }) => item),
    ),
    ...bullets(
      'Not known, and could change the level:',
      couldChange.map(({ item }) => item),
    ),
  ];
}

function sayOthers(results: readonly RiskResult[]): readonly string[] {
  if (results.length === 0) return [];
  const say = ({ screenName, level, possibleLevels }: RiskResult) =>
    `- ${screenName}: ${level ?? 'not yet assessable'}${possibleLevels.length > 1 ? `, depending on what is unknown ${possibleLevels.join(', ')}` : ''}`;
  return ['Lists differ and none is the truth.', ...results.map(say)];
}

function sayChanges({ couldChange }: VisitAssessment, { itemLabel }: VisitWords): readonly string[] {
  if (couldChange.length === 0) return [];
  const say = (value: unknown) => (value === undefined ? 'unknown' : value === true ? 'yes' : value === false ? 'no' : String(value));
  return [
    ...couldChange.map(
      ({ to, changes }) => `- to ${to}: ${changes.map((c) => `${itemLabel(c.item)}, ${say(c.from)} to ${say(c.to)}`).join('; ')}`,
    ),
    'It has not been shown that this changes decay by the same step.',
  ];
}

function sayNeeds({ needs }: VisitAssessment, { needLabel }: VisitWords): readonly string[] {
  return needs
    .filter(({ state }) => state !== 'not-needed')
    .map(({ kind, state, because }) => `- ${needLabel(kind)}${state === 'undecided' ? ' (undecided)' : ''}: ${because}`);
}

function sayPlan(plan: Plan, shelf: VisitInput['practice']['shelf'], { needLabel }: VisitWords): readonly string[] {
  const nameOf = (id: string) => shelf.find((item) => item.id === id)?.name ?? id;
  const lines = plan.lines.length === 0 ? ['Nothing is proposed yet.'] : plan.lines.flatMap(sayPlanLine);
  const recall = plan.recall ? [`Next visit in ${sayMonths(plan.recall.fromMonths, plan.recall.toMonths)} (${plan.recall.table}).`] : [];
  const bitewings = plan.bitewingsSentence === '' ? [] : [plan.bitewingsSentence];
  return [
    ...lines,
    ...plan.unmet.map(({ need, because }) => `- nothing for ${needLabel(need).toLowerCase()}: ${because}`),
    ...plan.notOffered.map(
      ({ shelfItemId, because, level }) =>
        `- ${nameOf(shelfItemId)}: ${level === 'ask-first' ? 'ask first' : 'not offered'}, because ${because}`,
    ),
    ...(plan.refused ?? []).map(({ name, by, reason }) => `- ${name}: not released by ${by}, because ${reason}`),
    plan.fluorideSentence,
    ...(plan.supplements ? [`Fluoride drops or tablets: ${plan.supplements.says}`] : []),
    ...recall,
    ...bitewings,
  ];
}

function sayPlanLine(line: PlanLine): readonly string[] {
  const { name, state, use, because, dose = [], signedBy, warnings } = line;
  const often = use.atVisit ? 'at the visit' : `${use.timesPerDay} times a day`;
  const waits = state === 'waiting-for-signature' ? '; WAITS FOR A SIGNATURE' : signedBy ? `; signed by ${saySigner(signedBy)}` : '';
  return [
    `- ${name}: ${sayAmount(line)}, ${often}${waits}`,
    ...[...because, ...dose].map((why) => `    ${why}`),
    ...warnings.map(({ text }) => `    Note: ${text}`),
  ];
}

const sayMonths = (from: number, to: number) => (from === to ? `${from} months` : `${from} to ${to} months`);

function sayLeaflet(leaflet: Leaflet): readonly string[] {
  const { labels } = leaflet;
  const list = (label: string, lines: readonly string[]) => (lines.length === 0 ? [] : [`${label}:`, ...lines.map((line) => `- ${line}`)]);
  return [
    `${leaflet.title}. ${leaflet.personName}, ${leaflet.practiceName}, ${leaflet.date}.`,
    ...(leaflet.demoNotice === null ? [] : [leaflet.demoNotice]),
    `${labels.keep}: ${leaflet.keep}`,
    ...(leaflet.tryThis === null ? [] : [`${labels.try}: ${leaflet.tryThis}`]),
    ...list(
      labels.day,
      leaflet.day.map(({ when, text }) => `${leaflet.slots[when]}: ${text}`),
    ),
    ...list(labels.advice, leaflet.advice),
    ...list(labels.cautions, leaflet.cautions),
    ...list(labels.stop, leaflet.stopUsing),
    ...(leaflet.monthlyCost === null ? [] : [`${labels.cost}: ${leaflet.monthlyCost}`]),
    ...leaflet.signedBy,
    `${labels.next}: ${leaflet.nextDate}`,
  ];
}

/** Breaks a line between words; what follows stands under its text. */
function wrap(line: string): readonly string[] {
  const indent = /^\s*(- )?/.exec(line)?.[0].length ?? 0;
  const lines: string[] = [];
  let current = line.slice(0, indent);
  for (const word of line.slice(indent).split(' ')) {
    const isFirst = current.trim() === '' || current.trim() === '-';
    if (!isFirst && current.length + 1 + word.length > WIDTH) {
      lines.push(current);
      current = ' '.repeat(indent) + word;
    } else current += (isFirst ? '' : ' ') + word;
  }
  return [...lines, current];
}
