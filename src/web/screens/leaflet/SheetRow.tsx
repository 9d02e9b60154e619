import { layOutStripRow, rowInDirection } from '../../../core/leaflet/stripRowLayout.ts';
import type { StripRow } from '../../../core/leaflet/types.ts';
import { DayRowPicture } from '../../charts/DayRowPicture.tsx';

/** Text width of A4 between margins of 18 mm; Letter has 6 mm to spare. */
const WIDTH_MM = 174;
const HATCH_MM = 1;
/** In large print the whole drawing is larger, and fewer words stand beside each other: 18 pt for 12. */
const LARGE = 1.5;

interface SheetRowProps {
  readonly row: StripRow;
  readonly direction: 'ltr' | 'rtl';
  readonly label: string;
  readonly isLarge: boolean;
}

/** A day as one row across the sheet, in the direction of the page. */
export function SheetRow({ row, direction, label, isLarge }: SheetRowProps) {
  const width = isLarge ? WIDTH_MM / LARGE : WIDTH_MM;
  const layout = layOutStripRow(rowInDirection(row, direction), width);
  const said = [...(row.uses ?? []), ...row.eaten].map(({ name }) => name);
  return (
    <svg className="sheet-row" viewBox={`0 0 ${width} ${layout.heightMm}`} role="img" aria-label={`${label}: ${said.join(', ')}`}>
      <DayRowPicture layout={layout} hatch={HATCH_MM} />
    </svg>
  );
}
