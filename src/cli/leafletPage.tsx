import { Document, Page, StyleSheet, Text, View } from '@react-pdf/renderer';
import { directionOf } from '../core/leaflet/languages.ts';
import type { Leaflet } from '../core/leaflet/types.ts';
import { Beside, type BlockProps, Direction, mm, type PageSetting, Row, Ruled, RunIn, shared, Words } from './leafletBlocks.tsx';
import { Day } from './leafletDay.tsx';
import { ToldStrip } from './leafletStrip.tsx';

export type LeafletPageSize = 'A4' | 'LETTER';

const PAPER_MM: Readonly<Record<LeafletPageSize, { readonly width: number; readonly height: number }>> = {
  A4: { width: 210, height: 297 },
  LETTER: { width: 215.9, height: 279.4 },
};
const MARGIN_MM = 18;

const styles = StyleSheet.create({
  page: { color: '#000', paddingHorizontal: mm(MARGIN_MM) },
  foot: { position: 'absolute', left: mm(MARGIN_MM), right: mm(MARGIN_MM), bottom: mm(9), lineHeight: 1.25 },
  largeFoot: { position: 'absolute', left: mm(MARGIN_MM), right: mm(MARGIN_MM), lineHeight: 1.25 },
});

export interface DocumentProps {
  readonly leaflet: Leaflet;
  readonly page: LeafletPageSize;
  readonly setting: PageSetting;
  /** Faces of the page, tried in this order for each sign. */
  readonly faces: readonly string[];
  /** Faces for the name, where they are others. */
  readonly nameFaces: readonly string[];
}

export function LeafletDocument({ leaflet, page, setting, faces, nameFaces }: DocumentProps) {
  const block: BlockProps = { leaflet, widthMm: PAPER_MM[page].width - 2 * MARGIN_MM, setting };
  const pageStyle = {
    ...styles.page,
    fontFamily: [...faces],
    fontSize: setting.bodyPt,
    lineHeight: setting.leading,
    paddingTop: mm(setting.topMm),
    paddingBottom: mm(setting.isLarge ? 20 : 18),
  };
  return (
    <Direction.Provider value={directionOf(leaflet.language)}>
      <Document title={`${leaflet.title}: ${leaflet.personName}`} author={leaflet.practiceName} language={leaflet.language}>
        <Page size={page} style={pageStyle}>
          <Head {...block} faces={faces} nameFaces={nameFaces} />
          <Goals {...block} />
          <Day {...block} faces={faces} />
          <ToldStrip {...block} faces={faces} />
          <Advice {...block} />
          <Cautions {...block} />
          <Ending {...block} />
          {setting.isLarge ? (
            <LargeFoot {...block} paperMm={PAPER_MM[page].height} />
          ) : (
            <Foot {...block} faces={faces} nameFaces={nameFaces} />
          )}
        </Page>
      </Document>
    </Direction.Provider>
  );
}

type NameProps = BlockProps & Pick<DocumentProps, 'faces' | 'nameFaces'>;

/** Letters that reach further below the line than those of the page. */
const NAME_LEADING = 1.7;

/** A name stands in a text of its own, so that one written the other way turns nothing beside it. */
const nameStyle = ({ faces, nameFaces }: NameProps) => (nameFaces.length === 0 ? {} : { fontFamily: [...nameFaces, ...faces] });

function Head(props: NameProps) {
  const { leaflet, setting, nameFaces } = props;
  return (
    <View>
      <Words style={{ fontSize: setting.smallPt }}>{leaflet.title}</Words>
      <Words
        style={{
          ...shared.strong,
          fontSize: setting.namePt,
          lineHeight: nameFaces.length === 0 && leaflet.language !== 'ar' ? 1.2 : NAME_LEADING,
          ...nameStyle(props),
        }}
      >
        {leaflet.personName}
      </Words>
      {leaflet.home !== undefined && <Words style={shared.strong}>{leaflet.home}</Words>}
      <Beside gapMm={1.6} style={{ fontSize: setting.smallPt, marginTop: mm(0.8) }}>
        <Words>{`${leaflet.practiceName}${leaflet.language === 'ar' ? '،' : ','}`}</Words>
        <Words>{leaflet.date}</Words>
      </Beside>
    </View>
  );
}

