import { describe, expect, it } from 'vitest';
import { CULTIVARS, completeCultivars, cultivarKey, findCultivar } from '../../src/engine/cultivars.ts';

const nameOf = (text: string) => findCultivar(text)?.name ?? null;

describe('the catalogue of cultivars', () => {
  it('knows a cultivar by name and synonym in any spelling', () => {
    expect(nameOf('celeste')).toBe('Celeste');
    expect(nameOf('  CHICAGO   hardy ')).toBe('Hardy Chicago');
    expect(nameOf('the Brunswick fig')).toBe('Brunswick');
    expect(nameOf('Magnolia')).toBe('Brunswick');
    expect(nameOf('Longue d’Août')).toBe('Longue d’Août');
    expect(nameOf("longue d'aout")).toBe('Longue d’Août');
    expect(nameOf('JH Adriatic')).toBe('J.H. Adriatic');
    expect(nameOf('O’Rourke')).toBe('O’Rourke');
    expect(nameOf('o rourke')).toBe('O’Rourke');
    expect(nameOf('Bursa Siyahı')).toBe('Bursa Siyahi');
    expect(nameOf('violette-de-bordeaux')).toBe('Violette de Bordeaux');
    expect(nameOf('Mt. Etna')).toBe('Mount Etna');
    expect(nameOf('sal’s')).toBe('Sal’s GS');
  });

  it('does not know what it does not know', () => {
    for (const text of [
      '',
      'fig',
      'the',
      '   ',
      'constructor',
      '__proto__',
      'Ficus',
      '🫒',
      'Celest',
      "'; --",
    ]) {
      expect(findCultivar(text)).toBeNull();
    }
  });

  it('gives every name and synonym to one cultivar only', () => {
    const owners = new Map<string, string>();
    for (const { name, synonyms } of CULTIVARS) {
      for (const text of [name, ...synonyms]) {
        const key = cultivarKey(text);
        expect(key).not.toBe('');
        expect(owners.get(key) ?? name, text).toBe(name);
        owners.set(key, name);
        expect(nameOf(text)).toBe(name);
      }
    }
  });

  it('names a source for every entry, group and span', () => {
    for (const cultivar of CULTIVARS) {
      expect(cultivar.source.length, cultivar.name).toBeGreaterThan(3);
      expect(cultivar.group === 'unknown' || cultivar.groupMark !== undefined, cultivar.name).toBe(true);
      if (cultivar.span) expect(cultivar.span.source.length).toBeGreaterThan(3);
    }
  });

  it('tells which main crops drop unless pollinated', () => {
    // Auburn/Alabama ACES ANR-1145: common sets unpollinated; Smyrna and San Pedro main crops do not.
    for (const { type, mainNeedsPollination, name } of CULTIVARS) {
      if (type === 'common') expect(mainNeedsPollination, name).toBe(false);
      if (type === 'smyrna' || type === 'san-pedro') expect(mainNeedsPollination, name).toBe(true);
    }
    const drops = (text: string) => findCultivar(text)?.mainNeedsPollination;
    expect(['Desert King', 'Sari Lop', 'Zidi', 'Lampeira', 'Gentile'].map(drops)).toEqual(
      Array(5).fill(true),
    );
    // Marcotuli et al. 2020 (Petrelli); Çalışkan et al. 2024 and Horticulturae 2023 9:78 (Bursa Siyahi).
    expect(['Petrelli', 'Bursa Siyahi'].map(drops)).toEqual([true, true]);
    // The edible, persistent caprifig of the Puget Sound variety test.
    expect(findCultivar('Croisic')).toMatchObject({ type: 'caprifig', mainNeedsPollination: false });
    expect(findCultivar('Gillette')?.name).toBe('Croisic');
  });

  it('calls early and late what growers do (common practice, no source)', () => {
    const groupOf = (text: string) => findCultivar(text)?.group;
    expect(['Celeste', 'Hardy Chicago', 'Mount Etna'].map(groupOf)).toEqual(['early', 'early', 'early']);
    expect(['Black Madeira', 'Col de Dame', 'Coll de Dama Negre'].map(groupOf)).toEqual([
      'late',
      'late',
      'late',
    ]);
  });

  it('completes names first, then words in them, then synonyms', () => {
    expect(completeCultivars('bru', 5).map(({ name }) => name)).toEqual(['Brunswick']);
    expect(completeCultivars('brown', 5).map(({ name }) => name)).toEqual(['Brown Turkey', 'San Piero']);
    expect(completeCultivars('black', 9).map(({ name }) => name)).toEqual([
      'Black Madeira',
      'Black Mission',
      'Gino’s Black',
      'Ischia Black',
      'Marseilles Black VS',
      'Bursa Siyahi',
    ]);
    expect(completeCultivars('MAGN', 5).map(({ name }) => name)).toEqual(['Brunswick']);
    expect(completeCultivars('', 25)).toHaveLength(25);
    expect(completeCultivars('zzz', 25)).toEqual([]);
    expect(completeCultivars('a', -1)).toEqual([]);
  });
});
