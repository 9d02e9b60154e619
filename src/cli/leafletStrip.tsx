import { Line, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { useContext } from 'react';
import { hatchBox } from '../core/leaflet/stripLayout.ts';
import { layOutStripRow, rowInDirection } from '../core/leaflet/stripRowLayout.ts';
import type { StripRow } from '../core/leaflet/types.ts';
import { type BlockProps, Direction, mm, Ruled, shared, Words } from './leafletBlocks.tsx';

const BLACK = '#000';
/** For which the words of a row are laid out. In a drawing, type is measured as everything else there. */
const WORD_PT = 12;
const WORD_MM = (WORD_PT * 25.4) / 72;

type StripProps = BlockProps & {
  /** Of the page: no drawing takes them over from it. */
  readonly faces: readonly string[];
};

/** The day as it was told, where a professional chose it: drawn, without a number. */
export function ToldStrip({ leaflet: { strip }, widthMm, setting, faces }: StripProps) {
  if (!strip) return null;
  const { rows, words } = strip;
  return (
    <Ruled setting={setting}>
      <Words style={shared.strong}>{words.title}</Words>
      {rows.map((row) => (
        <View key={row.of}>
          {rows.length > 1 && <Words style={{ fontSize: setting.smallPt }}>{words[row.of]}</Words>}
          <Row row={row} widthMm={widthMm} setting={setting} faces={faces} />
        </View>
      ))}
      <Words style={{ fontSize: setting.smallPt }}>{`${words.dark} ${words.caution}`}</Words>
    </Ruled>
  );
}

type RowProps = Omit<StripProps, 'leaflet'> & { readonly row: StripRow };

/** In large print the whole drawing is larger, and fewer words stand beside each other. */
function Row({ row, widthMm, setting, faces }: RowProps) {
  const scale = setting.smallPt / WORD_PT;
  const drawnMm = widthMm / scale;
  const { band, acid, night, marks, words, heightMm } = layOutStripRow(rowInDirection(row, useContext(Direction)), drawnMm);
  return (
    <Svg width={mm(widthMm)} height={mm(heightMm * scale)} viewBox={`0 0 ${drawnMm} ${heightMm}`}>
      {night.map(({ xMm, yMm, widthMm: wide }) => (
        <Line key={xMm} x1={xMm} x2={xMm + wide} y1={yMm} y2={yMm} stroke={BLACK} strokeWidth={0.2} strokeDasharray="0.5 1" />
      ))}
      {acid.map((box) =>
        hatchBox(box, 1).map((stroke) => <Line key={`${stroke.x1} ${stroke.y1}`} {...stroke} stroke={BLACK} strokeWidth={0.5} />),
      )}
      {[band, ...acid].map(({ xMm, yMm, widthMm: wide, heightMm: high }, i) => (
        <Rect key={i === 0 ? 'band' : xMm} x={xMm} y={yMm} width={wide} height={high} stroke={BLACK} strokeWidth={0.3} fill="none" />
      ))}
      {marks.map(({ xMm, yMm, widthMm: wide, heightMm: high }) => (
        <Rect key={xMm} x={xMm} y={yMm} width={wide} height={high} fill={BLACK} />
      ))}
      {words.map(({ x, yMm, text }) => (
        <Text key={`${x} ${text}`} x={x} y={yMm} style={{ fontFamily: [...faces], fontSize: WORD_MM }}>
          {text}
        </Text>
      ))}
    </Svg>
  );
}
