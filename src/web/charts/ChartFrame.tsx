import type { ScaleLogarithmic, ScaleTime } from 'd3-scale';
import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { formatMonth, formatShortDay } from '../format.ts';
import { ticksOf } from './ReadingPicture.tsx';

/** Where marks may stand, in the units of the drawing, which are those of the screen. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const WIDEST = 900;
const NARROWEST = 260;
const EDGE = { left: 64, right: 20, top: 18, bottom: 30 } as const;

interface ChartFrameProps {
  readonly height: number;
  /** For a screen reader. */
  readonly label: string;
  /** What the marks and lines mean. */
  readonly caption: ReactNode;
  readonly children: (plot: Plot) => ReactNode;
}

/** A picture as wide as its place, so that its words stay as large on a phone as on a desk, with its caption below. */
export function ChartFrame({ height, label, caption, children }: ChartFrameProps) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(WIDEST);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () => {
      // Nothing is laid out inside a part that is folded away.
      if (element.clientWidth > 0) setWidth(Math.min(Math.max(element.clientWidth, NARROWEST), WIDEST));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const plot = { left: EDGE.left, right: width - EDGE.right, top: EDGE.top, bottom: height - EDGE.bottom };
  return (
    <div ref={place} className="chart-frame">
      <svg className="readings-chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
        {children(plot)}
      </svg>
      <p className="chart-caption">{caption}</p>
    </div>
  );
}

interface Tick {
  readonly at: number;
  readonly says: string;
}

interface AxesProps {
  readonly plot: Plot;
  /** Along the foot, from left to right. */
  readonly x: readonly Tick[];
  /** Up the left side, each with a line across. */
  readonly y: readonly Tick[];
}

/** The lines and numbers that every picture with two axes has. */
export function Axes({ plot: { left, right, bottom }, x, y }: AxesProps) {
  return (
    <>
      {y.map(({ at, says }) => (
        <g key={says}>
          <line className="grid" x1={left} x2={right} y1={at} y2={at} />
          <text className="tick-text" x={left - 8} y={at + 4} textAnchor="end">
            {says}
          </text>
        </g>
      ))}
      <line className="axis" x1={left} x2={right} y1={bottom} y2={bottom} />
      {x.map(({ at, says }) => (
        <g key={at} transform={`translate(${at},${bottom})`}>
          <line className="tick" y2="5" />
          <text className="tick-text" y="20" textAnchor="middle">
            {says}
          </text>
        </g>
      ))}
    </>
  );
}

/** Room that "September 2026" takes. */
const MONTH_WIDTH = 130;
/** Two days of one month need the day itself. */
const MONTH_MS = 28 * 86_400_000;

/** Months, or days where the time is short. */
export function timeTicks(x: ScaleTime<number, number>, { left, right }: Plot): readonly Tick[] {
  const ticks = x.ticks(Math.max(Math.floor((right - left) / MONTH_WIDTH), 2));
  const [first, second] = ticks;
  const isShort = first !== undefined && second !== undefined && second.getTime() - first.getTime() < MONTH_MS;
  return ticks
    .map((tick) => ({ at: x(tick), says: (isShort ? formatShortDay : formatMonth)(tick.toISOString()) }))
    .filter(({ at }) => at - left > -1 && right - at > 25);
}

/** 1, 2, 5 times powers of ten; where the range is too narrow for them, the steps that it has. */
export function logTicks(y: ScaleLogarithmic<number, number>, say: (value: number) => string): readonly Tick[] {
  const usual = ticksOf(y.domain() as [number, number]);
  return (usual.length > 1 ? usual : y.ticks(4)).map((value) => ({ at: y(value), says: say(value) }));
}
