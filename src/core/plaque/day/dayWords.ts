import type { Food } from './types.ts';

export type DayLanguage = keyof Food['name'];

/** The parts of which the sentences about a day are made; `{}` stands for what is put in, in order. */
export interface DayWords {
  readonly lessThan: string;
  readonly upTo: string;
  readonly about: string;
  readonly range: string;
  readonly minutes: string;
  readonly hours: string;
  /** Hours and minutes. */
  readonly both: string;
  /** Before a range that nothing else makes loose. */
  readonly roughly: string;
  readonly onAcidSide: string;
  readonly mostly: string;
  readonly sipped: string;
  readonly andMore: string;
  readonly nearLine: Readonly<Record<'night' | 'day-and-night', string>>;
  readonly foodAdds: string;
  readonly foodAddsAtLeast: string;
  readonly overDays: string;
  readonly overDaysNearLine: string;
  readonly overDaysAtLeast: string;
  readonly recurs: string;
  readonly caution: string;
}

export const dayWords: Readonly<Record<DayLanguage, DayWords>> = {
  en: {
    lessThan: 'less than {}',
    upTo: 'up to {}',
    about: 'about {}',
    range: '{} to {}',
    minutes: '{} minutes',
    hours: '{} hours',
    both: '{} h {} min',
    roughly: 'roughly {}',
    onAcidSide: 'In the model, {} a day on the acid side{}.',
    mostly: ', mostly {}',
    sipped: 'the sipped {}',
    andMore: '{} and more',
    nearLine: {
      night: 'In the model, this plaque lies near the line at night even when nothing is eaten.',
      'day-and-night': 'In the model, this plaque lies near the line day and night even when nothing is eaten.',
    },
    foodAdds: 'What is eaten and drunk adds {} a day on the acid side{}.',
    foodAddsAtLeast: 'What is eaten and drunk adds at least {} a day on the acid side{}; how much more, the model cannot tell.',
    overDays: 'In the model, over the {} days described, {} a day on the acid side.',
    overDaysNearLine: 'Over the {} days described, what is eaten and drunk adds {} a day on the acid side.',
    overDaysAtLeast:
      'Over the {} days described, what is eaten and drunk adds at least {} a day on the acid side; how much more, the model cannot tell.',
    recurs: 'What comes back most between meals: {}, on {} of the {} days.',
    caution: 'This compares days; it does not measure teeth.',
  },
  es: {
    lessThan: 'menos de {}',
    upTo: 'hasta {}',
    about: 'cerca de {}',
    range: 'de {} a {}',
    minutes: '{} minutos',
    hours: '{} horas',
    both: '{} h {} min',
    roughly: 'aproximadamente {}',
    onAcidSide: 'En el modelo, {} al día en el lado ácido{}.',
    mostly: ', sobre todo: {}',
    sipped: '{} a sorbos',
    andMore: '{} y más',
    nearLine: {
      night: 'En el modelo, esta placa está de noche cerca de la línea aunque no se coma nada.',
      'day-and-night': 'En el modelo, esta placa está de día y de noche cerca de la línea aunque no se coma nada.',
    },
    foodAdds: 'Lo que se come y se bebe añade {} al día en el lado ácido{}.',
    foodAddsAtLeast: 'Lo que se come y se bebe añade al menos {} al día en el lado ácido{}; cuánto más, el modelo no lo puede decir.',
    overDays: 'En el modelo, en los {} días descritos, {} al día en el lado ácido.',
    overDaysNearLine: 'En los {} días descritos, lo que se come y se bebe añade {} al día en el lado ácido.',
    overDaysAtLeast:
      'En los {} días descritos, lo que se come y se bebe añade al menos {} al día en el lado ácido; cuánto más, el modelo no lo puede decir.',
    recurs: 'Lo que más se repite entre comidas: {}, en {} de los {} días.',
    caution: 'Esto compara días; no mide los dientes.',
  },
};

/** Puts values into the places of a pattern, in order. */
export function fillWords(pattern: string, ...values: readonly (string | number)[]): string {
  let next = 0;
  return pattern.replaceAll('{}', () => {
    const value = values[next];
    next += 1;
    return String(value ?? '');
  });
}
