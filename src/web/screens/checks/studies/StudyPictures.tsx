import { scaleLinear, scaleLog } from 'd3-scale';
import type { StudyRow } from '../../../../core/checks/studyOutcome.ts';
import { sayPercent } from '../../../../core/reading/sayNoise.ts';
import { ticksOf } from '../../../charts/ReadingPicture.tsx';
import { formatNumber, plural } from '../../../format.ts';
import type { StudyPicture } from './studyPoints.ts';

const WIDTH = 460;
const HEIGHT = 284;
const PLOT = { left: 58, right: 452, top: 12, bottom: 206 };

interface DotsProps {
  readonly picture: StudyPicture;
  /** "member", "lot", "person". */
  readonly by: string;
}

/** One dot for each swab, in the order in which they were taken, in a column for each hand, lot or person. */
export function StudyDots({ picture: { groups, scale }, by }: DotsProps) {
  const points = groups.flatMap((group) => group.points);
  if (points.length === 0) return null;
  const values = points.map(({ value }) => value);
  const room = scale === 'ratio' ? 1.15 : 1.3;
  const [low, high] = [
    Math.min(...values, scale === 'ratio' ? 1 : Number.POSITIVE_INFINITY),
    Math.max(...values, scale === 'ratio' ? 1 : 0),
  ];
  const y = scaleLog()
    .domain([low / room, high * room])
    .range([PLOT.bottom, PLOT.top]);
  const column = (PLOT.right - PLOT.left) / groups.length;
  const ticks =
    scale === 'ratio' ? RATIO_TICKS.filter((t) => t >= low / room && t <= high * room) : ticksOf(y.domain() as [number, number]);
  const counted = points.filter(({ isCounted }) => isCounted).length;
  return (
    <svg
      className="study-picture"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${plural(points.length, 'swab')} by ${by} on a log scale, ${counted} of them counted. The table gives each.`}
    >
      {ticks.map((tick) => (
        <g key={tick}>
          <line className={tick === 1 && scale === 'ratio' ? 'axis' : 'grid'} x1={PLOT.left} x2={PLOT.right} y1={y(tick)} y2={y(tick)} />
          <text className="tick-text" x={PLOT.left - 8} y={y(tick) + 4} textAnchor="end">
            {scale === 'ratio' ? `×${tick}` : formatNumber(tick)}
          </text>
        </g>
      ))}
      {groups.map((group, at) => (
        <g key={group.name} transform={`translate(${PLOT.left + at * column},0)`}>
          {scale === 'rlu' && <Pair ys={group.points.filter((p) => p.isCounted).map(({ value }) => y(value))} x={column / 2} />}
          {group.points.map(({ run, value, isCounted }, i) => (
            <circle
              key={run.index}
              className={isCounted ? 'mark' : 'mark hollow'}
              cx={scale === 'rlu' ? column / 2 : ((i + 1) / (group.points.length + 1)) * column}
              cy={y(value)}
              r={points.length > 80 ? 2.5 : 4}
            />
          ))}
          <ColumnName name={group.name} x={column / 2} room={column} />
        </g>
      ))}
      <text className="tick-text" x="0" y={HEIGHT - 6}>
        {scale === 'ratio' ? 'Against the mean of its solution, log scale' : 'RLU, log scale; one line for each person'}
      </text>
    </svg>
  );
}

const RATIO_TICKS = [0.1, 0.2, 0.3, 0.5, 0.7, 1, 1.4, 2, 3, 5, 10];

function Pair({ ys, x }: { readonly ys: readonly number[]; readonly x: number }) {
  return ys.length < 2 ? null : <line className="tick" x1={x} x2={x} y1={Math.min(...ys)} y2={Math.max(...ys)} />;
}

/** Width of a letter on a phone, where the letters of a picture are larger. */
const LETTER = 11;

/** As much of a name as its column holds, a word to a line; the table has it whole. */
function ColumnName({ name, x, room }: { readonly name: string; readonly x: number; readonly room: number }) {
  const most = Math.max(1, Math.floor(room / LETTER));
  const words = name.startsWith('Person ') && room < 60 ? [name.slice('Person '.length)] : name.split(' ').slice(0, 2);
  return words.map((word, i) => (
    <text key={word} className="tick-text" x={x} y={PLOT.bottom + 20 + i * 22} textAnchor="middle">
      {word.length > most ? word.slice(0, most) : word}
    </text>
  ));
}

const BAR = { left: 12, right: 440, top: 34, step: 46 };
const FULL = 1;

/** What each part adds, with its 95 % interval; an open end where it runs off the scale. */
export function StudyIntervals({ rows }: { readonly rows: readonly StudyRow[] }) {
  const most = Math.min(FULL, Math.max(0.2, ...rows.map(({ high, cv }) => high ?? Math.max(cv, FULL))) * 1.05);
  const x = scaleLinear().domain([0, most]).range([BAR.left, BAR.right]).clamp(true);
  const bottom = BAR.top + rows.length * BAR.step;
  return (
    <svg
      className="study-picture"
      viewBox={`0 0 ${WIDTH} ${bottom + 52}`}
      role="img"
      aria-label={`${plural(rows.length, 'part')} of the noise with their 95 % intervals. The table gives each.`}
    >
      {x.ticks(5).map((tick) => (
        <g key={tick}>
          <line className="grid" x1={x(tick)} x2={x(tick)} y1="8" y2={bottom} />
          <text className="tick-text" x={x(tick)} y={bottom + 20} textAnchor="middle">
            {sayPercent(tick)}
          </text>
        </g>
      ))}
      {rows.map(({ what, cv, low, high }, i) => {
        const y = BAR.top + i * BAR.step + 10;
        const isOpen = high === null || high > most;
        return (
          <g key={what}>
            <text className="strong" x={BAR.left} y={y - 12}>
              {what}
            </text>
            <line className="bound" x1={x(low)} x2={x(high ?? most)} y1={y} y2={y} />
            <line className="bound" x1={x(low)} x2={x(low)} y1={y - 6} y2={y + 6} />
            {isOpen ? (
              <path className="bound" d={`M${BAR.right - 7},${y - 6}L${BAR.right},${y}L${BAR.right - 7},${y + 6}`} />
            ) : (
              <line className="bound" x1={x(high)} x2={x(high)} y1={y - 6} y2={y + 6} />
            )}
            <circle className="mark" cx={x(cv)} cy={y} r="5" />
          </g>
        );
      })}
      <text className="tick-text" x="0" y={bottom + 46}>
        Coefficient of variation, 95 % interval
      </text>
    </svg>
  );
}
