import { describe, expect, it } from 'vitest';
import { oralFluids } from '../../content/oralFluids.ts';
import { type FluidMap, fluidMap } from '../../core/chemistry/fluidMap.ts';
import { listProducts, mapDomain, mapMark, mapScales, mineralPath, windowPath } from './fluidMapLayout.ts';

const plot = { left: 64, right: 464, top: 18, bottom: 318 };
const products = listProducts([]);
const saliva = fluidMap(oralFluids.saliva, {}, products);
const plaque = fluidMap(oralFluids.plaqueFluid, {}, products);
const domain = mapDomain([saliva, plaque]);
const scales = mapScales(domain, plot);

/** Every place that a path names. */
const placesOf = (path: string) => [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

describe('the saturation map', () => {
  it('lies inside its plot, whatever was measured', () => {
    for (const [calcium, phosphate] of [
      [0.01, 0.01],
      [10, 40],
    ] as const) {
      const measured = { calcium, phosphate };
      const wide = fluidMap(oralFluids.saliva, measured, listProducts([calcium * phosphate]));
      const at = mapScales(mapDomain([wide]), plot);
      const mark = mapMark(wide, at);
      const places = [...placesOf(mineralPath(wide.rows, 'fluorapatite', at)), ...placesOf(windowPath(wide.rows, at))];
      expect(places.length).toBeGreaterThan(60);
      for (const [x, y] of [...places, [mark?.x ?? 0, mark?.y ?? 0] as const]) {
        expect([x, y]).toEqual([expect.closeTo(Math.min(Math.max(x, 64), 464), 1), expect.closeTo(Math.min(Math.max(y, 18), 318), 1)]);
      }
    }
  });

  it('holds 5.5, and both fluids at one scale', () => {
    expect(domain.pHs[0]).toBeLessThan(4);
    expect(domain.pHs[1]).toBeGreaterThan(5.5);
    expect(domain.products).toEqual([0.5, expect.closeTo(500, 8)]);
  });

  it('puts the mark on the line of enamel, at the fluid, inside its spread', () => {
    const mark = mapMark(plaque, scales);
    if (!mark?.across || !mark.upright) throw new Error('typical fluid has a spread');
    expect(scales.x.invert(mark.x)).toBeCloseTo(3.1 * 23.2, 6);
    expect(scales.y.invert(mark.y)).toBeCloseTo(plaque.here.enamel ?? 0, 6);
    expect(mark.across[0]).toBeLessThan(mark.x);
    expect(mark.across[1]).toBeGreaterThan(mark.x);
    expect(mark.upright[0]).toBeLessThan(mark.y);
    expect(mark.upright[1]).toBeGreaterThan(mark.y);
  });

  it('draws no spread of people about what was measured', () => {
    const measured = fluidMap(oralFluids.saliva, { calcium: 1, phosphate: 4 }, products);
    expect(mapMark(measured, scales)).toMatchObject({ across: undefined, upright: undefined });
  });

  it('hatches only where fluorapatite is the one that holds longer', () => {
    const turned: FluidMap = {
      ...saliva,
      rows: saliva.rows.map((row, i) => (i < 20 ? { ...row, hydroxyapatite: row.fluorapatite, fluorapatite: row.hydroxyapatite } : row)),
    };
    const lefts = placesOf(windowPath(turned.rows, scales)).map(([x]) => x);
    expect(Math.min(...lefts)).toBeCloseTo(scales.x(products[20] ?? 1), 1);
    expect(
      windowPath(
        saliva.rows.map((row) => ({ ...row, fluorapatite: null })),
        scales,
      ),
    ).toBe('');
  });
});
