import type { FluidMap } from './fluidMap.ts';

/** "Typical saliva: between pH 4.6 and 5.2 hydroxyapatite dissolves while fluorapatite forms; below 4.6 both dissolve; ..." */
export function sayWindow({ fluid, critical, here: { hydroxyapatite, fluorapatite, enamel } }: FluidMap): string {
  const whose = { typical: `Typical ${fluid.name}`, partly: `${fluid.name}, measured in part`, measured: `${fluid.name}, as measured` };
  const name = capitalise(whose[critical.basis]);
  if (hydroxyapatite === null || fluorapatite === null) return `${name}: no window between pH 2 and 12.`;
  if (!(fluorapatite < hydroxyapatite)) return `${name}: no pH at which hydroxyapatite dissolves while fluorapatite forms.`;
  const [low, high] = [fluorapatite.toFixed(1), hydroxyapatite.toFixed(1)];
  const ofEnamel = enamel === null ? '' : ` Enamel gives way a little before hydroxyapatite: below ${enamel.toFixed(1)}.`;
  return `${name}: between pH ${low} and ${high} hydroxyapatite dissolves while fluorapatite forms; below ${low} both dissolve, above ${high} neither.${ofEnamel}`;
}

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
