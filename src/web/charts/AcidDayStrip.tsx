import { memo } from 'react';
import { hatchBox } from '../../core/leaflet/stripLayout.ts';
import type { Span } from '../../core/plaque/day/nightSpans.ts';
import { xOf } from './acidDayLayout.ts';

export const STRIP_HEIGHT = 28;
const HATCH_PX = 5;

interface AcidDayStripProps {
  readonly width: number;
  readonly y: number;
  /** Where the plaque is on the acid side in the model. */
  readonly stretches: readonly Span[];
  readonly night: readonly Span[];
}

const hatchPath = (box: Parameters<typeof hatchBox>[0]): string =>
  hatchBox(box, HATCH_PX)
    .map(({ x1, y1, x2, y2 }) => `M${x1.toFixed(1)},${y1.toFixed(1)}L${x2.toFixed(1)},${y2.toFixed(1)}`)
    .join('');

/** The 24 hours as one strip: sleep with a thin line, the acid side dark, and hatched so that it prints on any paper. */
export function AcidDayStrip({ width, y, stretches, night }: AcidDayStripProps) {
  return (
    <g className="acid-strip">
      <rect className="day-ground" {...boxOf({ from: 0, to: 1440 }, width)} y={y} height={STRIP_HEIGHT} />
      {night.map((span) => (
        <line
          key={span.from}
          className="day-night"
          x1={xOf(span.from, width)}
          x2={xOf(span.to, width)}
          y1={y + STRIP_HEIGHT / 2}
          y2={y + STRIP_HEIGHT / 2}
        />
      ))}
      <Stretches width={width} y={y} stretches={stretches} />
    </g>
  );
}

const Stretches = memo(function Stretches({ width, y, stretches }: Omit<AcidDayStripProps, 'night'>) {
  return stretches.map((span) => {
    const at = boxOf(span, width);
    return (
      <g key={span.from} className="acid-stretch">
        <rect {...at} y={y} height={STRIP_HEIGHT} />
        <path d={hatchPath({ xMm: at.x, yMm: y, widthMm: at.width, heightMm: STRIP_HEIGHT })} />
      </g>
    );
  });
});

function boxOf({ from, to }: Span, width: number): { readonly x: number; readonly width: number } {
  return { x: xOf(from, width), width: Math.max(1, xOf(to, width) - xOf(from, width)) };
}
