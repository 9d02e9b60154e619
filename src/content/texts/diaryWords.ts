export interface DiaryWords {
  readonly title: string;
  readonly date: string;
  readonly how: string;
  readonly sleep: string;
  readonly columns: readonly string[];
  readonly foot: string;
}

/** A paper diary of one day, in plain words. Nothing on it says what to eat or to leave out. */
export const diaryWords: Readonly<Record<'en' | 'es', DiaryWords>> = {
  en: {
    title: 'What I ate and drank today',
    date: 'Day',
    how: 'Pick an ordinary day. Write down each time you eat, drink, chew gum or brush your teeth. Small sips and bites count too.',
    sleep: 'I woke up at ……………… I went to sleep at ………………',
    columns: ['Time', 'What', 'How much', 'How long it took'],
    foot: 'Eat and drink as you always do. Bring this page to your next visit.',
  },
  es: {
    title: 'Lo que comí y bebí hoy',
    date: 'Día',
    how: 'Elija un día normal. Anote cada vez que come, bebe, mastica chicle o se cepilla los dientes. También los sorbos y los bocados pequeños.',
    sleep: 'Me desperté a las ……………… Me dormí a las ………………',
    columns: ['Hora', 'Qué', 'Cuánto', 'Cuánto duró'],
    foot: 'Coma y beba como siempre. Traiga esta hoja a su próxima visita.',
  },
};
