import type { EventNames } from '../core/plaque/day/nameOfEvent.ts';

/**
 * What is eaten on the ready-made days, by the id of the event: the English name stands on the day, the others where it is read in their
 * language. Another language is another column here.
 */
export const readyEventNames = {
  breakfast: { en: 'Breakfast', es: 'Desayuno' },
  lunch: { en: 'Lunch', es: 'Almuerzo' },
  dinner: { en: 'Dinner', es: 'Cena' },
  biscuits: { en: 'Biscuits', es: 'Galletas' },
  cola: { en: 'Cola', es: 'Refresco de cola' },
  chocolate: { en: 'Chocolate', es: 'Chocolate' },
  'sweet-coffee': { en: 'Sweet coffee', es: 'Café con azúcar' },
  'cereal-bar': { en: 'Cereal bar', es: 'Barrita de cereales' },
  banana: { en: 'Banana', es: 'Banana' },
  crisps: { en: 'Crisps', es: 'Papas fritas de bolsa' },
  sweets: { en: 'Sweets', es: 'Caramelos' },
  'ice-cream': { en: 'Ice cream', es: 'Helado' },
  'energy-drink': { en: 'Energy drink', es: 'Bebida energética' },
  'night-meal': { en: 'Night meal', es: 'Comida de la noche' },
  'sweet-tea': { en: 'Sweet tea', es: 'Té dulce' },
  'morning-meal': { en: 'Morning meal', es: 'Comida de la mañana' },
  'evening-meal': { en: 'Evening meal', es: 'Comida de la tarde' },
  break: { en: 'Break', es: 'Recreo' },
  'fruit-gummies': { en: 'Fruit gummies', es: 'Gomitas de fruta' },
  'chocolate-milk': { en: 'Chocolate milk', es: 'Leche con chocolate' },
  'hard-candy': { en: 'Hard candy', es: 'Caramelo duro' },
  'second-candy': { en: 'Second candy', es: 'Segundo caramelo' },
  'third-candy': { en: 'Third candy', es: 'Tercer caramelo' },
  'fourth-candy': { en: 'Fourth candy', es: 'Cuarto caramelo' },
  'tea-and-cake': { en: 'Tea and cake', es: 'Té y pastel' },
} as const satisfies EventNames;

export type ReadyEventId = keyof typeof readyEventNames;
