import { Line, Rect, Svg, View } from '@react-pdf/renderer';
import { useContext } from 'react';
import {
  type AmountShape,
  hatchBox,
  layOutDayStrip,
  type RoundedBox,
  type StripColumn,
  type StripLayout,
  shapeOfAmount,
} from '../core/leaflet/stripLayout.ts';
import type { DayStep, StepAmount } from '../core/leaflet/types.ts';
import { Beside, type BlockProps, Direction, GUTTER_MM, mm, type PageSetting, Row, Ruled, shared, Words } from './leafletBlocks.tsx';

const BLACK = '#000';
/** The band of the day, and how far its marks stand out above and below, mm. */
const BAND_MM = 3;
const MARK_MM = 1;

/** The day in the direction of the page, what is not done every day below it, and who signed. */
export function Day({ leaflet, widthMm, setting }: BlockProps) {
  if (leaflet.day.length === 0) return null;
  const { columns, night, besides } = layOutDayStrip(leaflet.day, widthMm, GUTTER_MM, setting.columnMm);
  return (
    <Ruled setting={setting}>
      <Beside>
        <Words style={shared.strong}>{leaflet.labels.day}</Words>
        {leaflet.who !== null && <Words>{`${leaflet.labels.who}: ${leaflet.who}`}</Words>}
      </Beside>
      {columns.length > 0 && !setting.isLarge && <Band layout={{ widthMm, columns, night, besides }} />}
      {setting.isLarge ? (
        columns.map((column) => (
          <View key={column.when} style={{ marginTop: mm(setting.spaceMm * 0.5) }}>
            <StepsAt column={column} leaflet={leaflet} setting={setting} widthMm={widthMm} />
          </View>
        ))
      ) : (
        <Beside>
          {columns.map((column) => (
            <View key={column.when} style={{ width: mm(column.widthMm) }}>
              <StepsAt column={column} leaflet={leaflet} setting={setting} widthMm={column.widthMm} />
            </View>
          ))}
        </Beside>
      )}
      {besides.map(({ when, steps }) => (
        <Row key={when} label={leaflet.slots[when]} setting={setting} topMm={setting.spaceMm * 0.4}>
          {steps.map((step) => (
            <Words key={step.text}>{sayStep(step)}</Words>
          ))}
        </Row>
      ))}
      {leaflet.signedBy.length > 0 && (
        <Words style={{ fontSize: setting.smallPt, marginTop: mm(setting.spaceMm * 0.4) }}>{leaflet.signedBy.join(' ')}</Words>
      )}
    </Ruled>
  );
}

interface StepsAtProps extends BlockProps {
  readonly column: StripColumn;
}

function StepsAt({ column: { when, steps }, leaflet, setting, widthMm }: StepsAtProps) {
  return (
    <>
      <Words style={shared.strong}>{leaflet.slots[when]}</Words>
      {steps.map((step, i) => (
        <Step key={step.text} step={step} setting={setting} columnMm={widthMm} topMm={i > 0 ? setting.spaceMm * 0.6 : 0} />
      ))}
    </>
  );
}

/** A step with its amount in words. */
const sayStep = ({ text, amount }: DayStep) => (amount ? `${text} ${amount.text}.` : text);

function Band({ layout: { widthMm, columns, night } }: { readonly layout: StripLayout }) {
  const isTurned = useContext(Direction) === 'rtl';
  const turned = (xMm: number, wideMm: number) => (isTurned ? widthMm - xMm - wideMm : xMm);
  const heightMm = BAND_MM + 2 * MARK_MM;
  return (
    <Svg width={mm(widthMm)} height={mm(heightMm)} viewBox={`0 0 ${widthMm} ${heightMm}`}>
      {night && <Hatching box={{ ...night, xMm: turned(night.xMm, night.widthMm), yMm: MARK_MM, heightMm: BAND_MM }} stepMm={1.4} />}
      {[MARK_MM, MARK_MM + BAND_MM].map((y) => (
        <Line key={y} x1={0} y1={y} x2={widthMm} y2={y} stroke={BLACK} strokeWidth={0.3} />
      ))}
      {columns.map(({ when, xMm }) => {
        const x = turned(xMm + 0.3, 0);
        return <Line key={when} x1={x} y1={0} x2={x} y2={heightMm} stroke={BLACK} strokeWidth={0.6} />;
      })}
    </Svg>
  );
}

function Hatching({ box, stepMm }: { readonly box: Parameters<typeof hatchBox>[0]; readonly stepMm: number }) {
  return hatchBox(box, stepMm).map((stroke) => <Line key={`${stroke.x1} ${stroke.y1}`} {...stroke} stroke={BLACK} strokeWidth={0.2} />);
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
      <Words>{step.text}</Words>
      {step.amount && shape && <Amount words={step.amount.text} shape={shape} columnMm={columnMm} setting={setting} />}
      {step.amount && !shape && <Words style={{ fontSize: setting.smallPt }}>{step.amount.text}</Words>}
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

interface AmountProps {
  readonly words: string;
  readonly shape: AmountShape;
  readonly columnMm: number;
  readonly setting: PageSetting;
}

function Amount({ words, shape, columnMm, setting }: AmountProps) {
  const direction = useContext(Direction);
  const told = { fontSize: setting.smallPt, lineHeight: 1.25 };
  if (shape.widthMm + WORDS_BESIDE_MM > columnMm)
    return (
      <View style={{ marginTop: mm(0.8), alignItems: direction === 'rtl' ? 'flex-end' : 'flex-start' }}>
        <Drawing shape={shape} />
        <Words style={told}>{words}</Words>
      </View>
    );
  return (
    <Beside gapMm={3} style={{ marginTop: mm(0.8), alignItems: 'center' }}>
      <Drawing shape={shape} />
      <Words style={{ ...told, flex: 1 }}>{words}</Words>
    </Beside>
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
