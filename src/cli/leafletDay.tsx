import { Line, Rect, Svg, Text, View } from '@react-pdf/renderer';
import {
  type AmountShape,
  hatchBox,
  layOutDayStrip,
  type RoundedBox,
  type StripLayout,
  shapeOfAmount,
} from '../core/leaflet/stripLayout.ts';
import type { DayStep, StepAmount } from '../core/leaflet/types.ts';
import { type BlockProps, GUTTER_MM, mm, type PageSetting, Row, Ruled, SMALL_PT, shared } from './leafletBlocks.tsx';

const BLACK = '#000';
/** The band of the day, and how far its marks stand out above and below, mm. */
const BAND_MM = 3;
const MARK_MM = 1;

/** The day from left to right, what is not done every day below it, and who signed. */
export function Day({ leaflet, widthMm, setting }: BlockProps) {
  const layout = layOutDayStrip(leaflet.day, widthMm, GUTTER_MM, setting.columnMm);
  if (leaflet.day.length === 0) return null;
  return (
    <Ruled setting={setting}>
      <Text style={shared.strong}>{leaflet.labels.day}</Text>
      {layout.columns.length > 0 && <Band layout={layout} />}
      <View style={shared.columns}>
        {layout.columns.map(({ when, widthMm: columnMm, steps }) => (
          <View key={when} style={{ width: mm(columnMm) }}>
            <Text style={shared.strong}>{leaflet.slots[when]}</Text>
            {steps.map((step, i) => (
              <Step key={step.text} step={step} setting={setting} columnMm={columnMm} topMm={i > 0 ? setting.spaceMm * 0.6 : 0} />
            ))}
          </View>
        ))}
      </View>
      {layout.besides.map(({ when, steps }) => (
        <Row key={when} label={leaflet.slots[when]} topMm={setting.spaceMm * 0.4}>
          {steps.map((step) => (
            <Text key={step.text}>{sayStep(step)}</Text>
          ))}
        </Row>
      ))}
      {leaflet.signedBy.length > 0 && (
        <Text style={{ fontSize: SMALL_PT, marginTop: mm(setting.spaceMm * 0.4) }}>{leaflet.signedBy.join(' ')}</Text>
      )}
    </Ruled>
  );
}

/** A step with its amount in words. */
const sayStep = ({ text, amount }: DayStep) => (amount ? `${text} ${amount.text}.` : text);

function Band({ layout: { widthMm, columns, night } }: { readonly layout: StripLayout }) {
  const heightMm = BAND_MM + 2 * MARK_MM;
  return (
    <Svg width={mm(widthMm)} height={mm(heightMm)} viewBox={`0 0 ${widthMm} ${heightMm}`}>
      {night && <Hatching box={{ ...night, yMm: MARK_MM, heightMm: BAND_MM }} stepMm={1.4} />}
      {[MARK_MM, MARK_MM + BAND_MM].map((y) => (
        <Line key={y} x1={0} y1={y} x2={widthMm} y2={y} stroke={BLACK} strokeWidth={0.3} />
      ))}
      {columns.map(({ when, xMm }) => (
        <Line key={when} x1={xMm + 0.3} y1={0} x2={xMm + 0.3} y2={heightMm} stroke={BLACK} strokeWidth={0.6} />
      ))}
    </Svg>
  );
}

function Hatching({ box, stepMm }: { readonly box: Parameters<typeof hatchBox>[0]; readonly stepMm: number }) {
  return hatchBox(box, stepMm).map((stroke) => <Line key={stroke.x1 + stroke.x2} {...stroke} stroke={BLACK} strokeWidth={0.2} />);
}

interface StepProps {
  readonly step: DayStep;
  readonly setting: PageSetting;
  readonly columnMm: number;
  readonly topMm: number;
}

function Step({ step, setting, columnMm, topMm }: StepProps) {
  const shape = findDrawing(step.amount, setting, columnMm);
  return (
    <View style={{ marginTop: mm(topMm) }}>
      <Text>{step.text}</Text>
      {step.amount && shape && <Amount words={step.amount.text} shape={shape} columnMm={columnMm} />}
      {step.amount && !shape && <Text style={{ fontSize: SMALL_PT }}>{step.amount.text}</Text>}
    </View>
  );
}

/** The shape to draw in true size, where the amount has one and there is room for it. */
function findDrawing(amount: StepAmount | undefined, setting: PageSetting, columnMm: number): AmountShape | undefined {
  const shape = amount && shapeOfAmount(amount);
  return shape && shape.widthMm <= columnMm && (shape.kind !== 'cup' || setting.cups) ? shape : undefined;
}

/** Room that the words of an amount need to stand beside its drawing, mm. */
const WORDS_BESIDE_MM = 35;

function Amount({ words, shape, columnMm }: { readonly words: string; readonly shape: AmountShape; readonly columnMm: number }) {
  const isBeside = shape.widthMm + WORDS_BESIDE_MM <= columnMm;
  return (
    <View style={{ marginTop: mm(0.8), ...(isBeside && { ...shared.columns, alignItems: 'center', gap: mm(3) }) }}>
      <Drawing shape={shape} />
      <Text style={{ fontSize: SMALL_PT, lineHeight: 1.25, ...(isBeside && { flex: 1 }) }}>{words}</Text>
    </View>
  );
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
const boxOf = ({ xMm, yMm, widthMm, heightMm, radiusMm }: RoundedBox) => ({
  x: xMm,
  y: yMm,
  width: widthMm,
  height: heightMm,
  rx: radiusMm,
  ry: radiusMm,
});

/** Paste in black on the outline of a brush. */
function Brush({ shape: { head, handle, paste } }: { readonly shape: Extract<AmountShape, { kind: 'brush' }> }) {
  return (
    <>
      <Rect {...boxOf(head)} {...THIN} />
      {[handle.yMm, handle.yMm + handle.heightMm].map((y) => (
        <Line key={y} x1={handle.xMm} y1={y} x2={handle.xMm + handle.widthMm} y2={y} {...THIN} />
      ))}
      <Rect {...boxOf(paste)} fill={BLACK} />
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
