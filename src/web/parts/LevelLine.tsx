import type { Level } from '../../core/risk/types.ts';

const WIDTH = 320;
const HEIGHT = 9;
const GAP = 4;

/** The level as its word on a ruled line: as many equal notches as the list has levels, filled up to it, the names under them. */
export function LevelLine({
  levels,
  level,
  note,
}: {
  readonly levels: readonly Level[];
  readonly level: Level | null;
  readonly note?: string;
}) {
  const filledTo = level === null ? -1 : levels.indexOf(level);
  const step = WIDTH / levels.length;
  const said = level === null ? 'No level' : `${level}, ${filledTo + 1} of ${levels.length}`;
  return (
    <div className="level-line">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={note ? `${said}, ${note}` : said} preserveAspectRatio="none">
        {levels.map((name, i) => (
          <rect
            key={name}
            className={i <= filledTo ? 'notch filled' : 'notch'}
            x={i * step + 0.75}
            y={0.75}
            width={step - GAP - 1.5}
            height={HEIGHT - 1.5}
          />
        ))}
      </svg>
      <ol aria-hidden="true">
        {levels.map((name) => (
          <li key={name} className={name === level ? 'at' : undefined}>
            {name}
          </li>
        ))}
      </ol>
    </div>
  );
}
