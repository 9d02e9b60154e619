import { Document, Page, StyleSheet, Text, View } from '@react-pdf/renderer';
import type { Leaflet } from '../core/leaflet/types.ts';
import { type BlockProps, mm, type PageSetting, Row, Ruled, SMALL_PT, shared } from './leafletBlocks.tsx';
import { Day } from './leafletDay.tsx';
import { ToldStrip } from './leafletStrip.tsx';

export type LeafletPageSize = 'A4' | 'LETTER';

const PAPER_WIDTH_MM: Readonly<Record<LeafletPageSize, number>> = { A4: 210, LETTER: 215.9 };
const MARGIN_MM = 18;
const FOOT_PT = 9.5;

const PAGE_FACES = ['Atkinson', 'AtkinsonMore'];

const styles = StyleSheet.create({
  page: { fontFamily: PAGE_FACES, color: '#000', paddingBottom: mm(18), paddingHorizontal: mm(MARGIN_MM) },
  foot: { position: 'absolute', left: mm(MARGIN_MM), right: mm(MARGIN_MM), bottom: mm(9), fontSize: FOOT_PT, lineHeight: 1.25 },
});

export function LeafletDocument({
  leaflet,
  page,
  setting,
  nameFaces,
}: {
  readonly leaflet: Leaflet;
  readonly page: LeafletPageSize;
  readonly setting: PageSetting;
  /** Faces for the name besides those of the page. */
  readonly nameFaces: readonly string[];
}) {
  const block: BlockProps = { leaflet, widthMm: PAPER_WIDTH_MM[page] - 2 * MARGIN_MM, setting };
  return (
    <Document title={`${leaflet.title}: ${leaflet.personName}`} author={leaflet.practiceName} language={leaflet.language}>
      <Page size={page} style={{ ...styles.page, fontSize: setting.bodyPt, lineHeight: setting.leading, paddingTop: mm(setting.topMm) }}>
        <Head {...block} nameFaces={nameFaces} />
        <Goals {...block} />
        <Day {...block} />
        <ToldStrip {...block} />
        <Advice {...block} />
        <Cautions {...block} />
        <Ending {...block} />
        <Foot {...block} nameFaces={nameFaces} />
      </Page>
    </Document>
  );
}

type NameProps = BlockProps & { readonly nameFaces: readonly string[] };

/** Letters that reach further below the line than those of the page. */
const NAME_LEADING = 1.7;

/** A name stands in a text of its own, so that one written from right to left turns nothing beside it. */
const nameStyle = (nameFaces: readonly string[]) => (nameFaces.length === 0 ? {} : { fontFamily: [...nameFaces, ...PAGE_FACES] });

function Head({ leaflet, setting, nameFaces }: NameProps) {
  return (
    <View>
      <Text style={{ fontSize: SMALL_PT }}>{leaflet.title}</Text>
      <Text
        style={{
          ...shared.strong,
          fontSize: setting.namePt,
          lineHeight: nameFaces.length === 0 ? 1.2 : NAME_LEADING,
          ...nameStyle(nameFaces),
        }}
      >
        {leaflet.personName}
      </Text>
      {leaflet.home !== undefined && <Text style={shared.strong}>{leaflet.home}</Text>}
      <Text style={{ fontSize: SMALL_PT, marginTop: mm(0.8) }}>
        {leaflet.practiceName}, {leaflet.date}
      </Text>
    </View>
  );
}

function Goals({ leaflet, setting }: BlockProps) {
  const goals = [
    { label: leaflet.labels.keep, text: leaflet.keep },
    ...(leaflet.tryThis === null ? [] : [{ label: leaflet.labels.try, text: leaflet.tryThis }]),
  ];
  return (
    <Ruled setting={setting}>
      <View style={shared.columns}>
        {goals.map(({ label, text }) => (
          <View key={label} style={{ flex: 1 }}>
            <Text style={{ fontSize: SMALL_PT }}>{label}</Text>
            <Text style={{ ...shared.strong, fontSize: setting.largePt, lineHeight: 1.25 }}>{text}</Text>
          </View>
        ))}
      </View>
    </Ruled>
  );
}

