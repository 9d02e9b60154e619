import { Line, Rect, Svg, View } from '@react-pdf/renderer';
import { listStepRows, type StepRow } from '../core/leaflet/listStepRows.ts';
import { type AmountShape, hatchBox, rectOf, shapeOfAmount } from '../core/leaflet/stripLayout.ts';
import type { Leaflet, StepAmount } from '../core/leaflet/types.ts';
import { Beside, mm, type PageSetting, Row, Ruled, RunIn, shared, Words } from './leafletBlocks.tsx';
import { DayRow, type StripProps } from './leafletStrip.tsx';

const BLACK = '#000';

/** The day as a strip, then each time with what, how and how much, and who signed. */
export function Day({ leaflet, widthMm, setting, faces }: StripProps) {
  const rows = listStepRows(leaflet);
  if (rows.length === 0) return null;
  const { dayStrip, labels, who, signedBy } = leaflet;
  return (
    <Ruled setting={setting}>
      <Beside>
        <Words style={shared.strong}>{labels.day}</Words>
        {who !== null && <Words>{`${labels.who}: ${who}`}</Words>}
      </Beside>
      {dayStrip && (setting.days || dayStrip.row.acid.length > 0) && (
        <View wrap={false}>
          <DayRow row={dayStrip.row} widthMm={widthMm} setting={setting} faces={faces} />
          <Words style={{ fontSize: setting.smallPt }}>{sayStrip(leaflet)}</Words>
        </View>
      )}
      {rows.map((row) => (
        <View key={row.id} wrap={false}>
          <TimeOfDay row={row} setting={setting} />
        </View>
      ))}
      {signedBy.length > 0 && (
        <Words style={{ fontSize: setting.smallPt, marginTop: mm(setting.spaceMm * 0.4) }}>{signedBy.join(' ')}</Words>
      )}
    </Ruled>
  );
}

/** Whose day it is and what is striped; what is dark, where a professional put the acid side on the page. */
function sayStrip({ dayStrip, strip }: Leaflet): string {
  const dark = dayStrip && dayStrip.row.acid.length > 0 && strip ? [strip.words.dark, strip.words.caution] : [];
  return [dayStrip?.says, ...dark].join(' ');
}

interface TimeProps {
  readonly row: StepRow;
  readonly setting: PageSetting;
}

function TimeOfDay(props: TimeProps) {
  const topMm = props.setting.spaceMm * 0.3;
  if (props.setting.isLarge)
    return (
      <View style={{ marginTop: mm(topMm) }}>
        <Steps {...props} />
      </View>
    );
  return (
    <Row label={props.row.label} topMm={topMm}>
      <Steps {...props} />
    </Row>
  );
}

function Steps({ row: { label, steps }, setting }: TimeProps) {
  return steps.map(({ step: { text, amount }, isDrawn }, i) => {
    const shape = isDrawn ? findDrawing(amount, setting) : undefined;
    const said = amount ? `${text} (${amount.text})` : text;
    return (
      <Beside key={text} gapMm={3} style={{ alignItems: 'center' }}>
        {setting.isLarge && i === 0 ? (
          <RunIn label={label} style={{ flex: 1 }}>
            {said}
          </RunIn>
        ) : (
          <Words style={{ flex: 1 }}>{said}</Words>
        )}
        {shape && <Drawing shape={shape} />}
      </Beside>
    );
  });
}

function Hatching({ box, stepMm }: { readonly box: Parameters<typeof hatchBox>[0]; readonly stepMm: number }) {
  return hatchBox(box, stepMm).map((stroke) => <Line key={`${stroke.x1} ${stroke.y1}`} {...stroke} stroke={BLACK} strokeWidth={0.2} />);
}

/** The shape to draw in true size, where the amount has one and there is room for it. */
function findDrawing(amount: StepAmount | undefined, setting: PageSetting): AmountShape | undefined {
  const shape = amount && shapeOfAmount(amount);
  return shape && (shape.kind === 'cup' ? setting.cups : setting.brushes) ? shape : undefined;
}

/** Half a line's width, so that an outline on the edge of a drawing is not cut, mm. */
const EDGE_MM = 0.2;

function Drawing({ shape }: { readonly shape: AmountShape }) {
  const width = shape.widthMm + 2 * EDGE_MM;
  const height = shape.heightMm + 2 * EDGE_MM;
  return (
    <Svg width={mm(width)} height={mm(height)} viewBox={`${-EDGE_MM} ${-EDGE_MM} ${width} ${height}`} style={{ marginVertical: mm(0.6) }}>
      {shape.kind === 'cup' ? <Cup shape={shape} /> : <Brush shape={shape} />}
    </Svg>
  );
}

const THIN = { stroke: BLACK, strokeWidth: 0.25, fill: 'none' } as const;
/** Paste in black on the outline of a brush. */
function Brush({ shape: { head, handle, paste } }: { readonly shape: Extract<AmountShape, { kind: 'brush' }> }) {
  return (
    <>
      <Rect {...rectOf(head)} {...THIN} />
      {[handle.yMm, handle.yMm + handle.heightMm].map((y) => (
        <Line key={y} x1={handle.xMm} y1={y} x2={handle.xMm + handle.widthMm} y2={y} {...THIN} />
      ))}
      <Rect {...rectOf(paste)} fill={BLACK} />
    </>
  );
}

function Cup({ shape: { widthMm, heightMm, levelMm } }: { readonly shape: Extract<AmountShape, { kind: 'cup' }> }) {
  const topMm = heightMm - levelMm;
  return (
    <>
      <Hatching box={{ xMm: 0, yMm: topMm, widthMm, heightMm: levelMm }} stepMm={1.6} />
      <Line x1={0} y1={topMm} x2={widthMm} y2={topMm} stroke={BLACK} strokeWidth={0.5} />
      <Line x1={0} y1={0} x2={0} y2={heightMm} {...THIN} />
      <Line x1={0} y1={heightMm} x2={widthMm} y2={heightMm} {...THIN} />
      <Line x1={widthMm} y1={0} x2={widthMm} y2={heightMm} {...THIN} />
    </>
  );
}
