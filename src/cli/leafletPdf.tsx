import { createRequire } from 'node:module';
import { Document, Font, Line, Page, Rect, renderToBuffer, StyleSheet, Svg, Text, View } from '@react-pdf/renderer';
import type { ReactNode } from 'react';
import { type AmountShape, hatchBox, layOutDayStrip, type RoundedBox, shapeOfAmount } from '../core/leaflet/stripLayout.ts';
import type { DayStep, Leaflet, StepAmount } from '../core/leaflet/types.ts';

export type LeafletPageSize = 'A4' | 'LETTER';

/** Width of the paper and its side margins, mm. */
const PAPER_WIDTH_MM: Readonly<Record<LeafletPageSize, number>> = { A4: 210, LETTER: 215.9 };
const MARGIN_MM = 18;
/** Between columns, mm. */
const GUTTER_MM = 5;
const PT_PER_MM = 72 / 25.4;
const mm = (value: number) => value * PT_PER_MM;

/** How the page is set. Tried in this order until everything stands on one page: first spaces and type shrink, last the drawn cups go. */
interface Setting {
  readonly bodyPt: number;
  /** The two goals and the next date. */
  readonly largePt: number;
  readonly namePt: number;
  readonly topMm: number;
  readonly spaceMm: number;
  /** Lines apart, times the size of the type. */
  readonly leading: number;
  readonly cups: boolean;
}
const SETTINGS: readonly Setting[] = [
  { bodyPt: 14, largePt: 17, namePt: 24, topMm: 14, spaceMm: 5, leading: 1.35, cups: true },
  { bodyPt: 14, largePt: 17, namePt: 24, topMm: 14, spaceMm: 3.2, leading: 1.28, cups: true },
  { bodyPt: 13, largePt: 16, namePt: 22, topMm: 14, spaceMm: 3.2, leading: 1.28, cups: true },
  { bodyPt: 13, largePt: 15, namePt: 20, topMm: 12, spaceMm: 2.6, leading: 1.25, cups: false },
  { bodyPt: 12, largePt: 14, namePt: 18, topMm: 11, spaceMm: 2.4, leading: 1.25, cups: false },
  { bodyPt: 12, largePt: 13, namePt: 16, topMm: 10, spaceMm: 1.6, leading: 1.18, cups: false },
];

/**
 * The leaflet as a PDF of exactly one page, black on white, type never below 12 pt but for the last lines.
 * @throws RangeError when a sign has no place in the typeface, or when the words do not fit one page even at 12 pt
 */
export async function renderLeafletPdf(leaflet: Leaflet, { page }: { readonly page: LeafletPageSize }): Promise<Uint8Array> {
  registerFonts();
  await refuseUnknownSigns(leaflet);
  for (const setting of SETTINGS) {
    const pdf = await renderToBuffer(<LeafletDocument leaflet={leaflet} page={page} setting={setting} />);
    if (countPages(pdf) === 1) return new Uint8Array(pdf);
  }
  throw new RangeError(`the leaflet does not fit one page: ${leaflet.day.length} steps, ${leaflet.cautions.length} cautions`);
}

/** Pages of a PDF whose page objects stand uncompressed, as this renderer writes them. */
export function countPages(pdf: Uint8Array): number {
  return (
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}

const FAMILY = ['Atkinson', 'AtkinsonMore'];
const FACES = [
  ['Atkinson', 'latin'],
  ['AtkinsonMore', 'latin-ext'],
] as const;
let fontsRegistered = false;

/** Static faces, since the renderer takes no variable font; the second holds letters of names such as Ł. */
function registerFonts(): void {
  if (fontsRegistered) return;
  const { resolve } = createRequire(import.meta.url);
  const fileOf = (subset: string, weight: number) =>
    resolve(`@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`);
  for (const [family, subset] of FACES)
    Font.register({ family, fonts: [400, 600].map((fontWeight) => ({ src: fileOf(subset, fontWeight), fontWeight })) });
  Font.registerHyphenationCallback((word) => [word]);
  fontsRegistered = true;
}

/** A sign without a glyph would print as an empty box: the page is refused instead. */
async function refuseUnknownSigns(leaflet: Leaflet): Promise<void> {
  const faces = await Promise.all(FACES.map(([fontFamily]) => loadFace(fontFamily)));
  const isKnown = (sign: string) => faces.some((face) => face.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0));
  const unknown = listTexts(leaflet).find((text) => ![...text].every(isKnown));
  if (unknown !== undefined) throw new RangeError(`the leaflet's typeface has not every sign of: ${unknown}`);
}

