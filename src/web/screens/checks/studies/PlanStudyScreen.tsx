import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useMemo, useState } from 'react';
import type { ChecksView } from '../../../../api/swabChecks.ts';
import { noiseOfMeter } from '../../../../core/reading/blendNoise.ts';
import { content } from '../../../content.ts';
import { useChecks } from '../../../data/checkQueries.ts';
import { planStudy } from '../../../data/studyQueries.ts';
import { useSend } from '../../../data/useSend.ts';
import { ChoiceLine, SelectLine, TextLine, TicksLine } from '../../../parts/fields.tsx';
import { Link } from '../../../parts/Link.tsx';
import { LoadState } from '../../../parts/LoadState.tsx';
import { goTo } from '../../../routing.ts';
import { buildPlan, FIGURES, findProblems, isOfPairs, type PlanDraft, wishOf } from './planDraft.ts';
import { sayPlannedWidths, saySize, sayThought, sayWidth } from './sayPlan.ts';
import { type PlannedKind, STUDY_WORDS, WHY_NO_PEOPLE } from './studyWords.ts';
import { type Sizes, useSizes } from './useSizes.ts';

/** What is to be learnt, by whom, how closely; the page answers how much work that is. */
export function PlanStudyScreen() {
  const checks = useChecks();
  if (!checks.data) return <LoadState query={checks} what="meters and lots" />;
  const [first] = checks.data.meters;
  if (!first) return <h1>A study needs a meter. Add it under Practice first.</h1>;
  return (
    <>
      <h1>Plan a study</h1>
      <p className="opening">{WHY_NO_PEOPLE}</p>
      <PlanForm checks={checks.data} firstMeterId={first.meter.id} />
    </>
  );
}

const KIND_OPTIONS = (Object.keys(STUDY_WORDS) as PlannedKind[]).map((id) => {
  const { name, can, cannot } = STUDY_WORDS[id];
  return { id, label: name, hint: `${can} ${cannot}` };
});
const USUAL_WIDTH = '10';
const USUAL_WITHIN = '20';
const USUAL_MOST = '60';

/** Lots that may still be used, the one that lasts longest first. */
const usableLots = ({ lots, today }: ChecksView) =>
  lots.filter(({ expiresOn }) => expiresOn >= today).sort((a, b) => b.expiresOn.localeCompare(a.expiresOn));

function PlanForm({ checks, firstMeterId }: { readonly checks: ChecksView; readonly firstMeterId: string }) {
  const client = useQueryClient();
  const sending = useSend();
  const lots = usableLots(checks);
  const [draft, setDraft] = useState<PlanDraft>(() => ({
    kind: 'hands',
    meterId: firstMeterId,
    hands: checks.members.filter(({ trainedSwab }) => trainedSwab).map(({ name }) => name),
    lotIds: lots.slice(0, 1).map(({ id }) => id),
    newMeterId: '',
    of: FIGURES.hands[0]?.id ?? '',
    width: USUAL_WIDTH,
    mostSwabs: USUAL_MOST,
  }));
  const meter = checks.meters.find(({ meter: { id } }) => id === draft.meterId)?.meter;
  const noise = useMemo(() => meter && noiseOfMeter(content.readingNoise, meter), [meter]);
  const sizes = useSizes(noise ? wishOf(draft, noise) : null);
  const change = (part: Partial<PlanDraft>) => setDraft({ ...draft, ...part });
  const chooseKind = (kind: PlannedKind) => change(beginKind(kind, checks, draft.meterId));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (sizes.state !== 'done') return;
    const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
    void sending.send(async () => {
      const { id } = await planStudy(buildPlan(draft, sizes.sizing, seed));
      await client.invalidateQueries({ queryKey: ['checks'] });
      goTo(`/checks/studies/${id}`);
    });
  };
  return (
    <form className="form study-plan" noValidate onSubmit={submit} aria-label="Study">
      <ChoiceLine label="What do you want to learn?" value={draft.kind} options={KIND_OPTIONS} onChange={chooseKind} />
      <PlanFields checks={checks} lots={lots} draft={draft} change={change} />
      <PlanAnswer sizes={sizes} thought={noise && sayThought(draft.kind, noise)} />
      <p className="problem" role="alert">
        {sending.problem}
      </p>
      <div className="actions">
        <button type="submit" className="action primary" disabled={sizes.state !== 'done' || sending.isSending}>
          Plan this study
        </button>
        <Link to="/checks/studies" className="action">
          Leave without saving
        </Link>
      </div>
    </form>
  );
}

