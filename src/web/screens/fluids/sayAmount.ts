const three = new Intl.NumberFormat('en', { maximumSignificantDigits: 3 });
const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** Three figures that count, and every whole one: "5.66", "226", "22,623". */
export const sayAmount = (value: number): string => (Math.abs(value) >= 100 ? whole : three).format(value);

/** "−7.6", "+0.3": a saturation index. */
export function sayIndex(index: number): string {
  const text = Math.abs(index).toFixed(1);
  if (text === '0.0') return '0.0';
  return `${index < 0 ? '−' : '+'}${text}`;
}
