import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { VisitFileSchema } from '../../src/api/visitSchema.ts';
import { runCli } from '../../src/cli/runCli.ts';
import { demoPractice } from '../../src/content/demo/practice.ts';
import { nameOnLeaflet } from '../../src/core/leaflet/nameOnLeaflet.ts';
import type { VisitAssessment } from '../../src/core/visit/types.ts';
import { cliIoOf } from '../cliIo.ts';

const files = readdirSync('examples').filter((file) => file.endsWith('.json'));
const assessments = new Map<string, VisitAssessment>();

async function assess(slug: string): Promise<VisitAssessment> {
  const file = files.find((name) => name.endsWith(`-${slug}.json`)) ?? slug;
  const known = assessments.get(file);
  if (known) return known;
  const io = cliIoOf();
  const code = await runCli(['assess', join('examples', file)], io);
  expect({ code, err: io.err }).toEqual({ code: 0, err: [] });
  const assessment = JSON.parse(io.out.join('\n')) as VisitAssessment;
  assessments.set(file, assessment);
  return assessment;
}

const planIds = ({ plan }: VisitAssessment) => plan.lines.map(({ shelfItemId }) => shelfItemId);
const neededKinds = ({ needs }: VisitAssessment) => needs.filter(({ state }) => state === 'needed').map(({ kind }) => kind);
const stopsOf = ({ plan }: VisitAssessment, id: string) =>
  plan.notOffered.filter((one) => one.shelfItemId === id && one.level === 'stop').map(({ because }) => because);
const leafletText = ({ leaflet }: VisitAssessment) => JSON.stringify(leaflet);

