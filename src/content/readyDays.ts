import type { AcidDay, DayEvent, EatingEvent } from '../core/plaque/day/types.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import { foodsById } from './foods.ts';
import { type ReadyEventId, readyEventNames } from './readyDayNames.ts';

/** A day that somebody might describe, to be changed in a few keys. */
export interface ReadyDay {
  readonly id: string;
  readonly name: Readonly<Record<'en' | 'es', string>>;
  readonly day: AcidDay;
}

/** All of them are invented and nobody's. */
export const readyDaySource: SourceRef = { key: 'project', status: 'proposal', note: 'invented days; usual amounts and minutes' };

const clock = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return 60 * hours + minutes;
};

/** Foods with their usual amount, or another in their own unit. */
type Plate = Readonly<Record<string, number | 'usual'>>;

function portionsOf(plate: Plate): EatingEvent['portions'] {
  return Object.entries(plate).map(([food, amount]) => {
    const row = foodsById.get(food);
    if (!row) throw new RangeError(`food is not in the table of foods: ${food}`);
    return { food, amount: amount === 'usual' ? row.usualAmount : amount };
  });
}

const eaten = (
  id: ReadyEventId,
  occasion: EatingEvent['occasion'],
  [time, minutes]: readonly [string, number],
  plate: Plate,
): EatingEvent => ({
  id,
  kind: 'eating',
  label: readyEventNames[id].en,
  occasion,
  startMinute: clock(time),
  minutes,
  portions: portionsOf(plate),
});
const meal = (id: ReadyEventId, time: string, plate: Plate, minutes = 20): EatingEvent => eaten(id, 'meal', [time, minutes], plate);
const between = (id: ReadyEventId, time: string, minutes: number, plate: Plate): EatingEvent =>
  eaten(id, 'between-meals', [time, minutes], plate);
const sipped = (id: ReadyEventId, time: string, minutes: number, plate: Plate): EatingEvent => ({
  ...between(id, time, minutes, plate),
  sipped: true,
});
const brushing = (id: string, time: string): DayEvent => ({ id, kind: 'brushing', startMinute: clock(time), minutes: 2 });
const twice = (morning: string, evening: string): readonly DayEvent[] => [
  brushing('brushing-morning', morning),
  brushing('brushing-evening', evening),
];

const day = (wake: string, sleep: string, events: readonly DayEvent[]): AcidDay => ({
  wakeMinute: clock(wake),
  sleepMinute: clock(sleep),
  events: [...events].sort((a, b) => a.startMinute - b.startMinute),
});

