import { type AmountShape, hatchBox, rectOf } from '../../../core/leaflet/stripLayout.ts';

/** In true size when printed at 100 %. */
export function AmountDrawing({ shape }: { readonly shape: AmountShape }) {
  const { widthMm, heightMm } = shape;
  return (
    <svg
      viewBox={`-0.2 -0.2 ${widthMm + 0.4} ${heightMm + 0.4}`}
      style={{ width: `${widthMm + 0.4}mm`, height: `${heightMm + 0.4}mm` }}
      aria-hidden="true"
    >
      {shape.kind === 'brush' ? <Brush shape={shape} /> : <Cup shape={shape} />}
    </svg>
  );
}

function Brush({ shape: { head, handle, paste } }: { readonly shape: Extract<AmountShape, { kind: 'brush' }> }) {
  const right = handle.xMm + handle.widthMm;
  return (
    <>
      <rect {...rectOf(head)} className="outline" />
      <path className="outline" d={`M${handle.xMm},${handle.yMm}H${right}M${handle.xMm},${handle.yMm + handle.heightMm}H${right}`} />
      <rect {...rectOf(paste)} className="paste" />
    </>
  );
}

function Cup({ shape: { widthMm, heightMm, levelMm } }: { readonly shape: Extract<AmountShape, { kind: 'cup' }> }) {
  return (
    <>
      {hatchBox({ xMm: 0, yMm: heightMm - levelMm, widthMm, heightMm: levelMm }, 1.6).map((s) => (
        <line key={s.x1 + s.x2} {...s} className="thin" />
      ))}
      <line x1={0} y1={heightMm - levelMm} x2={widthMm} y2={heightMm - levelMm} className="thick" />
      <path className="outline" d={`M0,0V${heightMm}H${widthMm}V0`} />
    </>
  );
}
