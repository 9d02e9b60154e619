import { StyleSheet, Text, View } from '@react-pdf/renderer';
import { type ComponentProps, createContext, type ReactNode, useContext } from 'react';
import type { Leaflet } from '../core/leaflet/types.ts';

/** How the page is set. */
export interface PageSetting {
  readonly bodyPt: number;
  /** The two goals and the next date. */
  readonly largePt: number;
  readonly namePt: number;
  /** Labels above large type, amounts and signatures. */
  readonly smallPt: number;
  readonly footPt: number;
  readonly topMm: number;
  readonly spaceMm: number;
  /** Lines apart, times the size of the type. */
  readonly leading: number;
  /** Whether paste is drawn as well as told. */
  readonly brushes: boolean;
  /** Whether liquids are drawn as well as told. */
  readonly cups: boolean;
  /** Whether the day of uses is drawn as well as told. */
  readonly days: boolean;
  /** Large print: one thing below the other, labels at the beginning of their lines, on two pages where they hold it. */
  readonly isLarge?: true;
}

/** What every block of the page is given. */
export interface BlockProps {
  readonly leaflet: Leaflet;
  /** Between the margins, mm. */
  readonly widthMm: number;
  readonly setting: PageSetting;
}

const PT_PER_MM = 72 / 25.4;
export const mm = (value: number) => value * PT_PER_MM;

/** Between columns, mm. */
export const GUTTER_MM = 5;
const LABEL_MM = 40;

export const shared = StyleSheet.create({ strong: { fontWeight: 600 } });

/** Which way the page is written. */
export const Direction = createContext<'ltr' | 'rtl'>('ltr');

type Style = Exclude<ComponentProps<typeof View>['style'], undefined | readonly unknown[]>;

/** Where the face or the direction changes within a word the renderer would break it, with a hyphen that nobody wrote. */
const NEVER = 10_000;

/** A text of the page, in the page's direction: the renderer hands that down to no part by itself. */
export function Words({ style = {}, children }: { readonly style?: Style; readonly children: ReactNode }) {
  const direction = useContext(Direction);
  return (
    <Text style={{ ...style, direction, textAlign: direction === 'rtl' ? 'right' : 'left' }} hyphenationPenalty={NEVER}>
      {children}
    </Text>
  );
}

/** Parts side by side, beginning where the page's lines begin. */
export function Beside({
  style = {},
  gapMm = GUTTER_MM,
  children,
}: {
  readonly style?: Style;
  readonly gapMm?: number;
  readonly children: ReactNode;
}) {
  const flexDirection = useContext(Direction) === 'rtl' ? 'row-reverse' : 'row';
  return <View style={{ flexDirection, gap: mm(gapMm), ...style }}>{children}</View>;
}

/** A block under its own rule. */
export function Ruled({ setting, children }: { readonly setting: PageSetting; readonly children: ReactNode }) {
  return (
    <View style={{ marginTop: mm(setting.spaceMm), paddingTop: mm(setting.spaceMm * 0.5), borderTopWidth: 1.6, borderTopColor: '#000' }}>
      {children}
    </View>
  );
}

/** A text that its label begins, where a column of labels would take too much of the width. */
export function RunIn({
  label,
  style = {},
  textStyle = {},
  children,
}: {
  readonly label: string;
  readonly style?: Style;
  readonly textStyle?: Style;
  readonly children: string;
}) {
  const direction = useContext(Direction);
  return (
    <Words style={style}>
      <Text style={{ ...shared.strong, direction }}>{`${label}${AFTER_LABEL}`}</Text>
      <Text style={{ ...textStyle, direction }}>{children}</Text>
    </Words>
  );
}

/** Wider than a space between words, and never at the end of a line alone. */
const AFTER_LABEL = '\u00a0\u00a0 ';

/** A label in the margin column and what belongs to it; on one baseline where the text is larger than the label. */
export function Row({
  label,
  topMm = 0,
  isLarge = false,
  children,
}: {
  readonly label: string;
  readonly topMm?: number;
  readonly isLarge?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <Beside style={{ ...(isLarge && { alignItems: 'baseline' as const }), marginTop: mm(topMm) }}>
      <Words style={{ ...shared.strong, width: mm(LABEL_MM) }}>{label}</Words>
      <View style={{ flex: 1 }}>{children}</View>
    </Beside>
  );
}
