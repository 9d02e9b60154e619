import { Line, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { useContext } from 'react';
import { hatchBox } from '../core/leaflet/stripLayout.ts';
import { type Box, layOutStripRow, rowInDirection, type StripWord } from '../core/leaflet/stripRowLayout.ts';
import type { StripRow } from '../core/leaflet/types.ts';
import { type BlockProps, Direction, mm, Ruled, shared, Words } from './leafletBlocks.tsx';

const BLACK = '#000';
/** For which the words of a row are laid out. In a drawing, type is measured as everything else there. */
const WORD_PT = 12;
const WORD_MM = (WORD_PT * 25.4) / 72;

export type StripProps = BlockProps & {
  /** Of the page: no drawing takes them over from it. */
  readonly faces: readonly string[];
};

/** The day as it was told, where a professional chose it: drawn, without a number. What is used when has it already, if it is alone. */
export function ToldStrip({ leaflet: { strip, dayStrip }, widthMm, setting, faces }: StripProps) {
  if (!strip || (strip.rows.length === 1 && dayStrip && dayStrip.row.acid.length > 0)) return null;
  const { rows, words } = strip;
  return (
    <Ruled setting={setting}>
      <Words style={shared.strong}>{words.title}</Words>
      {rows.map((row) => (
        <View key={row.of} wrap={false}>
          {rows.length > 1 && <Words style={{ fontSize: setting.smallPt }}>{words[row.of]}</Words>}
          <DayRow row={row} widthMm={widthMm} setting={setting} faces={faces} />
        </View>
      ))}
      <Words style={{ fontSize: setting.smallPt }}>{`${words.dark} ${words.caution}`}</Words>
    </Ruled>
  );
}

type RowProps = Omit<StripProps, 'leaflet'> & { readonly row: StripRow };

/** A day as one row. In large print the whole drawing is larger, and fewer words stand beside each other. */
export function DayRow({ row, widthMm, setting, faces }: RowProps) {
  const scale = setting.smallPt / WORD_PT;
  const drawnMm = widthMm / scale;
  const { band, acid, night, waits, away, marks, ticks, stems, useWords, words, heightMm } = layOutStripRow(
    rowInDirection(row, useContext(Direction)),
    drawnMm,
  );
  return (
    <Svg width={mm(widthMm)} height={mm(heightMm * scale)} viewBox={`0 0 ${drawnMm} ${heightMm}`}>
      {[...night, ...away].map((box, i) => (
        <Line
          key={`${box.xMm} ${box.yMm}`}
          {...lineOf(box)}
          stroke={BLACK}
          strokeWidth={0.2}
          strokeDasharray={i < night.length ? '0.5 1' : ''}
        />
      ))}
      {waits.map((box) => (
        <Hatching key={box.xMm} box={box} stepMm={2} stroke={0.25} />
      ))}
      {acid.map((box) => (
        <Hatching key={box.xMm} box={box} stepMm={1} stroke={0.5} />
      ))}
      {[band, ...acid].map((box, i) => (
        <Rect key={i === 0 ? 'band' : box.xMm} {...boxOf(box)} stroke={BLACK} strokeWidth={0.3} fill="none" />
      ))}
      {stems.map(({ xMm, fromMm, toMm }) => (
        <Line key={xMm} x1={xMm} x2={xMm} y1={fromMm} y2={toMm} stroke={BLACK} strokeWidth={0.6} />
      ))}
      {ticks.map(({ xMm, yMm, heightMm: high }) => (
        <Line key={xMm} x1={xMm} x2={xMm} y1={yMm} y2={yMm + high} stroke={BLACK} strokeWidth={0.25} />
      ))}
      {marks.map((box) => (
        <Rect key={box.xMm} {...boxOf(box)} fill={BLACK} />
      ))}
      {useWords.map((word) => (
        <Behind key={`${word.x} ${word.text}`} word={word} />
      ))}
      {[...useWords, ...words].map(({ x, yMm, text }) => (
        <Text key={`${x} ${yMm} ${text}`} x={x} y={yMm} style={{ fontFamily: [...faces], fontSize: WORD_MM }}>
          {text}
        </Text>
      ))}
    </Svg>
  );
}

const boxOf = ({ xMm, yMm, widthMm, heightMm }: Box) => ({ x: xMm, y: yMm, width: widthMm, height: heightMm });
const lineOf = ({ xMm, yMm, widthMm }: Box) => ({ x1: xMm, x2: xMm + widthMm, y1: yMm, y2: yMm });

/** White behind a word, so that the line of another one does not cross it. */
function Behind({ word: { x, yMm, text } }: { readonly word: StripWord }) {
  return <Rect x={x + 0.4} y={yMm - 3} width={text.length * 2} height={3.6} fill="#fff" />;
}

function Hatching({ box, stepMm, stroke }: { readonly box: Box; readonly stepMm: number; readonly stroke: number }) {
  return hatchBox(box, stepMm).map((line) => <Line key={`${line.x1} ${line.y1}`} {...line} stroke={BLACK} strokeWidth={stroke} />);
}