function Goals({ leaflet, setting }: BlockProps) {
  const goals = [
    { label: leaflet.labels.keep, text: leaflet.keep },
    ...(leaflet.tryThis === null ? [] : [{ label: leaflet.labels.try, text: leaflet.tryThis }]),
  ];
  const told = goals.map(({ label, text }) => (
    <View key={label} style={setting.isLarge ? {} : { flex: 1 }}>
      <Words style={{ fontSize: setting.smallPt }}>{label}</Words>
      <Words style={{ ...shared.strong, fontSize: setting.largePt, lineHeight: 1.25 }}>{text}</Words>
    </View>
  ));
  return <Ruled setting={setting}>{setting.isLarge ? told : <Beside>{told}</Beside>}</Ruled>;
}

/** What this kind of mouth asks for, in two columns where there is more than one line. */
function Advice({ leaflet, setting }: BlockProps) {
  if (leaflet.advice.length === 0) return null;
  return (
    <Ruled setting={setting}>
      <Words style={shared.strong}>{leaflet.labels.advice}</Words>
      <Columns texts={leaflet.advice} setting={setting} from={2} />
    </Ruled>
  );
}

/** So many cautions after the first, which is the most urgent and takes the whole width, stand in two columns. */
const COLUMNS_FROM = 4;

function Cautions({ leaflet, setting }: BlockProps) {
  const [first, ...rest] = leaflet.cautions;
  if (first === undefined) return null;
  return (
    <Ruled setting={setting}>
      <Words style={shared.strong}>{leaflet.labels.cautions}</Words>
      <Line text={first} setting={setting} />
      <Columns texts={rest} setting={setting} from={COLUMNS_FROM} />
    </Ruled>
  );
}

function Columns({ texts, setting, from }: { readonly texts: readonly string[]; readonly setting: PageSetting; readonly from: number }) {
  const columns = setting.isLarge || texts.length < from ? [texts] : splitEvenly(texts);
  return (
    <Beside>
      {columns.map((column) => (
        <View key={column[0] ?? ''} style={{ flex: 1 }}>
          {column.map((text) => (
            <Line key={text} text={text} setting={setting} />
          ))}
        </View>
      ))}
    </Beside>
  );
}

function Line({ text, setting }: { readonly text: string; readonly setting: PageSetting }) {
  return <Words style={{ marginTop: mm(setting.spaceMm * 0.45) }}>{text}</Words>;
}

const LETTERS_PER_LINE = 42;

/** Two columns read downwards, of about the same number of lines, the first no shorter than the second. */
function splitEvenly(texts: readonly string[]): readonly (readonly string[])[] {
  const linesOf = (some: readonly string[]) => some.reduce((sum, text) => sum + Math.ceil(text.length / LETTERS_PER_LINE), 0);
  const at = texts.findIndex((_, i) => linesOf(texts.slice(0, i + 1)) >= linesOf(texts.slice(i + 1))) + 1;
  return [texts.slice(0, at), texts.slice(at)].filter(({ length }) => length > 0);
}

