import { keepByTable } from '../keep/keepByTable.ts';
import { knownAnswers } from '../risk/knownAnswers.ts';
import { decideMouth, MOUTH_QUESTIONS } from '../risk/mouthFirst.ts';
import { questionsInMouth } from '../risk/questionsInMouth.ts';
import { withoutIdleFollowUps } from './followUps.ts';
import type { Question } from './question.ts';
import type { MouthDecision, VisitInput } from './types.ts';

/** Decided before anything else: what kind of mouth it is, and which questions are put to it. */
export function lookAtMouth(
  { answers, findings, onDate }: Pick<VisitInput['visit'], 'answers' | 'findings' | 'onDate'>,
  ageYears: number,
  questions: readonly Question[],
): { readonly mouth: MouthDecision; readonly questions: readonly Question[] } {
  const { deciding, measurements, notEverywhere } = sortQuestions(questions);
  const knownOf = (asked: readonly Question[]) => knownAnswers({ answers, questions: asked, ageYears, onDate }).known;
  const mouth = decideMouth({ known: knownOf(deciding), findings, ageYears, questions: notEverywhere });
  const inMouth = questionsInMouth(questions, mouth, knownOf(measurements));
  return { mouth, questions: withoutIdleFollowUps(inMouth, { answers, onDate, questions }) };
}

const sortQuestions = keepByTable((questions: readonly Question[]) => {
  const enough = questions.flatMap(({ wantedIn }) => wantedIn?.unlessKnown ?? []);
  return {
    deciding: questions.filter(({ id }) => MOUTH_QUESTIONS.includes(id)),
    measurements: questions.filter(({ id }) => enough.includes(id)),
    notEverywhere: questions.filter(({ notIn }) => notIn !== undefined),
  };
});
