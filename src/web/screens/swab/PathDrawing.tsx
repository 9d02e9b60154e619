import { useId } from 'react';

interface Tooth {
  readonly name: string;
  readonly x: number;
  readonly halfWidth: number;
  /** Of the cutting edge above the line that all teeth share. */
  readonly height: number;
  readonly isCanine: boolean;
}

/** Seen from the tongue, the left canine stands on the left. */
const TEETH: readonly Tooth[] = [
  { name: '33', x: 76, halfWidth: 56, height: 152, isCanine: true },
  { name: '32', x: 180, halfWidth: 46, height: 132, isCanine: false },
  { name: '31', x: 273, halfWidth: 42, height: 126, isCanine: false },
  { name: '41', x: 367, halfWidth: 42, height: 126, isCanine: false },
  { name: '42', x: 460, halfWidth: 46, height: 132, isCanine: false },
  { name: '43', x: 564, halfWidth: 56, height: 152, isCanine: true },
];
const MIDDLE = 320;
const NECK = 214;

/** The arch comes towards the eye at both ends, so the ends stand lower on the page. */
const sink = (x: number) => 26 * ((x - MIDDLE) / MIDDLE) ** 2;

/** Tongue side of the six lower front teeth with the one pass along the gum line; drawn for this page. */
export function PathDrawing() {
  const id = useId();
  return (
    <figure className="swab-path">
      <svg viewBox="0 0 640 300" role="img" aria-label="The path of the swab, described below">
        <defs>
          <marker id={`${id}a`} viewBox="0 0 12 12" refX="9" refY="6" markerWidth="5" markerHeight="5" orient="auto">
            <path d="M1,1L10,6L1,11" className="swab-path-arrow" />
          </marker>
        </defs>
        {TEETH.map((tooth) => (
          <ToothShape key={tooth.name} tooth={tooth} />
        ))}
        <path className="swab-path-gum" d={gumLine()} />
        <path className="swab-path-pass" d={passLine()} markerEnd={`url(#${id}a)`} />
        <circle className="swab-path-start" cx={TEETH[0]?.x} cy={passY(76)} r="9" />
        {TEETH.map(({ name, x, isCanine }) =>
          isCanine ? (
            <text key={name} x={x} y="292" textAnchor="middle" className="swab-path-name">
              {name}
            </text>
          ) : null,
        )}
      </svg>
      <figcaption>
        The six lower front teeth from the tongue side, from the left canine, 33, to the right canine, 43. One line runs along the gum, from
        the one to the other without lifting: one firm pass.
      </figcaption>
    </figure>
  );
}

/** Crown from neck to edge, and the hollow of the tongue side as one thin line. */
function ToothShape({ tooth: { x, halfWidth: w, height, isCanine } }: { readonly tooth: Tooth }) {
  const neck = NECK + sink(x);
  const top = neck - height;
  const shoulder = top + (isCanine ? 52 : 26);
  const edge = isCanine
    ? `C${x - w},${top + 34} ${x - w * 0.4},${top + 8} ${x},${top}C${x + w * 0.4},${top + 8} ${x + w},${top + 34} ${x + w},${shoulder}`
    : `C${x - w},${top + 8} ${x - w * 0.92},${top} ${x - w * 0.7},${top}L${x + w * 0.7},${top}C${x + w * 0.92},${top} ${x + w},${top + 8} ${x + w},${shoulder}`;
  const left = `M${x - w * 0.62},${neck - 8}C${x - w * 0.7},${neck - 30} ${x - w},${neck - 50} ${x - w},${shoulder}`;
  const right = `C${x + w},${neck - 50} ${x + w * 0.7},${neck - 30} ${x + w * 0.62},${neck - 8}`;
  const crown = `${left}${edge}${right}`;
  const hollow = `M${x - w * 0.5},${top + 44}C${x - w * 0.44},${neck - 44} ${x + w * 0.44},${neck - 44} ${x + w * 0.5},${top + 44}`;
  return (
    <>
      <path className="swab-path-tooth" d={crown} />
      <path className="swab-path-hollow" d={hollow} />
    </>
  );
}

/** The gum hangs below each tooth and rises between two. */
function gumLine(): string {
  const bows = TEETH.map(({ x, halfWidth }) => {
    const y = NECK + sink(x);
    return `Q${x},${y + 34} ${x + halfWidth + 4},${NECK + sink(x + halfWidth) - 26}`;
  });
  return `M${76 - 62},${NECK + sink(14) - 22}${bows.join('')}`;
}

const passY = (x: number) => NECK + sink(x) - 18;

function passLine(): string {
  const [first, ...rest] = Array.from({ length: 25 }, (_, i) => 76 + (i * (564 - 76)) / 24).map(
    (x) => `${x.toFixed(1)},${passY(x).toFixed(1)}`,
  );
  return `M${first}L${rest.join('L')}`;
}
