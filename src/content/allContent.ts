import type { VisitContent } from '../core/visit/visitContent.ts';
import { contentWith } from './contentWith.ts';
import { leafletTable } from './texts/leafletTable.ts';

/** Every clinical table of this edition, as an assessment takes them, with the leaflet in every language. */
export const content: VisitContent = contentWith(leafletTable);
