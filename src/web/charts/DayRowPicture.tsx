import { hatchBox } from '../../core/leaflet/stripLayout.ts';
import type { Box, StripRowLayout } from '../../core/leaflet/stripRowLayout.ts';

interface DayRowPictureProps {
  readonly layout: StripRowLayout;
  /** Between the strokes of what is dark, in the unit of the layout; what is to be kept free has strokes twice as far apart. */
  readonly hatch: number;
}

/** One day from midnight to midnight: what is used when above its band; on it sleep, waits and what is dark; below, eating, with words. */
export function DayRowPicture({ layout, hatch }: DayRowPictureProps) {
  const { band, acid, night, waits, away, marks, ticks, stems, useWords, words } = layout;
  return (
    <g className="day-row">
      <rect className="row-band" {...boxOf(band)} />
      {night.map((box) => (
        <line key={box.xMm} className="row-night" {...lineOf(box)} />
      ))}
      {waits.map((box) => (
        <path key={box.xMm} className="row-wait" d={hatchPath(box, 2 * hatch)} />
      ))}
      {acid.map((box) => (
        <g key={box.xMm} className="row-acid">
          <rect {...boxOf(box)} />
          <path d={hatchPath(box, hatch)} />
        </g>
      ))}
      {stems.map(({ xMm, fromMm, toMm }) => (
        <line key={xMm} className="row-stem" x1={xMm} x2={xMm} y1={fromMm} y2={toMm} />
      ))}
      {away.map((box) => (
        <line key={box.xMm} className="row-away" {...lineOf(box)} />
      ))}
      {ticks.map(({ xMm, yMm, heightMm }) => (
        <line key={xMm} className="row-tick" x1={xMm} x2={xMm} y1={yMm} y2={yMm + heightMm} />
      ))}
      {marks.map((box) => (
        <rect key={box.xMm} className="row-mark" {...boxOf(box)} rx={box.heightMm / 2} />
      ))}
      {[...useWords.map((word) => ({ ...word, className: 'row-use' })), ...words.map((word) => ({ ...word, className: 'row-word' }))].map(
        ({ className, x, yMm, text }) => (
          <text key={`${className} ${x} ${yMm} ${text}`} className={className} x={x} y={yMm} direction="ltr">
            {text}
          </text>
        ),
      )}
    </g>
  );
}

const boxOf = ({ xMm, yMm, widthMm, heightMm }: Box) => ({ x: xMm, y: yMm, width: widthMm, height: heightMm });
const lineOf = ({ xMm, yMm, widthMm }: Box) => ({ x1: xMm, x2: xMm + widthMm, y1: yMm, y2: yMm });

const hatchPath = (box: Box, step: number): string =>
  hatchBox(box, step)
    .map(({ x1, y1, x2, y2 }) => `M${x1.toFixed(2)},${y1.toFixed(2)}L${x2.toFixed(2)},${y2.toFixed(2)}`)
    .join('');
