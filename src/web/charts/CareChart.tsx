import { scaleUtc } from 'd3-scale';
import type { PersonRecord } from '../../api/bundles.ts';
import { formatMonth } from '../format.ts';

type Course = PersonRecord['courses'][number];

const WIDTH = 900;
const LEFT = 14;
const RIGHT = 886;
const ROW = 34;
const BAR = 9;
const DAY_MS = 86_400_000;

const time = (date: string) => Date.parse(`${date.slice(0, 10)}T00:00:00Z`);

/** Home care along time: a bar while it was in use, open at today; a hollow mark where it was only offered or was turned down. */
export function CareChart({ items, today }: { readonly items: readonly (readonly Course[])[]; readonly today: string }) {
  const dated = items.map((courses) => courses.filter(({ from }) => from !== '')).filter((courses) => courses.length > 0);
  const starts = dated.flat().map(({ from }) => time(from));
  if (starts.length === 0) return null;
  const x = scaleUtc()
    .domain([Math.min(...starts) - 20 * DAY_MS, Math.max(time(today), ...starts) + 20 * DAY_MS])
    .range([LEFT, RIGHT]);
  const height = dated.length * ROW + 34;
  return (
    <svg
      className="readings-chart"
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={`${dated.length} items of home care along time. The table gives each.`}
    >
      {dated.map((courses, i) => (
        <g key={courses[0]?.shelfItemId} transform={`translate(0,${i * ROW})`}>
          <text className="tick-text" x={LEFT} y={13}>
            {courses[0]?.name}
          </text>
          {courses.map((course) => (
            <Span key={`${course.from} ${course.state}`} course={course} x={(date) => x(time(date))} today={today} />
          ))}
        </g>
      ))}
      <line className="axis" x1={LEFT} x2={RIGHT} y1={height - 26} y2={height - 26} />
      {x.ticks(5).map((tick) => (
        <g key={tick.getTime()} transform={`translate(${x(tick)},${height - 26})`}>
          <line className="tick" y2="5" />
          <text className="tick-text" y="20" textAnchor="middle">
            {formatMonth(tick.toISOString())}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Span({ course, x, today }: { readonly course: Course; readonly x: (date: string) => number; readonly today: string }) {
  const left = x(course.from);
  const isUsed = course.state === 'agreed' && course.adherence !== 'not-begun';
  if (!isUsed) return <circle className="mark hollow" cx={left} cy={20 + BAR / 2} r="4" />;
  return <rect className="span" x={left} y={20} width={Math.max(3, x(course.to ?? today) - left)} height={BAR} />;
}
