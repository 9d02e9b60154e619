import { describe, expect, it, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { Answer, AnswerValue } from './answer.ts';
import { isPut, withoutIdleFollowUps } from './followUps.ts';
import { lookAtMouth } from './lookAtMouth.ts';

const onDate = '2026-11-26';
const asked = (value: AnswerValue): Answer => ({ how: 'asked', value, askedOn: onDate });
const idsPut = (answers: Record<string, Answer>) =>
  lookAtMouth({ answers, findings: [], onDate }, 30, questions)
    .questions.filter((q) => q.askedIf !== undefined)
    .map(({ id }) => id);

test('every follow-up hangs on a question and on choices that exist, at the same place of the visit', () => {
  for (const { askedIf, group, id } of questions) {
    if (!askedIf) continue;
    const first = questions.find((q) => q.id === askedIf.question);
    expect([id, first?.group]).toEqual([id, group]);
    const ids = first?.choices?.map((c) => c.id) ?? [];
    if ('anyOf' in askedIf) expect(askedIf.anyOf.filter((choice) => !ids.includes(choice))).toEqual([]);
    else expect(first?.kind).toBe('measure');
  }
});

describe('a follow-up is put only where the answer before it calls for it', () => {
  test.each([
    [{}, []],
    [{ home_extras: asked([]) }, []],
    [{ home_extras: asked(['xylitol']) }, []],
    [{ home_extras: asked(['xylitol', 'fluoridated-salt']) }, ['salt_fluoride_mg_per_kg', 'salt_g_per_day']],
    [{ home_extras: asked(['fluoride-tablets-or-drops']) }, ['supplement_fluoride_mg_per_day']],
    [{ professional_fluoride: asked('varnish') }, ['varnish_days_12m']],
    [{ professional_fluoride: asked('none') }, []],
    [{ water_fluoride_mg_per_l: asked(0) }, []],
    [{ water_fluoride_mg_per_l: asked(0.7) }, ['water_litres_per_day']],
  ] as const)('%j: %j', (answers, ids) => expect(idsPut(answers as Record<string, Answer>)).toEqual(ids));

  it('not after one that is out of date, declined or not known', () => {
    const old: Answer = { how: 'carried', value: ['fluoridated-salt'], askedOn: '2026-01-01' };
    for (const answer of [old, { how: 'declined' }, { how: 'does-not-know' }] as const) expect(idsPut({ home_extras: answer })).toEqual([]);
    expect(idsPut({ home_extras: { ...old, askedOn: '2026-10-01' } })).toHaveLength(2);
  });

  it('leaves the very same list for the same answers', () => {
    const place = { answers: { home_extras: asked(['fluoridated-salt']) }, onDate, questions };
    expect(withoutIdleFollowUps(questions, place)).toBe(withoutIdleFollowUps(questions, { ...place }));
    const [first] = questions;
    expect(first && isPut(first, place)).toBe(true);
  });
});

it('an amount told earlier counts no more once the salt is no longer taken', () => {
  const answers = { home_extras: asked([]), salt_g_per_day: asked(3), salt_fluoride_mg_per_kg: asked(250) };
  expect(idsPut(answers)).toEqual([]);
});
