import { scaleLog, scaleUtc } from 'd3-scale';
import type { JudgedControl, JudgedLot } from '../../core/checks/judgeControls.ts';
import { formatDate, formatNumber } from '../format.ts';
import { rowOnPaper } from '../parts/OnPaper.tsx';
import { STATE_WORDS, sayDistance } from '../screens/checks/sayChecks.ts';
import { Axes, ChartFrame, logTicks, type Plot, timeTicks } from './ChartFrame.tsx';
import { type ControlBand, listControlBands } from './controlBands.ts';

const HEIGHT = 250;
const DAY_MS = 86_400_000;

interface ControlChartProps {
  readonly lots: readonly JudgedLot[];
  readonly lotName: (lotId: string) => string;
}

const CAPTION = 'RLU, log scale. Band: about 95 in 100 controls while nothing has changed. Crossed: out of limits. Hollow: not counted.';

/** Controls of one meter over time, each on the band of its lot and time; hollow where one does not count. */
export function ControlChart({ lots, lotName }: ControlChartProps) {
  const all = lots.flatMap(({ controls }) => controls);
  if (all.length === 0) return null;
  const times = all.map(({ control }) => Date.parse(control.takenAt));
  const bands = lots.map(listControlBands);
  const values = [...all.map(({ control }) => control.rlu), ...bands.flat().flatMap(({ low, high }) => [low, high])];
  return (
    <ChartFrame
      height={HEIGHT}
      label={describe(all)}
      caption={bands.some((ofLot) => ofLot.length > 1) ? `${CAPTION} A step in a band: another target from then on.` : CAPTION}
    >
      {(plot) => {
        const x = scaleUtc()
          .domain([Math.min(...times) - 7 * DAY_MS, Math.max(...times) + 7 * DAY_MS])
          .range([plot.left, plot.right]);
        const y = scaleLog()
          .domain([Math.min(...values) / 1.1, Math.max(...values) * 1.1])
          .range([plot.bottom, plot.top]);
        const xOf = (takenAt: string) => x(Date.parse(takenAt));
        return (
          <>
            <Axes plot={plot} x={timeTicks(x, plot)} y={logTicks(y, formatNumber)} />
            {lots.map((lot, i) => (
              <LotBands key={lot.lotId} lot={lot} bands={bands[i] ?? []} name={lotName(lot.lotId)} plot={plot} xOf={xOf} y={y} />
            ))}
            {all.map((judged) => (
              <Mark key={judged.control.id} judged={judged} x={xOf(judged.control.takenAt)} y={y(judged.control.rlu)} />
            ))}
          </>
        );
      }}
    </ChartFrame>
  );
}

interface LotBandsProps {
  readonly lot: JudgedLot;
  readonly bands: readonly ControlBand[];
  readonly name: string;
  readonly plot: Plot;
  readonly xOf: (takenAt: string) => number;
  readonly y: (rlu: number) => number;
}

/** Of the band beside its outermost controls. */
const MARGIN = 6;

function LotBands({ lot, bands, name, plot, xOf, y }: LotBandsProps) {
  const left = Math.min(...lot.controls.map(({ control }) => xOf(control.takenAt))) - MARGIN;
  const top = bands.length > 0 ? y(Math.max(...bands.map(({ high }) => high))) : plot.top + 14;
  // A short stretch near the end has no room for its name to the right.
  const isAtEnd = left > plot.right - 120;
  return (
    <g>
      {bands.map((band) => (
        <Band key={band.first} band={band} xOf={xOf} y={y} />
      ))}
      <text className="strong" x={isAtEnd ? plot.right : left} y={top - 6} textAnchor={isAtEnd ? 'end' : 'start'}>
        {name}
      </text>
    </g>
  );
}

/** Where one target followed another the bands meet at that moment, however close their controls lie. */
function Band({ band, xOf, y }: { readonly band: ControlBand } & Pick<LotBandsProps, 'xOf' | 'y'>) {
  const { first, last, since, until, mean, low, high } = band;
  const left = since === undefined ? xOf(first) - MARGIN : Math.max(xOf(first) - MARGIN, xOf(since));
  const right = until === undefined ? xOf(last) + MARGIN : Math.min(xOf(last) + MARGIN, xOf(until));
  return (
    <>
      <rect className="control-band" x={left} width={Math.max(right - left, 1)} y={y(high)} height={y(low) - y(high)} />
      <line className="control-target" x1={left} x2={right} y1={y(mean)} y2={y(mean)} />
    </>
  );
}

function Mark({ judged, x, y }: { readonly judged: JudgedControl; readonly x: number; readonly y: number }) {
  if (judged.state === 'void') return <circle className="mark hollow" cx={x} cy={y} r="3.5" />;
  if (judged.state !== 'out') return <circle className="mark" cx={x} cy={y} r="3.5" />;
  return (
    <g className="control-out" transform={`translate(${x},${y})`}>
      <circle r="7" />
      <path d="M-5,-5L5,5M-5,5L5,-5" />
    </g>
  );
}

function describe(all: readonly JudgedControl[]): string {
  const out = all.filter(({ state }) => state === 'out').length;
  const hollow = all.filter(({ state }) => state === 'void').length;
  return `${all.length} controls over time on a log scale, ${out} out of limits, ${hollow} not counted. The table gives each.`;
}

/** The same as a table, the newest first. */
export function ControlTable({ lots, lotName }: ControlChartProps) {
  const all = lots.flatMap(({ controls }) => controls).sort((a, b) => (a.control.takenAt < b.control.takenAt ? 1 : -1));
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Taken</th>
          <th scope="col">Lot</th>
          <th scope="col">RLU</th>
          <th scope="col">From the target</th>
          <th scope="col">State</th>
          <th scope="col">By</th>
        </tr>
      </thead>
      <tbody>
        {all.map(({ control, state, z, says }, at) => (
          <tr key={control.id} className={rowOnPaper(at)}>
            <th scope="row">{formatDate(control.takenAt)}</th>
            <td>{lotName(control.lotId)}</td>
            <td>{formatNumber(control.rlu)}</td>
            <td>{sayDistance(z)}</td>
            <td>{[STATE_WORDS[state], control.voidReason ?? says].filter(Boolean).join(': ')}</td>
            <td>{control.operator ?? 'not noted'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
