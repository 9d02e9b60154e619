import { StyleSheet, Text, View } from '@react-pdf/renderer';
import type { ReactNode } from 'react';
import type { Leaflet } from '../core/leaflet/types.ts';

/** How the page is set. */
export interface PageSetting {
  readonly bodyPt: number;
  /** The two goals and the next date. */
  readonly largePt: number;
  readonly namePt: number;
  readonly topMm: number;
  readonly spaceMm: number;
  /** Lines apart, times the size of the type. */
  readonly leading: number;
  /** Least width of a time of the day where there are three or more, mm; 36.5 holds a drawn brush. */
  readonly columnMm: number;
  /** Whether liquids are drawn as well as told. */
  readonly cups: boolean;
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
const LABEL_MM = 38;
/** Labels above large type, amounts and signatures. */
export const SMALL_PT = 12;

export const shared = StyleSheet.create({
  strong: { fontWeight: 600 },
  columns: { flexDirection: 'row', gap: mm(GUTTER_MM) },
});

/** A block under its own rule. */
export function Ruled({ setting, children }: { readonly setting: PageSetting; readonly children: ReactNode }) {
  return (
    <View style={{ marginTop: mm(setting.spaceMm), paddingTop: mm(setting.spaceMm * 0.5), borderTopWidth: 1.6, borderTopColor: '#000' }}>
      {children}
    </View>
  );
}

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
    <View style={{ ...shared.columns, ...(isLarge && { alignItems: 'baseline' as const }), marginTop: mm(topMm) }}>
      <Text style={{ ...shared.strong, width: mm(LABEL_MM) }}>{label}</Text>
      <View style={{ flex: 1 }}>{children}</View>
    </View>
  );
}
