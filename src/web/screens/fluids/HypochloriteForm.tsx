import { useState } from 'react';
import { hypochloriteLines } from '../../../content/hypochloriteLines.ts';
import type { HypochloriteConvention, HypochloriteRecipe } from '../../../core/chemistry/products/diluteHypochlorite.ts';
import { formatDate } from '../../format.ts';
import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { densityField, HIGHEST_PERCENT, type ProtocolDraft, protocolProblems, rinseFields, workOutRinse } from './hypochloriteRinse.ts';
import { sayAmount } from './sayAmount.ts';
import { useWorkOut } from './useWorkOut.ts';
import { NumberLines, WorkOutForm } from './WorkOutForm.tsx';

const CONVENTIONS: readonly { readonly id: HypochloriteConvention; readonly label: string }[] = [
  { id: 'sodium-hypochlorite', label: 'sodium hypochlorite' },
  { id: 'available-chlorine', label: 'available chlorine' },
];

/** Off until the practice's own protocol is named; never above the highest strength; always with what it must never meet. */
export function HypochloriteForm({ today }: { readonly today: string }) {
  const [protocol, setProtocol] = useState<ProtocolDraft>({ name: '', by: '', date: '' });
  const [stockIs, setStockIs] = useState<HypochloriteConvention>('sodium-hypochlorite');
  const work = useWorkOut({
    needed: rinseFields,
    optional: densityField,
    choices: { ...protocol, stockIs },
    choiceProblems: protocolProblems(protocol, today),
    workOut: (numbers) => workOutRinse(numbers, stockIs),
  });
  const set = (part: Partial<ProtocolDraft>) => setProtocol((before) => ({ ...before, ...part }));
  return (
    <section id="hypochlorite" aria-label="Hypochlorite dilution">
      <h2>Hypochlorite dilution</h2>
      <p>
        <strong>Off, unless the practice has written its own dated protocol.</strong> This page only does the arithmetic of that protocol,
        up to {HIGHEST_PERCENT} %. It offers the rinse to nobody and puts it into no plan.
      </p>
      <HypochloriteLines />
      <WorkOutForm
        label="Hypochlorite dilution"
        work={work}
        say={(recipe) => <Recipe recipe={recipe} protocol={protocol} typed={work.typed} />}
      >
        <TextLine label="Name of the protocol" value={protocol.name} problem={work.problems.name} onChange={(name) => set({ name })} />
        <TextLine label="Who wrote it" value={protocol.by} problem={work.problems.by} onChange={(by) => set({ by })} />
        <TextLine
          label="Date of the protocol"
          value={protocol.date}
          problem={work.problems.date}
          hint="A day like 2026-06-14."
          onChange={(date) => set({ date })}
        />
        <NumberLines fields={rinseFields} work={work} />
        <SelectLine
          label="The bottle's percentage is of"
          value={stockIs}
          options={CONVENTIONS}
          hint="As the label says. Taking one for the other is 5 % off."
          onChange={setStockIs}
        />
        <NumberLines fields={densityField} work={work} />
      </WorkOutForm>
    </section>
  );
}

function HypochloriteLines() {
  return (
    <>
      <ul className="plain-lines">
        {hypochloriteLines.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ul>
      <Why label="sources" about="hypochlorite">
        <SourceList sources={hypochloriteLines.map(({ source }) => source)} />
      </Why>
    </>
  );
}

interface RecipeProps {
  readonly recipe: HypochloriteRecipe;
  readonly protocol: ProtocolDraft;
  readonly typed: Readonly<Record<string, string>>;
}

function Recipe({ recipe: { stockMl, waterMl, availableChlorinePpm, convention }, protocol, typed }: RecipeProps) {
  return (
    <>
      <p className="opening">
        {sayAmount(stockMl)} mL from the bottle and {sayAmount(waterMl)} mL of water make {typed.volumeMl} mL of {typed.targetPercent} %:{' '}
        {sayAmount(availableChlorinePpm)} ppm available chlorine.
      </p>
      <p>
        By the protocol "{protocol.name.trim()}" of {formatDate(protocol.date.trim())}, written by {protocol.by.trim()}. {convention}
      </p>
      <p>
        <strong>{hypochloriteLines[0]?.says}</strong> Fresh each day.
      </p>
    </>
  );
}
