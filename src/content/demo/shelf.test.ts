import { describe, expect, it, test } from 'vitest';
import { ShelfItemSchema } from '../../api/visitSchema.ts';
import { itemPpm } from '../../core/regimen/itemTraits.ts';
import { agents } from '../agents.ts';
import { demoShelf } from './shelf.ts';

describe('the demo shelf', () => {
  test.each(demoShelf)('$id has the shape of a shelf item, a kind that the rules know, and a strength that fits it', (item) => {
    expect(ShelfItemSchema.safeParse(item).error).toBeUndefined();
    const agent = agents.find((a) => a.id === item.agentId);
    if (!agent) throw new Error(`no agent ${item.agentId}`);
    expect(item.meets.filter((kind) => !agent.meets.includes(kind))).toEqual([]);
    const ppm = itemPpm(item);
    if (agent.ppmRange) {
      expect(ppm).toBeGreaterThanOrEqual(agent.ppmRange[0]);
      expect(ppm).toBeLessThanOrEqual(agent.ppmRange[1]);
    } else expect(ppm).toBeUndefined();
  });

  test.each(demoShelf.filter((i) => itemPpm(i) !== undefined))('$id is named with its strength, to 1 %', ({ name, ...item }) => {
    const printed = Number(/\(([\d,]+) ppm F\)/.exec(name)?.[1]?.replace(',', ''));
    expect(Math.abs((itemPpm({ name, ...item }) ?? 0) / printed - 1)).toBeLessThanOrEqual(0.01);
  });

  it('holds 25 items of many kinds, one of them out of stock', () => {
    expect(demoShelf).toHaveLength(25);
    expect(new Set(demoShelf.map(({ agentId }) => agentId)).size).toBeGreaterThan(14);
    expect(demoShelf.filter(({ inStock }) => !inStock)).toHaveLength(1);
  });

  it('names no item twice and has every ingredient noted', () => {
    expect(new Set(demoShelf.map((i) => i.id)).size).toBe(demoShelf.length);
    expect(new Set(demoShelf.map((i) => i.name)).size).toBe(demoShelf.length);
    expect(demoShelf.every((i) => i.traits !== undefined)).toBe(true);
  });

  it('tells of every pack what it tastes of, and calls none without flavour that holds one', () => {
    expect(new Set(demoShelf.map(({ flavour }) => flavour))).toEqual(new Set(['mint', 'mild mint', 'fruit', 'none']));
    expect(demoShelf.filter((i) => i.traits?.includes('flavour') !== (i.flavour !== 'none'))).toEqual([]);
  });

  it('has prescription strength marked as such', () => {
    const strict = demoShelf.filter((i) => agents.find((a) => a.id === i.agentId)?.release !== 'anyone');
    expect(strict.length).toBeGreaterThan(3);
    expect(strict.every((i) => i.release !== 'anyone')).toBe(true);
  });
});