/** When to call, what to stop, what it costs; the next date last and largest. */
function Ending({ leaflet, setting }: BlockProps) {
  const rows = [
    ...(leaflet.call.length > 0 ? [{ label: leaflet.labels.call, text: leaflet.call.join(' ') }] : []),
    ...(leaflet.stopUsing.length > 0 ? [{ label: leaflet.labels.stop, text: `${leaflet.stopUsing.join('. ')}.` }] : []),
    ...(leaflet.released === undefined ? [] : [{ label: leaflet.labels.released, text: `${leaflet.released.join('; ')}.` }]),
    ...(leaflet.monthlyCost === null ? [] : [{ label: leaflet.labels.cost, text: leaflet.monthlyCost }]),
  ];
  return (
    <Ruled setting={setting}>
      {rows.map(({ label, text }) => (
        <EndingRow key={label} label={label} text={text} setting={setting} />
      ))}
      <NextDate leaflet={leaflet} setting={setting} />
    </Ruled>
  );
}

function EndingRow({ label, text, setting }: { readonly label: string; readonly text: string; readonly setting: PageSetting }) {
  if (setting.isLarge) return <RunIn label={label}>{text}</RunIn>;
  return (
    <Row label={label}>
      <Words>{text}</Words>
    </Row>
  );
}

function NextDate({ leaflet, setting }: Pick<BlockProps, 'leaflet' | 'setting'>) {
  const style = { ...shared.strong, fontSize: setting.largePt };
  if (setting.isLarge)
    return (
      <RunIn label={leaflet.labels.next} style={{ marginTop: mm(setting.spaceMm * 0.5) }} textStyle={style}>
        {leaflet.nextDate}
      </RunIn>
    );
  return (
    <Row label={leaflet.labels.next} isLarge>
      <Words style={{ ...style, lineHeight: 1.2 }}>{leaflet.nextDate}</Words>
    </Row>
  );
}

/** A face with higher letters sits lower in its line than the words beside it, points. */
const LIFTED = { marginTop: -3.4, marginBottom: 3.4, marginRight: 2 };

/** A row of texts drops an ordinary space at the beginning of one of them. */
const NO_BREAK_SPACE = '\u00a0';

function Foot(props: NameProps) {
  const { leaflet, setting, nameFaces } = props;
  const [before = '', after = ''] = leaflet.foot.split(leaflet.personName);
  return (
    <View style={{ ...styles.foot, fontSize: setting.footPt }} fixed>
      <Notes leaflet={leaflet} />
      <Beside gapMm={0} style={{ alignItems: 'center' }}>
        {before !== '' && <Words>{before}</Words>}
        <Words style={{ ...nameStyle(props), ...(nameFaces.length > 0 && LIFTED) }}>{leaflet.personName}</Words>
        <Words>{after.replace(/^ /, NO_BREAK_SPACE)}</Words>
      </Beside>
    </View>
  );
}

function Notes({ leaflet: { demoNotice, review } }: Pick<BlockProps, 'leaflet'>) {
  return (
    <>
      {demoNotice !== null && <Words>{demoNotice}</Words>}
      {review !== null && <Words>{review}</Words>}
    </>
  );
}

/** From the bottom of the paper to the top of the last line. */
const LARGE_FOOT_MM = 17;

/** In large print, where the page ends is not known beforehand: each page says which of how many it is. */
function LargeFoot({ leaflet, setting, paperMm }: BlockProps & { readonly paperMm: number }) {
  const direction = directionOf(leaflet.language);
  const [, numbers = ''] = leaflet.footPages.split(leaflet.personName);
  const lineOf = ({ pageNumber, totalPages = 0 }: { readonly pageNumber: number; readonly totalPages?: number }) =>
    numbers.replace('{page}', String(pageNumber)).replace('{pages}', String(totalPages)).replace(/^ · /, '');
  return (
    <>
      <Ruled setting={setting}>
        <Notes leaflet={leaflet} />
      </Ruled>
      <Text
        // From the top: what is measured from the bottom of one of several pages falls off it.
        style={{
          ...styles.largeFoot,
          top: mm(paperMm - LARGE_FOOT_MM),
          fontSize: setting.footPt,
          direction,
          textAlign: direction === 'rtl' ? 'right' : 'left',
        }}
        render={lineOf}
        fixed
      />
    </>
  );
}
