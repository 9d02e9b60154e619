import type { LeafletLanguage } from '../../../core/leaflet/types.ts';
import { COMPOUND_WORDS } from '../../../core/regimen/checkLabel.ts';
import { settleTables } from '../../../core/regimen/disagreement/settleTables.ts';
import { FORMS, listPackTraits } from '../../../core/regimen/listPackTraits.ts';
import type { Agent } from '../../../core/regimen/tables.ts';
import { content } from '../../content.ts';
import { useRules } from '../../data/queries.ts';
import { capitalise, formatNumber } from '../../format.ts';
import { firstNeed, NEED_ORDER, needWords } from '../../needWords.ts';
import { ChoiceLine, SelectLine, TextLine, TickLine, TicksLine, UnitChoice } from '../../parts/fields.tsx';
import { RELEASE_WORDS } from './sayItem.ts';
import {
  type Compound,
  chooseAgent,
  findAgent,
  listLabelDoubts,
  ppmOf,
  RELEASES,
  releaseOf,
  type ShelfDraft,
  type ShelfProblems,
  sayFluorideSums,
  sayStrength,
  suggestLeafletName,
  suggestName,
} from './shelfDraft.ts';

interface FieldsProps {
  readonly draft: ShelfDraft;
  readonly problems: ShelfProblems;
  readonly onChange: (part: Partial<ShelfDraft>) => void;
}

/** Every line of an item, in the order in which a pack is read. */
export function ShelfFields(props: FieldsProps) {
  const { draft, problems, onChange } = props;
  const agent = findAgent(draft.agentId);
  return (
    <>
      <section aria-label="What it is">
        <h2>What it is</h2>
        <SelectLine
          label="Kind"
          value={draft.agentId}
          options={AGENT_OPTIONS}
          problem={problems.agentId}
          hint={agent && <AboutAgent agent={agent} />}
          onChange={(agentId) => onChange(chooseAgent(draft, agentId))}
        />
        <SelectLine label="Form" value={draft.form} options={FORM_OPTIONS} onChange={(form) => onChange({ form })} />
        {agent && agent.meets.length > 1 && (
          <TicksLine
            label="Kept here for"
            options={agent.meets.map((need) => ({ id: need, label: needWords(need) }))}
            ticked={draft.meets}
            hint="Untick a need for which the practice does not want it proposed."
            onChange={(ticked) => onChange({ meets: agent.meets.filter((need) => ticked.includes(need)) })}
          />
        )}
        <ReleaseLine {...props} />
      </section>
      <StrengthSection {...props} />
      <NameSection {...props} />
      <PackSection {...props} />
      <UseSection {...props} />
      <TraitsSection {...props} />
    </>
  );
}

const AGENT_OPTIONS = [
  { id: '', label: 'choose' },
  ...[...NEED_ORDER, undefined].map((need) => ({
    group: need === undefined ? 'No need by itself' : needWords(need),
    options: content.regimen.agents.filter((agent) => firstNeed(agent.meets) === need).map(({ id, name }) => ({ id, label: name })),
  })),
].filter((option) => !('options' in option) || option.options.length > 0);

const FORM_OPTIONS = FORMS.map((id) => ({ id, label: id }));

/** What the kind decides, said once it is chosen. */
function AboutAgent({ agent: { id, meets } }: { readonly agent: Agent }) {
  const chosen = useRules().data?.settings.disagreements;
  const byChoiceOnly = settleTables(content.regimen, chosen).agents.find((agent) => agent.id === id)?.byChoiceOnly;
  return (
    <>
      {meets.length === 0
        ? 'Meets no need by itself: it is never proposed.'
        : `Can meet: ${meets.map(needWords).join(', ').toLowerCase()}.`}
      {byChoiceOnly && ` Never proposed by itself: ${byChoiceOnly.says}.`}
    </>
  );
}

function ReleaseLine({ draft, onChange }: FieldsProps) {
  const atLeast = findAgent(draft.agentId)?.release ?? 'anyone';
  const allowed = RELEASES.slice(RELEASES.indexOf(atLeast));
  return (
    <SelectLine
      label="Released by"
      value={releaseOf(draft)}
      options={allowed.map((id) => ({ id, label: RELEASE_WORDS[id] }))}
      hint={
        atLeast === 'anyone'
          ? 'Once an item waits for a signature, only a dentist can free it again.'
          : `This kind is never released with less than that: ${RELEASE_WORDS[atLeast]}.`
      }
      onChange={(release) => onChange({ release })}
    />
  );
}

