import { COMPLETE_WITHOUT } from '../../../core/reading/readingSentences.ts';
import type { Meter, SwabCondition } from '../../../core/reading/types.ts';
import { citationOf } from '../../content.ts';
import { formatNumber } from '../../format.ts';
import { STATUS_WORDS } from '../../parts/Sources.tsx';
import { PathDrawing } from './PathDrawing.tsx';

interface SwabCardProps {
  readonly practiceName: string;
  readonly meter: Meter | undefined;
  readonly conditions: readonly SwabCondition[];
}

/** Only on paper: one page for the wall, without anybody's name. */
export function SwabCard({ practiceName, meter, conditions }: SwabCardProps) {
  const sources = [...new Map(conditions.map(({ source }) => [source.key, source])).keys()];
  const list = (failing: SwabCondition['failing']) => conditions.filter((c) => c.failing === failing);
  return (
    <article className="swab-card">
      <h2>How a swab is taken here</h2>
      <p>{practiceName}</p>
      <PathDrawing />
      <ol>
        <li>Ask: before any cleaning today? When did you last eat, brush, rinse?</li>
        <li>Look at the pack: in date, and its lot on the page.</li>
        <li>Wipe once, firmly, along the gum line on the tongue side, from canine to canine.</li>
        <li>Activate the swab, put it in the meter, press start on the page.</li>
        <li>Read the number when the meter has counted down, and type it at once.</li>
      </ol>
      <div className="swab-card-columns">
        <CardList title="Not counted unless" conditions={list('not-counted')} sources={sources} />
        <CardList title="Counted with caution unless" conditions={list('flag')} sources={sources} />
      </div>
      <p>
        A failed swab is not repeated the same day. {COMPLETE_WITHOUT} The number says how active plaque is at this place; it does not say
        decay and enters no risk level.
      </p>
      {meter && (
        <p>
          {meter.name}: shows {formatNumber(meter.lowestRlu)} to {formatNumber(meter.highestRlu)} RLU, counts down {meter.countdownS} s,
          cut-off {formatNumber(meter.cutoffRlu)} RLU from its own instructions. Another meter has another scale.
        </p>
      )}
      <ol className="swab-card-sources">
        {sources.map((key) => (
          <li key={key}>{citationOf(key)}</li>
        ))}
      </ol>
    </article>
  );
}

interface CardListProps {
  readonly title: string;
  readonly conditions: readonly SwabCondition[];
  /** Keys in the order of their numbers. */
  readonly sources: readonly string[];
}

function CardList({ title, conditions, sources }: CardListProps) {
  return (
    <section>
      <h3>{title}</h3>
      <ul>
        {conditions.map(({ id, label, source }) => (
          <li key={id}>
            {label}{' '}
            <span className="status">
              ({STATUS_WORDS[source.status]}, {sources.indexOf(source.key) + 1})
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