/** What this kind of mouth asks for, in two columns where there is more than one line. */
function Advice({ leaflet, setting }: BlockProps) {
  if (leaflet.advice.length === 0) return null;
  return (
    <Ruled setting={setting}>
      <Text style={shared.strong}>{leaflet.labels.advice}</Text>
      <View style={shared.columns}>
        {splitEvenly(leaflet.advice).map((column) => (
          <View key={column[0]} style={{ flex: 1 }}>
            {column.map((text) => (
              <Caution key={text} text={text} setting={setting} />
            ))}
          </View>
        ))}
      </View>
    </Ruled>
  );
}

/** So many cautions after the first, which is the most urgent and takes the whole width, stand in two columns. */
const COLUMNS_FROM = 4;

function Cautions({ leaflet, setting }: BlockProps) {
  const [first, ...rest] = leaflet.cautions;
  if (first === undefined) return null;
  const columns = rest.length < COLUMNS_FROM ? [rest] : splitEvenly(rest);
  return (
    <Ruled setting={setting}>
      <Text style={shared.strong}>{leaflet.labels.cautions}</Text>
      <Caution text={first} setting={setting} />
      <View style={shared.columns}>
        {columns.map((column) => (
          <View key={column[0]} style={{ flex: 1 }}>
            {column.map((text) => (
              <Caution key={text} text={text} setting={setting} />
            ))}
          </View>
        ))}
      </View>
    </Ruled>
  );
}

function Caution({ text, setting }: { readonly text: string; readonly setting: PageSetting }) {
  return <Text style={{ marginTop: mm(setting.spaceMm * 0.45) }}>{text}</Text>;
}

const LETTERS_PER_LINE = 42;

/** Two columns read downwards, of about the same number of lines, the first no shorter than the second. */
function splitEvenly(texts: readonly string[]): readonly (readonly string[])[] {
  const linesOf = (some: readonly string[]) => some.reduce((sum, text) => sum + Math.ceil(text.length / LETTERS_PER_LINE), 0);
  const at = texts.findIndex((_, i) => linesOf(texts.slice(0, i + 1)) >= linesOf(texts.slice(i + 1))) + 1;
  return [texts.slice(0, at), texts.slice(at)].filter(({ length }) => length > 0);
}

/** What to stop, what it costs; the next date last and largest. */
function Ending({ leaflet, setting }: BlockProps) {
  const rows = [
    ...(leaflet.stopUsing.length > 0 ? [{ label: leaflet.labels.stop, text: `${leaflet.stopUsing.join('. ')}.` }] : []),
    ...(leaflet.released === undefined ? [] : [{ label: leaflet.labels.released, text: `${leaflet.released.join('; ')}.` }]),
    ...(leaflet.monthlyCost === null ? [] : [{ label: leaflet.labels.cost, text: leaflet.monthlyCost }]),
  ];
  return (
    <Ruled setting={setting}>
      {rows.map(({ label, text }) => (
        <Row key={label} label={label}>
          <Text>{text}</Text>
        </Row>
      ))}
      <Row label={leaflet.labels.next} isLarge>
        <Text style={{ ...shared.strong, fontSize: setting.largePt, lineHeight: 1.2 }}>{leaflet.nextDate}</Text>
      </Row>
    </Ruled>
  );
}

/** A face with higher letters sits lower in its line than the words beside it, points. */
const LIFTED = { marginTop: -3.4, marginBottom: 3.4, marginRight: 2 };

/** A row of texts drops an ordinary space at the beginning of one of them. */
const NO_BREAK_SPACE = '\u00a0';

function Foot({ leaflet, nameFaces }: NameProps) {
  const [before = '', after = ''] = leaflet.foot.split(leaflet.personName);
  return (
    <View style={styles.foot} fixed>
      {leaflet.demoNotice !== null && <Text>{leaflet.demoNotice}</Text>}
      <View style={{ flexDirection: 'row', alignItems: 'center' }}>
        {before !== '' && <Text>{before}</Text>}
        <Text style={{ ...nameStyle(nameFaces), ...(nameFaces.length > 0 && LIFTED) }}>{leaflet.personName}</Text>
        <Text>{after.replace(/^ /, NO_BREAK_SPACE)}</Text>
      </View>
    </View>
  );
}