describe('the sixteen examples', () => {
  test('are sixteen, numbered, and each is told in the list beside them', () => {
    expect(files.map((file) => file.slice(0, 2))).toEqual(Array.from({ length: 16 }, (_, i) => String(i + 1).padStart(2, '0')));
    const page = readFileSync('examples/README.md', 'utf8');
    expect(files.filter((file) => !page.includes(file))).toEqual([]);
  });

  test.each(files)('%s is an invented person of the invented practice', (file) => {
    const visit = VisitFileSchema.parse(JSON.parse(readFileSync(join('examples', file), 'utf8')));
    const { practice } = visit;
    expect(practice === 'demo' ? demoPractice : practice).toMatchObject({ name: 'Tern Quay Dental', invented: true });
    expect(visit.about).toMatch(/^Invented person at the invented practice Tern Quay Dental\. /);
  });

  test.each(files)('%s as text is a page without a hole in it', async (file) => {
    const io = cliIoOf();
    expect(await runCli(['assess', join('examples', file), '--text'], io)).toBe(0);
    const page = io.out.join('\n');
    expect(page).toMatch(/SAFETY CHECK[\s\S]+SWAB READING[\s\S]+LEVEL[\s\S]+PLAN[\s\S]+LEAFLET/);
    expect(page).not.toMatch(/undefined|NaN|\[object|null/);
    expect(Math.max(...page.split('\n').map((line) => line.length))).toBeLessThanOrEqual(96);
  });

  test.each(files)('%s: a leaflet holds no reading, no level and nothing unsigned', async (file) => {
    const assessment = await assess(file);
    const { person } = JSON.parse(readFileSync(join('examples', file), 'utf8')) as { person: { name: string } };
    const text = leafletText(assessment);
    expect(text).toContain(person.name);
    expect(text).not.toMatch(/RLU|\bin 100\b|moderate|extreme/);
    for (const { shelfItemId, state } of assessment.plan.lines.filter((line) => line.state === 'waiting-for-signature')) {
      const item = demoPractice.shelf.find(({ id }) => id === shelfItemId);
      expect({
        state,
        printed: assessment.leaflet.day.some(
          ({ text: step }) => item && step.includes(nameOnLeaflet(item, assessment.leaflet.language).text),
        ),
      }).toEqual({
        state,
        printed: false,
      });
    }
  });

  test.each(files)('%s: an item that needs a signature is waiting or signed, never merely proposed', async (file) => {
    const { plan } = await assess(file);
    const released = plan.lines.filter(({ shelfItemId, state }) => {
      const item = demoPractice.shelf.find(({ id }) => id === shelfItemId);
      return item?.release !== 'anyone' && state === 'proposed';
    });
    expect(released).toEqual([]);
  });

  test.each(files)('%s says the same as one line of a stream', async (file) => {
    const io = cliIoOf(JSON.stringify(JSON.parse(readFileSync(join('examples', file), 'utf8'))));
    expect(await runCli(['assess', '-', '--lines'], io)).toBe(0);
    expect(JSON.parse(io.out[0] ?? '')).toEqual(await assess(file));
  });
});

test('returning adult: high by a white spot, above the cut-off, and the rise since June is within the noise', async () => {
  const it = await assess('returning-adult');
  expect(it.proposed).toMatchObject({ protocol: 'four_level_6plus_2019', level: 'high', needsConfirmation: false });
  expect(it.proposed?.drivers[0]).toMatchObject({ item: 'lesion_white_spot_smooth_new', role: 'disease' });
  expect(it.confirmed?.level).toBe('high');
  expect(it.reading).toMatchObject({ state: 'valid', counted: true, verdict: 'above' });
  expect(it.reading.change?.verdict).toBe('within-noise');
  expect(it.unknownAnswers).toEqual([]);
});

test('returning adult: the prescription-strength paste waits, and her leaflet has the ordinary one meanwhile', async () => {
  const it = await assess('returning-adult');
  expect(it.plan.lines.find(({ shelfItemId }) => shelfItemId === 'paste-naf-5000')?.state).toBe('waiting-for-signature');
  expect(leafletText(it)).not.toMatch(/5,000|very strong/i);
  expect(it.leaflet.signedBy).toEqual([]);
  expect(it.leaflet.day.some(({ text }) => text.startsWith('Fluoride paste: brush every tooth'))).toBe(true);
});

test('new adult: four kinds of unknown stay apart, and the reading is too close to call', async () => {
  const it = await assess('new-adult');
  const kinds = Object.fromEntries(it.unknownAnswers.map(({ question, kind }) => [question, kind]));
  expect(kinds).toEqual({ paste_strength: 'does-not-know', water_fluoridated: 'does-not-know', tobacco: 'declined' });
  expect(it.reading).toMatchObject({ verdict: 'too-close', counted: true });
  expect(it.needs.find(({ kind }) => kind === 'antimicrobial')?.state).toBe('undecided');
  expect(it.proposed).toMatchObject({ level: 'moderate', needsConfirmation: true });
  expect(it.plan.fluorideSentence).toMatch(/^At least .*water( and other fluoride at home)? not known/);
});

test('dry mouth: extreme by a new cavity and a measured low flow; a visit without a swab is complete', async () => {
  const it = await assess('dry-mouth');
  expect(it.proposed?.level).toBe('extreme');
  expect(it.reading).toMatchObject({ state: 'not-taken', counted: false });
  expect(neededKinds(it)).toEqual(expect.arrayContaining(['saliva', 'referral']));
  expect(stopsOf(it, 'rinse-chlorhexidine-alcohol').join()).toMatch(/alcohol/);
  expect(planIds(it)).toContain('spray-saliva');
});

test('root lesions: the signed paste is on the leaflet with who signed; no gum beside a denture', async () => {
  const it = await assess('root-lesions');
  expect(it.plan.lines.find(({ shelfItemId }) => shelfItemId === 'paste-naf-5000')?.state).toBe('signed');
  expect(it.leaflet.signedBy.join()).toMatch(/Dr\. Ahlgren/);
  expect(it.leaflet.day.some(({ text }) => /very strong fluoride paste/i.test(text))).toBe(true);
  expect(stopsOf(it, 'gum-xylitol').join()).toMatch(/denture/);
  expect(planIds(it).filter((id) => id.startsWith('gum-'))).toEqual([]);
  expect(it.reading.change?.verdict).toBe('within-noise');
});

test('child of four: the list for young children, the weight asked, and no strong fluoride at home', async () => {
  const it = await assess('child-of-four');
  expect(it.proposed).toMatchObject({ protocol: 'four_level_0_5_2010', level: 'high' });
  expect(it.facts).toMatchObject({ weightKg: 16.2, canSpit: false });
  expect(it.plan.fluoride).toMatchObject({ weightAssumed: false, weightKg: 16.2 });
  expect(planIds(it)).toContain('paste-naf-1000');
  expect(planIds(it).filter((id) => ['paste-naf-2800', 'paste-naf-5000', 'gel-snf2'].includes(id))).toEqual([]);
  expect(planIds(it).some((id) => /gum|lozenge|rinse/.test(id))).toBe(false);
  expect(it.leaflet.cautions.join(' ')).not.toMatch(/(?<!not )make them vomit/);
});

test('twelve with braces: a swab after polishing is not counted; the paste licensed from 16 is not offered; the leaflet is in Spanish', async () => {
  const it = await assess('twelve-with-braces');
  expect(it.reading).toMatchObject({ state: 'void', counted: false });
  expect(it.reading.verdict).toBeUndefined();
  expect(it.reading.headline).toMatch(/^Not counted: taken after cleaning/);
  expect(stopsOf(it, 'paste-naf-5000').join()).toMatch(/under 16/);
  expect(it.mouth.reasons).toContain('braces-or-retainer');
  expect(planIds(it).filter((id) => id.startsWith('gum-'))).toEqual([]);
  expect(it.leaflet).toMatchObject({ language: 'es' });
});

test('teenager with a parent: what was not asked is unknown, and food is then not limited', async () => {
  const it = await assess('teenager-with-parent');
  expect(it.safetyUnknown).toEqual(['private_conditions', 'pregnant']);
  expect(it.facts.pregnant).toBeUndefined();
  expect(it.plan.diet.allowed).toBe('after-only');
  const asksFirst = it.plan.notOffered.filter(({ level }) => level === 'ask-first').map(({ shelfItemId }) => shelfItemId);
  expect(asksFirst).toEqual(expect.arrayContaining(['paste-naf-5000', 'varnish-naf-resin', 'gum-xylitol']));
  expect(planIds(it).filter((id) => asksFirst.includes(id))).toEqual([]);
  expect(it.reading.verdict).toBe('above');
});

test('pregnant adult: sickness stops every limit on food, and the reason stays off the leaflet', async () => {
  const it = await assess('pregnant-adult');
  expect(it.facts.pregnant).toBe(true);
  expect(it.plan.diet).toMatchObject({ allowed: 'after-only', private: true });
  expect(it.reading.verdict).toBe('below');
  expect(neededKinds(it)).not.toContain('antimicrobial');
  expect(planIds(it)).not.toContain('varnish-naf-resin');
  expect(it.leaflet.tryThis).not.toMatch(/with a meal|in between/);
  expect(leafletText(it)).not.toMatch(/sickness|nausea/i);
});

test('milk allergy: the paste with milk protein is not offered, and says why', async () => {
  const it = await assess('milk-allergy');
  expect(stopsOf(it, 'paste-casein')).toEqual(['milk allergy: it holds milk protein']);
  expect(planIds(it)).not.toContain('paste-casein');
  expect(planIds(it)).toContain('paste-hydroxyapatite');
  expect(it.proposed?.level).toBe('extreme');
});

test.each([
  ['no-natural-teeth', 'no-natural-teeth', /^No natural teeth: caries level does not apply/],
  ['implants-only', 'implants-only', /^Implants only: caries level does not apply/],
  ['no-teeth-yet', 'no-teeth-yet', /^No teeth yet: caries level does not apply/],
] as const)('%s: no level, said in words', async (slug, reason, sentence) => {
  const it = await assess(slug);
  expect(it.mouth).toMatchObject({ kind: 'level-does-not-apply', reasons: [reason] });
  expect(it.proposed).toBeNull();
  expect(it.confirmed).toBeNull();
  expect(it.compare).toEqual([]);
  expect(it.proposedSentence).toMatch(sentence);
  expect(planIds(it).some((id) => /paste|varnish|rinse|gum/.test(id))).toBe(false);
});

test('acid wear: its own advice, no item of the list; a reading at the end of the meter is a bound', async () => {
  const it = await assess('acid-wear');
  expect(it.mouth.reasons).toContain('acid-wear');
  expect(neededKinds(it)).toContain('acid-wear-advice');
  expect(it.proposed).toMatchObject({ level: 'low', counts: { disease: 0 } });
  expect(it.confirmed).toMatchObject({ level: 'moderate', changedFrom: 'low' });
  expect(it.reading).toMatchObject({ bound: 'at-least', verdict: 'above' });
  expect(it.reading.headline).toMatch(/60,000 RLU or more/);
  expect(it.reading.interval).toBeUndefined();
});

test('acid wear: advice of its own on the page, and reflux named to nobody', async () => {
  const it = await assess('acid-wear');
  expect(it.plan.advice.map(({ id }) => id)).toEqual(expect.arrayContaining(['acid-rinse', 'acid-with-meals', 'acid-ask-doctor']));
  expect(it.leaflet.advice.join(' ')).toMatch(/straw/);
  expect(leafletText(it)).not.toMatch(/reflux/i);
});

test('no teeth yet: advice to the carer, nothing for teeth, the first visit with the first tooth', async () => {
  const it = await assess('no-teeth-yet');
  expect(it.plan.lines).toEqual([]);
  expect(it.unknownAnswers).toEqual([]);
  expect(it.leaflet).toMatchObject({ title: 'Mouth care at home', nextDate: 'When the first tooth comes.' });
  expect(it.leaflet.advice.join(' ')).toMatch(/bottle/);
  expect(it.mouth.swab?.site).toBe('none');
});

test('overdenture roots: the level is for the roots, nothing of pits or contacts is missing, and another site is not counted', async () => {
  const it = await assess('overdenture-roots');
  expect(it.mouth).toMatchObject({ kind: 'level-with-note', reasons: ['overdenture-roots'] });
  expect(it.proposed).toMatchObject({ level: 'high', needsConfirmation: false });
  expect(it.proposed?.missing.map(({ item }) => item)).not.toEqual(
    expect.arrayContaining(['pits_fissures_deep', 'restoration_interproximal', 'roots_exposed']),
  );
  expect(it.reading).toMatchObject({ state: 'void', counted: false });
  expect(it.plan.lines.find(({ shelfItemId }) => shelfItemId === 'paste-naf-5000')?.state).toBe('waiting-for-signature');
  expect(planIds(it).filter((id) => id.startsWith('gum-'))).toEqual([]);
  expect(it.plan.bitewingsSentence).toBe('');
});

test('lost gland function: measure first; what is settled is said, and nothing is low on a guess', async () => {
  const it = await assess('lost-gland-function');
  expect(it.mouth.sentences.join(' ')).toMatch(/measure saliva first.*Not settled: the level/);
  expect(it.unknownAnswers).toEqual([{ question: 'resting_flow', kind: 'not-asked' }]);
  expect(it.proposed).toMatchObject({ level: 'moderate', needsConfirmation: true });
  expect(it.confirmed).toBeNull();
  expect(planIds(it)).toContain('spray-saliva');
  expect(it.plan.lines.find(({ shelfItemId }) => shelfItemId === 'paste-naf-5000')?.state).toBe('waiting-for-signature');
  expect(it.plan.bitewingsSentence).toMatch(/^Last bitewings: February 2026/);
});

test('measured meter: assumed and own noise are blended with their weights, and the verdict rests on the blend', async () => {
  const it = await assess('measured-meter');
  const says = it.reading.sentences.join(' ');
  expect(it.reading).toMatchObject({ counted: true, verdict: 'above' });
  // Weight of own = df / (df + df of the prior), 23 / 27, 2 / 4 and 12 / 16; by hand the blend of repeatability is
  // (23 * 0.0205 + 4 * ln 1.0625) / 27 = 0.02644, a coefficient of variation of 16.4 %.
  expect(says).toMatch(/repeatability 16 % \(own study of 30 swabs, 85 % of the weight; the rest assumed, 25 %\)/);
  expect(says).toMatch(/hands 11 % \(own study of 30 readings, 50 % of the weight; the rest assumed, 15 %\)/);
  expect(says).toMatch(/day-to-day variation 32 % \(own study of 24 readings, 75 % of the weight; the rest assumed, 35 %\)/);
  expect(says).toMatch(/Differences between swab lots are not known here and not in it\./);

  const file = JSON.parse(readFileSync('examples/16-measured-meter.json', 'utf8')) as { practice: { meters: { own?: unknown }[] } };
  delete file.practice.meters[0]?.own;
  const io = cliIoOf(JSON.stringify(file));
  expect(await runCli(['assess', '-', '--text'], io)).toBe(0);
  expect(io.out.join(' ')).toMatch(/5,900 RLU\. Too close to call\./);
});
