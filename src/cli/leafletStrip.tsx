import { Line, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { useContext } from 'react';
import { hatchBox } from '../core/leaflet/stripLayout.ts';
import { layOutStripRow, rowInDirection } from '../core/leaflet/stripRowLayout.ts';
import type { StripRow } from '../core/leaflet/types.ts';
import { type BlockProps, Direction, mm, Ruled, shared, Words } from './leafletBlocks.tsx';

const BLACK = '#000';
const WORD_MM = 4.2;

/** The day as it was told, where a professional chose it: drawn, without a number. */
export function ToldStrip({ leaflet: { strip }, widthMm, setting }: BlockProps) {
  if (!strip) return null;
  const { rows, words } = strip;
  return (
    <Ruled setting={setting}>
      <Words style={shared.strong}>{words.title}</Words>
      {rows.map((row) => (
        <View key={row.of}>
          {rows.length > 1 && <Words style={{ fontSize: setting.smallPt }}>{words[row.of]}</Words>}
          <Row row={row} widthMm={widthMm} />
        </View>
      ))}
      <Words style={{ fontSize: setting.smallPt }}>{`${words.dark} ${words.caution}`}</Words>
    </Ruled>
  );
}

function Row({ row, widthMm }: { readonly row: StripRow; readonly widthMm: number }) {
  const { band, acid, night, marks, words, heightMm } = layOutStripRow(rowInDirection(row, useContext(Direction)), widthMm);
  return (
    <Svg width={mm(widthMm)} height={mm(heightMm)} viewBox={`0 0 ${widthMm} ${heightMm}`}>
      {night.map(({ xMm, yMm, widthMm: wide }) => (
        <Line key={xMm} x1={xMm} x2={xMm + wide} y1={yMm} y2={yMm} stroke={BLACK} strokeWidth={0.2} strokeDasharray="0.5 1" />
      ))}
      {acid.map((box) =>
        hatchBox(box, 1).map((stroke) => <Line key={`${stroke.x1} ${stroke.x2}`} {...stroke} stroke={BLACK} strokeWidth={0.5} />),
      )}
      {[band, ...acid].map(({ xMm, yMm, widthMm: wide, heightMm: high }, i) => (
        <Rect key={i === 0 ? 'band' : xMm} x={xMm} y={yMm} width={wide} height={high} stroke={BLACK} strokeWidth={0.3} fill="none" />
      ))}
      {marks.map(({ xMm, yMm, widthMm: wide, heightMm: high }) => (
        <Rect key={xMm} x={xMm} y={yMm} width={wide} height={high} fill={BLACK} />
      ))}
      {words.map(({ x, yMm, text }) => (
        <Text key={`${x} ${text}`} x={x} y={yMm} style={{ fontSize: WORD_MM }}>
          {text}
        </Text>
      ))}
    </Svg>
  );
}