/** The part of a loaded face that is used here; the renderer's own type of it is not published. */
interface Face {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

async function loadFace(fontFamily: string): Promise<Face> {
  await Font.load({ fontFamily, fontWeight: 400 });
  // The published type of `data` is open: fontkit brings no types of its own.
  const face = Font.getFont({ fontFamily, fontWeight: 400 }).data as unknown as Face | null;
  if (face === null) throw new Error(`the typeface ${fontFamily} did not load`);
  return face;
}

function listTexts(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(listTexts) : [];
}

interface Part {
  readonly leaflet: Leaflet;
  readonly widthMm: number;
  readonly setting: Setting;
}

function LeafletDocument({
  leaflet,
  page,
  setting,
}: {
  readonly leaflet: Leaflet;
  readonly page: LeafletPageSize;
  readonly setting: Setting;
}) {
  const part: Part = { leaflet, widthMm: PAPER_WIDTH_MM[page] - 2 * MARGIN_MM, setting };
  return (
    <Document title={`${leaflet.title}: ${leaflet.personName}`} author={leaflet.practiceName} language={leaflet.language}>
      <Page size={page} style={{ ...styles.page, fontSize: setting.bodyPt, lineHeight: setting.leading, paddingTop: mm(setting.topMm) }}>
        <Head {...part} />
        <Goals {...part} />
        <Day {...part} />
        <Cautions {...part} />
        <Ending {...part} />
        <Foot {...part} />
      </Page>
    </Document>
  );
}

const styles = StyleSheet.create({
  page: {
    fontFamily: FAMILY,
    color: '#000',
    paddingBottom: mm(18),
    paddingHorizontal: mm(MARGIN_MM),
  },
  strong: { fontWeight: 600 },
  columns: { flexDirection: 'row' },
  foot: { position: 'absolute', left: mm(MARGIN_MM), right: mm(MARGIN_MM), bottom: mm(9), fontSize: 9.5, lineHeight: 1.25 },
});

/** A block under its own rule: thick for what stands by itself, thin for what goes on from the block above. */
function Ruled({
  setting,
  thick = false,
  children,
}: {
  readonly setting: Setting;
  readonly thick?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <View
      style={{
        marginTop: mm(setting.spaceMm),
        paddingTop: mm(setting.spaceMm * 0.5),
        borderTopWidth: thick ? 1.6 : 0.6,
        borderTopColor: '#000',
      }}
    >
      {children}
    </View>
  );
}

function Head({ leaflet, setting }: Part) {
  return (
    <View>
      <Text style={{ fontSize: 12 }}>{leaflet.title}</Text>
      <Text style={{ ...styles.strong, fontSize: setting.namePt, lineHeight: 1.2 }}>{leaflet.personName}</Text>
      <Text style={{ fontSize: 12, marginTop: mm(0.8) }}>
        {leaflet.practiceName}, {leaflet.date}
      </Text>
    </View>
  );
}

function Goals({ leaflet, setting }: Part) {
  const goals = [
    { label: leaflet.labels.keep, text: leaflet.keep },
    ...(leaflet.tryThis === null ? [] : [{ label: leaflet.labels.try, text: leaflet.tryThis }]),
  ];
  return (
    <Ruled setting={setting} thick>
      <View style={{ ...styles.columns, gap: mm(GUTTER_MM) }}>
        {goals.map(({ label, text }) => (
          <View key={label} style={{ flex: 1 }}>
            <Text style={{ fontSize: 12 }}>{label}</Text>
            <Text style={{ ...styles.strong, fontSize: setting.largePt, lineHeight: 1.25 }}>{text}</Text>
          </View>
        ))}
      </View>
    </Ruled>
  );
}

const BAND_MM = 3;

function Day({ leaflet, widthMm, setting }: Part) {
  const { columns, night, besides } = layOutDayStrip(leaflet.day, widthMm, GUTTER_MM);
  if (columns.length === 0 && besides.length === 0) return null;
  return (
    <Ruled setting={setting} thick>
      <Text style={styles.strong}>{leaflet.labels.day}</Text>
      {columns.length > 0 && (
        <View>
          <Svg width={mm(widthMm)} height={mm(BAND_MM + 2)} viewBox={`0 0 ${widthMm} ${BAND_MM + 2}`}>
            {night &&
              hatchBox({ xMm: night.xMm, yMm: 1, widthMm: night.widthMm, heightMm: BAND_MM }, 1.4).map((s) => (
                <Line key={s.x1 + s.x2} {...s} stroke="#000" strokeWidth={0.2} />
              ))}
            <Line x1={0} y1={1} x2={widthMm} y2={1} stroke="#000" strokeWidth={0.3} />
            <Line x1={0} y1={1 + BAND_MM} x2={widthMm} y2={1 + BAND_MM} stroke="#000" strokeWidth={0.3} />
            {columns.map(({ when, xMm }) => (
              <Line key={when} x1={xMm + 0.3} y1={0} x2={xMm + 0.3} y2={BAND_MM + 2} stroke="#000" strokeWidth={0.6} />
            ))}
          </Svg>
          <View style={{ ...styles.columns, gap: mm(GUTTER_MM) }}>
            {columns.map(({ when, widthMm: columnMm, steps }) => (
              <View key={when} style={{ width: mm(columnMm) }}>
                <Text style={styles.strong}>{leaflet.slots[when]}</Text>
                {steps.map((step, i) => (
                  <Step key={step.text} step={step} setting={setting} columnMm={columnMm} spaced={i > 0} />
                ))}
              </View>
            ))}
          </View>
        </View>
      )}
      {besides.map(({ when, steps }) => (
        <View key={when} style={{ ...styles.columns, marginTop: mm(setting.spaceMm * 0.4), gap: mm(GUTTER_MM) }}>
          <Text style={{ ...styles.strong, width: mm(38) }}>{leaflet.slots[when]}</Text>
          <View style={{ flex: 1 }}>
            {steps.map((step) => (
              <Text key={step.text}>
                {step.text}
                {step.amount ? ` (${step.amount.text})` : ''}
              </Text>
            ))}
          </View>
        </View>
      ))}
      {leaflet.signedBy.length > 0 && (
        <Text style={{ fontSize: 12, marginTop: mm(setting.spaceMm * 0.4) }}>{leaflet.signedBy.join(' ')}</Text>
      )}
    </Ruled>
  );
}

function Step({
  step,
  setting,
  columnMm,
  spaced,
}: {
  readonly step: DayStep;
  readonly setting: Setting;
  readonly columnMm: number;
  readonly spaced: boolean;
}) {
  const shape = findDrawing(step.amount, setting, columnMm);
  return (
    <View style={{ marginTop: spaced ? mm(setting.spaceMm * 0.6) : 0 }}>
      <Text>
        {step.text}
        {step.amount && shape === undefined ? ` ${step.amount.text}.` : ''}
      </Text>
      {step.amount && shape && <Amount words={step.amount.text} shape={shape} columnMm={columnMm} />}
    </View>
  );
}

/** Room that the words of an amount need to stand beside its drawing, mm. */
const WORDS_BESIDE_MM = 35;

/** The shape to draw in true size, where the amount has one and there is room for it. */
function findDrawing(amount: StepAmount | undefined, setting: Setting, columnMm: number): AmountShape | undefined {
  const shape = amount && shapeOfAmount(amount);
  return shape && shape.widthMm <= columnMm && (shape.kind === 'brush' || setting.cups) ? shape : undefined;
}

function Amount({ words, shape, columnMm }: { readonly words: string; readonly shape: AmountShape; readonly columnMm: number }) {
  const isBeside = shape.widthMm + WORDS_BESIDE_MM <= columnMm;
  return (
    <View style={{ marginTop: mm(0.8), ...(isBeside && { ...styles.columns, alignItems: 'center', gap: mm(3) }) }}>
      <Drawing shape={shape} />
      <Text style={{ fontSize: 12, lineHeight: 1.25, ...(isBeside && { flex: 1 }) }}>{words}</Text>
    </View>
  );
}

const THIN = { stroke: '#000', strokeWidth: 0.25, fill: 'none' } as const;
const boxOf = ({ xMm, yMm, widthMm, heightMm, radiusMm }: RoundedBox) => ({
  x: xMm,
  y: yMm,
  width: widthMm,
  height: heightMm,
  rx: radiusMm,
  ry: radiusMm,
});

function Drawing({ shape }: { readonly shape: AmountShape }) {
  const { widthMm, heightMm } = shape;
  return (
    <Svg
      width={mm(widthMm + 0.4)}
      height={mm(heightMm + 0.4)}
      viewBox={`-0.2 -0.2 ${widthMm + 0.4} ${heightMm + 0.4}`}
      style={{ marginVertical: mm(0.6) }}
    >
      {shape.kind === 'brush' ? <Brush shape={shape} /> : <Cup shape={shape} />}
    </Svg>
  );
}

function Brush({ shape }: { readonly shape: Extract<AmountShape, { kind: 'brush' }> }) {
  const { handle } = shape;
  return (
    <>
      <Rect {...boxOf(shape.head)} {...THIN} />
      <Line x1={handle.xMm} y1={handle.yMm} x2={handle.xMm + handle.widthMm} y2={handle.yMm} {...THIN} />
      <Line
        x1={handle.xMm}
        y1={handle.yMm + handle.heightMm}
        x2={handle.xMm + handle.widthMm}
        y2={handle.yMm + handle.heightMm}
        {...THIN}
      />
      <Rect {...boxOf(shape.paste)} fill="#000" />
    </>
  );
}

function Cup({ shape }: { readonly shape: Extract<AmountShape, { kind: 'cup' }> }) {
  const { widthMm, heightMm, levelMm } = shape;
  return (
    <>
      {hatchBox({ xMm: 0, yMm: heightMm - levelMm, widthMm, heightMm: levelMm }, 1.6).map((s) => (
        <Line key={s.x1 + s.x2} {...s} stroke="#000" strokeWidth={0.2} />
      ))}
      <Line x1={0} y1={heightMm - levelMm} x2={widthMm} y2={heightMm - levelMm} stroke="#000" strokeWidth={0.5} />
      <Line x1={0} y1={0} x2={0} y2={heightMm} {...THIN} />
      <Line x1={0} y1={heightMm} x2={widthMm} y2={heightMm} {...THIN} />
      <Line x1={widthMm} y1={0} x2={widthMm} y2={heightMm} {...THIN} />
    </>
  );
}

/** So many cautions after the first stand in two columns. */
const COLUMNS_FROM = 4;

function Cautions({ leaflet, setting }: Part) {
  const [first, ...rest] = leaflet.cautions;
  if (first === undefined) return null;
  const inColumns = rest.length >= COLUMNS_FROM;
  return (
    <Ruled setting={setting} thick>
      <Text style={styles.strong}>{leaflet.labels.cautions}</Text>
      {inColumns ? (
        <>
          <Caution text={first} setting={setting} />
          <View style={{ ...styles.columns, gap: mm(GUTTER_MM) }}>
            {splitEvenly(rest).map((column) => (
              <View key={column[0]} style={{ flex: 1 }}>
                {column.map((text) => (
                  <Caution key={text} text={text} setting={setting} />
                ))}
              </View>
            ))}
          </View>
        </>
      ) : (
        leaflet.cautions.map((text) => <Caution key={text} text={text} setting={setting} />)
      )}
    </Ruled>
  );
}

function Caution({ text, setting }: { readonly text: string; readonly setting: Setting }) {
  return <Text style={{ marginTop: mm(setting.spaceMm * 0.25) }}>{text}</Text>;
}

/** Two columns read downwards, the first no shorter than the second by letters. */
function splitEvenly(texts: readonly string[]): readonly (readonly string[])[] {
  const lettersIn = (some: readonly string[]) => some.reduce((sum, text) => sum + text.length + 30, 0);
  const at = texts.findIndex((_, i) => lettersIn(texts.slice(0, i + 1)) >= lettersIn(texts.slice(i + 1))) + 1;
  return [texts.slice(0, at), texts.slice(at)].filter(({ length }) => length > 0);
}

/** What to stop, what it costs; the next date last and largest. */
function Ending({ leaflet, setting }: Part) {
  const rows = [
    ...(leaflet.stopUsing.length > 0 ? [{ label: leaflet.labels.stop, text: `${leaflet.stopUsing.join('. ')}.` }] : []),
    ...(leaflet.monthlyCost === null ? [] : [{ label: leaflet.labels.cost, text: leaflet.monthlyCost }]),
  ];
  return (
    <Ruled setting={setting} thick>
      {rows.map(({ label, text }) => (
        <Row key={label} label={label}>
          <Text>{text}</Text>
        </Row>
      ))}
      <Row label={leaflet.labels.next}>
        <Text style={{ ...styles.strong, fontSize: setting.largePt, lineHeight: 1.2 }}>{leaflet.nextDate}</Text>
      </Row>
    </Ruled>
  );
}

function Row({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <View style={{ ...styles.columns, alignItems: 'baseline', gap: mm(GUTTER_MM) }}>
      <Text style={{ ...styles.strong, width: mm(38) }}>{label}</Text>
      <View style={{ flex: 1 }}>{children}</View>
    </View>
  );
}

function Foot({ leaflet }: Part) {
  return (
    <View style={styles.foot} fixed>
      {leaflet.demoNotice !== null && <Text>{leaflet.demoNotice}</Text>}
      <Text>{leaflet.foot}</Text>
    </View>
  );
}