function StrengthSection({ draft, problems, onChange }: FieldsProps) {
  const holdsFluoride = findAgent(draft.agentId)?.ppmRange !== undefined;
  const said = sayStrength(draft);
  const workedOut = ppmOf({ ...draft, ppm: '' });
  return (
    <section aria-label="Strength">
      <h2>Strength</h2>
      {holdsFluoride && (
        <SelectLine
          label="Fluoride compound"
          value={draft.compound}
          options={[
            { id: '', label: 'not known' },
            ...(Object.entries(COMPOUND_WORDS) as [Compound, string][]).map(([id, label]) => ({ id, label })),
          ]}
          onChange={(compound: Compound | '') => onChange({ compound })}
        />
      )}
      <TextLine
        label={holdsFluoride ? 'Strength on the label' : 'Strength of the active'}
        kind="number"
        unit="%"
        value={draft.percent}
        problem={problems.percent}
        beside={holdsFluoride && <LabelChoices draft={draft} onChange={onChange} />}
        onChange={(percent) => onChange({ percent })}
      />
      {holdsFluoride && (
        <TextLine
          label="Fluoride"
          kind="number"
          unit="ppm"
          value={draft.ppm}
          problem={problems.ppm}
          hint={
            workedOut === undefined
              ? 'Needed where the pack gives no compound with its percentage.'
              : `Worked out from the compound: ${formatNumber(Math.round(workedOut))} ppm. Fill this in only where the pack says otherwise.`
          }
          onChange={(ppm) => onChange({ ppm })}
        />
      )}
      <LabelSays draft={draft} />
      {said && (
        <p role="status" className={said.isOpen ? 'unknown form-note' : 'form-note'}>
          {said.text}
        </p>
      )}
      <TextLine
        label="pH, where the pack says"
        kind="number"
        value={draft.pH}
        problem={problems.pH}
        hint="A liquid whose pH is not known is kept apart from hypochlorite."
        onChange={(pH) => onChange({ pH })}
      />
    </section>
  );
}

function LabelChoices({ draft, onChange }: Pick<FieldsProps, 'draft' | 'onChange'>) {
  return (
    <>
      <UnitChoice
        label="Percent of what"
        value={draft.percentOf}
        options={[
          { id: 'compound', label: 'of the compound' },
          { id: 'ion', label: 'of fluoride ion' },
        ]}
        onChange={(percentOf) => onChange({ percentOf })}
      />
      <UnitChoice
        label="By weight or by volume"
        value={draft.per}
        options={[
          { id: '', label: 'w/w or w/v not said' },
          { id: 'w/w', label: 'w/w, by weight' },
          { id: 'w/v', label: 'w/v, by volume' },
        ]}
        onChange={(per) => onChange({ per })}
      />
    </>
  );
}

/** What follows from the label while it is typed, and what on it cannot be right. */
function LabelSays({ draft }: Pick<FieldsProps, 'draft'>) {
  const sums = sayFluorideSums(draft);
  return (
    <div role="status">
      {sums && <p className="form-note">{sums}</p>}
      {listLabelDoubts(draft).map((says) => (
        <p key={says} className="unknown form-note">
          {says}
        </p>
      ))}
    </div>
  );
}

const NO_NAME = 'Left empty, the English name stands on a leaflet in this language, and the page says so before it is printed.';

interface NameLine {
  readonly field: 'name' | 'leafletEn' | 'leafletEs' | 'leafletFr' | 'leafletAr';
  readonly label: string;
  readonly suggested: string;
  readonly lang: LeafletLanguage;
  readonly hint?: string;
}

function NameSection({ draft, problems, onChange }: FieldsProps) {
  const lines: readonly NameLine[] = [
    { field: 'name', label: 'Our name for it', suggested: suggestName(draft), lang: 'en' },
    { field: 'leafletEn', label: 'On the leaflet, English', suggested: suggestLeafletName(draft, 'en'), lang: 'en' },
    { field: 'leafletEs', label: 'On the leaflet, Spanish', suggested: suggestLeafletName(draft, 'es'), lang: 'es' },
    { field: 'leafletFr', label: 'On the leaflet, French', suggested: suggestLeafletName(draft, 'fr'), lang: 'fr', hint: NO_NAME },
    { field: 'leafletAr', label: 'On the leaflet, Arabic', suggested: suggestLeafletName(draft, 'ar'), lang: 'ar', hint: NO_NAME },
  ];
  return (
    <section aria-label="Names">
      <h2>Names</h2>
      <p className="form-note">By ingredient and strength, never by a maker's name: a leaflet recommends no brand, and packs change.</p>
      {lines.map(({ field, label, suggested, lang, hint }) => (
        <TextLine
          key={field}
          label={label}
          lang={lang}
          hint={hint}
          value={draft[field] ?? suggested}
          problem={problems[field]}
          beside={
            draft[field] !== null &&
            suggested !== '' &&
            draft[field] !== suggested && (
              <button type="button" className="link" onClick={() => onChange({ [field]: null })}>
                use "<span lang={lang}>{suggested}</span>"
              </button>
            )
          }
          onChange={(value) => onChange({ [field]: value })}
        />
      ))}
    </section>
  );
}