/** What the page takes for granted when a kind is chosen; all of it can be changed. */
function beginKind(kind: PlannedKind, checks: ChecksView, meterId: string): Partial<PlanDraft> {
  const names = checks.members.map(({ name }) => name);
  const trained = checks.members.filter(({ trainedSwab }) => trainedSwab).map(({ name }) => name);
  const lots = usableLots(checks).map(({ id }) => id);
  return {
    kind,
    of: FIGURES[kind][0]?.id ?? '',
    hands: kind === 'hands' ? trained : (trained.length > 0 ? trained : names).slice(0, 1),
    lotIds: kind === 'lots' ? lots : kind === 'new-lot' ? lots.slice(0, 2).reverse() : lots.slice(0, 1),
    newMeterId: checks.meters.find(({ meter: { id } }) => id !== meterId)?.meter.id ?? '',
    width: isOfPairs(kind) ? USUAL_WITHIN : USUAL_WIDTH,
  };
}

interface PlanFieldsProps {
  readonly checks: ChecksView;
  readonly lots: ChecksView['lots'];
  readonly draft: PlanDraft;
  readonly change: (part: Partial<PlanDraft>) => void;
}

function PlanFields({ checks, lots, draft, change }: PlanFieldsProps) {
  const { kind, hands, lotIds } = draft;
  const problems = findProblems(draft);
  const members = checks.members.map(({ name }) => ({ id: name, label: name }));
  return (
    <>
      {checks.meters.length > 1 && (
        <SelectLine
          label={kind === 'meters' ? 'Meter in use' : 'Meter'}
          value={draft.meterId}
          options={checks.meters.map(({ meter }) => ({ id: meter.id, label: meter.name }))}
          onChange={(meterId) => change({ meterId })}
        />
      )}
      {kind === 'hands' ? (
        <TicksLine
          label="Members"
          options={members}
          ticked={hands}
          problem={problems.hands}
          onChange={(names) => change({ hands: names })}
        />
      ) : (
        <SelectLine
          label="Who takes all of the swabs"
          value={hands[0] ?? ''}
          problem={problems.hands}
          options={members}
          onChange={(name) => change({ hands: [name] })}
        />
      )}
      <LotFields kind={kind} lots={lots} lotIds={lotIds} problem={problems.lotIds} change={change} />
      {FIGURES[kind].length > 1 && (
        <SelectLine
          label="The figure that matters"
          value={draft.of}
          options={FIGURES[kind].map(({ id, name }) => ({ id, label: name }))}
          onChange={(of) => change({ of })}
        />
      )}
      <TextLine
        label={isOfPairs(kind) ? 'Still the same within' : 'Width of its 95 % interval'}
        kind="number"
        unit={isOfPairs(kind) ? '%' : 'percentage points'}
        value={draft.width}
        problem={problems.width}
        hint={isOfPairs(kind) ? 'So much more, and as far the other way.' : 'From 20 % to 30 % is 10 percentage points.'}
        onChange={(width) => change({ width })}
      />
      <TextLine
        label="Swabs at most"
        kind="number"
        value={draft.mostSwabs}
        problem={problems.mostSwabs}
        onChange={(mostSwabs) => change({ mostSwabs })}
      />
    </>
  );
}

function LotFields({
  kind,
  lots,
  lotIds,
  problem,
  change,
}: Pick<PlanDraft, 'kind' | 'lotIds'> & Pick<PlanFieldsProps, 'lots' | 'change'> & { readonly problem: string | undefined }) {
  const options = lots.map(({ id, name }) => ({ id, label: name }));
  if (kind === 'lots')
    return <TicksLine label="Lots" options={options} ticked={lotIds} problem={problem} onChange={(ids) => change({ lotIds: ids })} />;
  if (kind === 'new-lot') {
    const [old = '', next = ''] = lotIds;
    return (
      <>
        <SelectLine label="Lot in use" value={old} options={options} onChange={(id) => change({ lotIds: [id, next] })} />
        <SelectLine label="New lot" value={next} options={options} problem={problem} onChange={(id) => change({ lotIds: [old, id] })} />
      </>
    );
  }
  if (lots.length === 0) return <p className="hint">No swab lot in date is on record, so none stands on the run sheet.</p>;
  return <SelectLine label="Lot" value={lotIds[0] ?? ''} options={options} onChange={(id) => change({ lotIds: [id] })} />;
}

/** How much work it is, and what it will tell. */
function PlanAnswer({ sizes, thought }: { readonly sizes: Sizes; readonly thought: string | undefined }) {
  return (
    <section className="plan-answer" aria-label="What it takes" aria-live="polite">
      <h2>What it takes</h2>
      {sizes.state === 'nothing' && <p className="hint">Something above needs a look first.</p>}
      {sizes.state === 'working' && <p className="hint">Working it out ...</p>}
      {sizes.state === 'problem' && <p className="problem">{sizes.says}</p>}
      {sizes.state === 'done' && (
        <>
          <p className="opening">{saySize(sizes.wish, sizes.sizing)}</p>
          {sayWidth(sizes.wish, sizes.sizing).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          {sayPlannedWidths(sizes.wish, sizes.sizing) && <p className="side-note">{sayPlannedWidths(sizes.wish, sizes.sizing)}</p>}
          <p className="side-note">{thought}</p>
        </>
      )}
    </section>
  );
}