/** Six days of six kinds. */
export const readyDays: readonly ReadyDay[] = [
  {
    id: 'three-meals',
    name: { en: 'Three meals, little between', es: 'Tres comidas, poco entre ellas' },
    day: day('06:40', '22:40', [
      meal('breakfast', '07:10', { granola: 'usual', milk: 'usual', 'black-coffee': 'usual' }),
      meal('lunch', '12:40', { 'wholemeal-bread': 120, gouda: 'usual', apple: 'usual' }),
      meal('dinner', '18:40', { pasta: 'usual', 'pasta-sauce': 'usual', 'tap-water': 'usual' }, 30),
      ...twice('07:40', '22:20'),
    ]),
  },
  {
    id: 'sipped-cola',
    name: { en: 'At a desk with a sipped cola', es: 'En la oficina con un refresco a sorbos' },
    day: day('06:40', '23:00', [
      meal('breakfast', '07:10', { 'white-bread': 'usual', jam: 'usual', 'black-coffee': 'usual' }),
      between('biscuits', '10:30', 5, { 'marie-biscuit': 'usual' }),
      meal('lunch', '12:45', { 'sub-sandwich': 'usual', 'tap-water': 'usual' }),
      sipped('cola', '14:30', 120, { cola: 500 }),
      meal('dinner', '18:40', { chicken: 'usual', potatoes: 'usual', broccoli: 'usual' }, 30),
      between('chocolate', '21:15', 5, { 'milk-chocolate': 20 }),
      ...twice('07:35', '22:40'),
    ]),
  },
  {
    id: 'many-snacks',
    name: { en: 'Many small snacks', es: 'Muchos bocados pequeños' },
    day: day('07:00', '23:30', [
      between('sweet-coffee', '07:20', 10, { 'sweet-milk-coffee': 'usual' }),
      between('cereal-bar', '09:30', 4, { 'granola-bar': 'usual' }),
      between('banana', '11:00', 4, { banana: 'usual' }),
      meal('lunch', '13:00', { pizza: 'usual', 'orange-juice': 'usual' }),
      between('crisps', '15:30', 8, { 'potato-chips': 'usual' }),
      between('sweets', '17:00', 10, { 'jelly-beans': 'usual' }),
      meal('dinner', '19:30', { rice: 'usual', beef: 'usual', tomato: 'usual' }, 25),
      between('ice-cream', '22:00', 8, { 'vanilla-ice-cream': 'usual' }),
      brushing('brushing-evening', '23:10'),
    ]),
  },
  {
    id: 'night-shift',
    name: { en: 'Night shift', es: 'Turno de noche' },
    day: day('15:00', '07:30', [
      between('energy-drink', '00:30', 15, { 'energy-drink': 'usual' }),
      meal('night-meal', '02:30', { lasagna: 'usual', 'tap-water': 'usual' }),
      sipped('sweet-tea', '04:00', 90, { 'iced-tea': 500 }),
      meal('morning-meal', '06:40', { 'white-bread': 'usual', 'cream-cheese': 'usual' }),
      meal('breakfast', '15:40', { 'bread-roll': 'usual', honey: 'usual', 'black-coffee': 'usual' }),
      meal('evening-meal', '19:30', { burrito: 'usual', tomato: 'usual' }, 25),
      between('biscuits', '22:30', 5, { 'sandwich-cookie': 'usual' }),
      ...twice('16:10', '07:10'),
    ]),
  },
  {
    id: 'school-day',
    name: { en: 'School day, ten years old', es: 'Día de escuela, diez años' },
    day: day('06:50', '20:45', [
      meal('breakfast', '07:15', { 'chocolate-cereal': 'usual', milk: 'usual' }, 15),
      between('break', '10:00', 10, { 'apple-juice': 'usual', 'graham-cracker': 'usual' }),
      meal('lunch', '12:15', { hamburger: 'usual', 'french-fries': 'usual', 'tap-water': 'usual' }),
      between('fruit-gummies', '15:45', 5, { 'fruit-snacks': 'usual' }),
      meal('dinner', '18:15', { pasta: 'usual', 'pasta-sauce': 'usual', milk: 'usual' }, 25),
      between('chocolate-milk', '20:00', 8, { 'chocolate-milk': 'usual' }),
      ...twice('07:35', '20:25'),
    ]),
  },
  {
    id: 'dry-mouth-sweets',
    name: { en: 'Dry mouth, sweets for relief', es: 'Boca seca, caramelos para aliviarla' },
    day: day('07:30', '22:30', [
      meal('breakfast', '08:00', { oatmeal: 'usual', honey: 'usual', 'black-tea': 'usual' }),
      between('hard-candy', '09:30', 8, { 'hard-candy': 'usual' }),
      between('second-candy', '11:00', 8, { 'hard-candy': 'usual' }),
      meal('lunch', '12:30', { 'tomato-soup': 'usual', 'white-bread': 'usual' }),
      between('third-candy', '14:00', 8, { 'hard-candy': 'usual' }),
      between('tea-and-cake', '16:00', 15, { 'sponge-cake': 'usual', 'black-tea': 'usual' }),
      meal('dinner', '18:30', { salmon: 'usual', potatoes: 'usual', peas: 'usual' }, 30),
      between('fourth-candy', '20:30', 8, { 'hard-candy': 'usual' }),
      ...twice('08:30', '22:00'),
    ]),
  },
];