function PackSection({ draft, problems, onChange }: FieldsProps) {
  return (
    <section aria-label="Pack and price">
      <h2>Pack and price</h2>
      <TextLine
        label="In one pack"
        kind="number"
        value={draft.packValue}
        problem={problems.packValue}
        beside={
          <UnitChoice
            label="Unit of the pack"
            value={draft.packUnit}
            options={[
              { id: 'g', label: 'g' },
              { id: 'mL', label: 'mL' },
              { id: 'piece', label: 'pieces' },
            ]}
            onChange={(packUnit) => onChange({ packUnit })}
          />
        }
        onChange={(packValue) => onChange({ packValue })}
      />
      <TextLine
        label="Price of one pack"
        kind="number"
        value={draft.price}
        problem={problems.price}
        hint="Pack, price and use together give the cost of a month; without one of them it is not known."
        onChange={(price) => onChange({ price })}
      />
      <TextLine
        label="Flavour"
        value={draft.flavour}
        hint="For example mint; none where it has none. A swap for its taste looks here."
        onChange={(flavour) => onChange({ flavour })}
      />
      <TextLine
        label="Minimum, packs"
        kind="number"
        value={draft.minimum}
        problem={problems.minimum}
        hint="At this number or below it stands among what to order."
        onChange={(minimum) => onChange({ minimum })}
      />
      <TickLine
        label="Stock"
        says="In stock"
        hint="Once its packs are counted, the plan goes by the count."
        isTicked={draft.inStock}
        onChange={(inStock) => onChange({ inStock })}
      />
    </section>
  );
}

function UseSection({ draft, problems, onChange }: FieldsProps) {
  return (
    <section aria-label="How it is used">
      <h2>How it is used</h2>
      <TickLine label="Where" says="At the visit, by the team" isTicked={draft.atVisit} onChange={(atVisit) => onChange({ atVisit })} />
      {!draft.atVisit && (
        <TextLine
          label="How often"
          kind="number"
          unit="times"
          value={draft.often}
          problem={problems.often}
          beside={
            <UnitChoice
              label="A day or a week"
              value={draft.oftenPer}
              options={[
                { id: 'day', label: 'a day' },
                { id: 'week', label: 'a week' },
              ]}
              onChange={(oftenPer) => onChange({ oftenPer })}
            />
          }
          onChange={(often) => onChange({ often })}
        />
      )}
      <TextLine
        label="How much, in words"
        value={draft.amount}
        problem={problems.amount}
        hint="As on the pack, for example: 10 mL for 1 minute. The amount of fluoride paste and varnish follows the age, whatever stands here."
        onChange={(amount) => onChange({ amount })}
      />
      <TextLine
        label="How much, in numbers"
        kind="number"
        value={draft.amountValue}
        problem={problems.amountValue}
        beside={
          <UnitChoice
            label="Unit of the amount"
            value={draft.amountUnit}
            options={[
              { id: 'g', label: 'g' },
              { id: 'mL', label: 'mL' },
            ]}
            onChange={(amountUnit) => onChange({ amountUnit })}
          />
        }
        hint="In one use. Sums of fluoride and of xylitol need it; without it they say at least, or ask."
        onChange={(amountValue) => onChange({ amountValue })}
      />
      {!draft.atVisit && (
        <TextLine
          label="Length of a course"
          kind="number"
          unit="days"
          value={draft.courseDays}
          problem={problems.courseDays}
          hint="Empty: it goes on."
          onChange={(courseDays) => onChange({ courseDays })}
        />
      )}
    </section>
  );
}

const PACK_TRAITS = listPackTraits(content.regimen);

function TraitsSection({ draft, onChange }: FieldsProps) {
  const options = [...new Set([...PACK_TRAITS, ...draft.traits])].map((id) => ({ id, label: capitalise(id) }));
  return (
    <section aria-label="What is in the pack">
      <h2>What is in the pack</h2>
      <ChoiceLine
        label="List of ingredients"
        value={draft.isPackChecked ? 'checked' : 'not-checked'}
        options={[
          { id: 'not-checked', label: 'Pack not checked yet', hint: 'Not proposed to anybody: the rules ask first.' },
          { id: 'checked', label: 'Checked on the pack', hint: 'What is ticked below is in it, what is not ticked is not.' },
        ]}
        onChange={(state) => onChange({ isPackChecked: state === 'checked' })}
      />
      {draft.isPackChecked && (
        <TicksLine
          label="In this pack"
          options={options}
          ticked={draft.traits}
          isLong
          hint="These are all that a rule or an allergy looks at. Form, fluoride and pH are known from above."
          onChange={(traits) => onChange({ traits })}
        />
      )}
    </section>
  );
}
