import { scaleLog, scaleUtc } from 'd3-scale';
import type { JudgedControl, JudgedLot } from '../../core/checks/judgeControls.ts';
import { formatDate, formatNumber } from '../format.ts';
import { STATE_WORDS, sayDistance } from '../screens/checks/sayChecks.ts';
import { Axes, ChartFrame, logTicks, type Plot, timeTicks } from './ChartFrame.tsx';

const HEIGHT = 250;
const DAY_MS = 86_400_000;
/** The usual band holds about 95 in 100 controls. */
const BAND_SD = 2;

interface ControlChartProps {
  readonly lots: readonly JudgedLot[];
  readonly lotName: (lotId: string) => string;
}

/** Controls of one meter over time, each lot within the band of its own target; hollow where one does not count. */
export function ControlChart({ lots, lotName }: ControlChartProps) {
  const all = lots.flatMap(({ controls }) => controls);
  if (all.length === 0) return null;
  const times = all.map(({ control }) => Date.parse(control.takenAt));
  const values = [...all.map(({ control }) => control.rlu), ...lots.flatMap((lot) => bandOf(lot) ?? [])];
  return (
    <ChartFrame
      height={HEIGHT}
      label={describe(all)}
      caption="RLU, log scale. Band: about 95 in 100 controls while nothing has changed. Crossed: out of limits. Hollow: not counted."
    >
      {(plot) => {
        const x = scaleUtc()
          .domain([Math.min(...times) - 7 * DAY_MS, Math.max(...times) + 7 * DAY_MS])
          .range([plot.left, plot.right]);
        const y = scaleLog()
          .domain([Math.min(...values) / 1.1, Math.max(...values) * 1.1])
          .range([plot.bottom, plot.top]);
        const xOf = ({ control }: JudgedControl) => x(Date.parse(control.takenAt));
        return (
          <>
            <Axes plot={plot} x={timeTicks(x, plot)} y={logTicks(y, formatNumber)} />
            {lots.map((lot) => (
              <LotBand key={lot.lotId} lot={lot} name={lotName(lot.lotId)} plot={plot} xOf={xOf} y={y} />
            ))}
            {all.map((judged) => (
              <Mark key={judged.control.id} judged={judged} x={xOf(judged)} y={y(judged.control.rlu)} />
            ))}
          </>
        );
      }}
    </ChartFrame>
  );
}

/** Low and high end of the usual band in RLU, or undefined without a target. */
function bandOf({ target }: JudgedLot): [low: number, high: number] | undefined {
  if (!target) return undefined;
  return [Math.exp(target.meanLn - BAND_SD * target.sdLn), Math.exp(target.meanLn + BAND_SD * target.sdLn)];
}

interface LotBandProps {
  readonly lot: JudgedLot;
  readonly name: string;
  readonly plot: Plot;
  readonly xOf: (judged: JudgedControl) => number;
  readonly y: (rlu: number) => number;
}

const LEAST_WIDTH = 12;

function LotBand({ lot, name, plot, xOf, y }: LotBandProps) {
  const xs = lot.controls.map(xOf);
  const left = Math.min(...xs) - LEAST_WIDTH / 2;
  const width = Math.max(Math.max(...xs) + LEAST_WIDTH / 2 - left, LEAST_WIDTH);
  const band = bandOf(lot);
  const top = band ? y(band[1]) : plot.top + 14;
  // A short stretch near the end has no room for its name to the right.
  const isAtEnd = left > plot.right - 120;
  return (
    <g>
      {band && lot.target && (
        <>
          <rect className="control-band" x={left} width={width} y={y(band[1])} height={y(band[0]) - y(band[1])} />
          <line
            className="control-target"
            x1={left}
            x2={left + width}
            y1={y(Math.exp(lot.target.meanLn))}
            y2={y(Math.exp(lot.target.meanLn))}
          />
        </>
      )}
      <text className="strong" x={isAtEnd ? plot.right : left} y={top - 6} textAnchor={isAtEnd ? 'end' : 'start'}>
        {name}
      </text>
    </g>
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
        {all.map(({ control, state, z, says }) => (
          <tr key={control.id}>
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
