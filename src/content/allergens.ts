import type { Choice } from '../core/visit/question.ts';

/**
 * Allergies that are asked for, because some home care or treatment holds the substance. The rules about each stand with the regimen
 * tables. The choice of what to ask is ours.
 */
export const allergens: readonly Choice[] = [
  { id: 'milk-protein', label: 'Milk protein (not lactose alone)' },
  { id: 'benzoate', label: 'Benzoate preservatives' },
  { id: 'colophony', label: 'Colophony, rosin or sticking plaster' },
  { id: 'chlorhexidine', label: 'Chlorhexidine' },
  { id: 'silver', label: 'Silver' },
  { id: 'iodine', label: 'Iodine' },
  { id: 'chlorine', label: 'Chlorine or bleach' },
  { id: 'acrylate', label: 'Acrylates or methacrylates' },
  { id: 'fluoride', label: 'Fluoride' },
  { id: 'ammonia', label: 'Ammonia' },
  { id: 'peppermint', label: 'Mint or another flavour' },
  { id: 'essential-oils', label: 'Essential oils' },
  { id: 'sodium-lauryl-sulfate', label: 'Sodium lauryl sulfate' },
  { id: 'propylene-glycol', label: 'Propylene glycol' },
  { id: 'other', label: 'Another allergy' },
];
