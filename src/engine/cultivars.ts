import { CULTIVARS } from './cultivar-data.ts';
import type { Cultivar } from './cultivar-types.ts';

export type { BrebaCrop, Cultivar, FigType, Mark } from './cultivar-types.ts';
export { CULTIVARS };

/**
 * The published cultivar of that name or synonym, or null. Case, accents, punctuation, "the" and a closing
 * "fig" make no difference: `findCultivar('the Longue d’Aout fig')?.name //=> 'Longue d’Août'`
 */
export function findCultivar(text: string): Cultivar | null {
  return BY_KEY.get(cultivarKey(text)) ?? null;
}

/**
 * Cultivars whose name or synonym has a word that begins with `prefix`, names before synonyms, then by
 * alphabet. An empty prefix gives the first `limit` of all.
 */
export function completeCultivars(prefix: string, limit: number): readonly Cultivar[] {
  const wanted = fold(prefix);
  const ranked = CULTIVARS.flatMap((cultivar) => {
    const rank = rankOf(cultivar, wanted);
    return rank === null ? [] : [{ cultivar, rank }];
  });
  ranked.sort((a, b) => a.rank - b.rank || compareText(a.cultivar.name, b.cultivar.name));
  return ranked.slice(0, Math.max(0, limit)).map(({ cultivar }) => cultivar);
}

/** 0: the name begins so; 1: a later word of the name; 2: a synonym or a word of it; null: neither. */
function rankOf(cultivar: Cultivar, wanted: string): number | null {
  const name = fold(cultivar.name);
  if (name.startsWith(wanted)) return 0;
  if (name.includes(` ${wanted}`)) return 1;
  const some = cultivar.synonyms.some((synonym) => ` ${fold(synonym)}`.includes(` ${wanted}`));
  return some ? 2 : null;
}

/** What two spellings of one cultivar have in common. */
export function cultivarKey(text: string): string {
  const words = fold(text).split(' ');
  if (words.length > 1 && words[0] === 'the') words.shift();
  if (words.length > 1 && /^figs?$/.test(words.at(-1) ?? '')) words.pop();
  if (words.length > 1 && words[0] === 'mt') words[0] = 'mount';
  // Without spaces "O'Rourke", "O Rourke" and "ORourke" are one.
  return words.join('');
}

function fold(text: string): string {
  return (
    text
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      // The dotless i of Turkish names has no decomposition.
      .replaceAll('ı', 'i')
      .replace(/[’'`´.]/g, '')
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim()
  );
}

/** Plain code point order, the same on every machine. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const BY_KEY: ReadonlyMap<string, Cultivar> = indexByKey();

function indexByKey(): Map<string, Cultivar> {
  const index = new Map<string, Cultivar>();
  for (const cultivar of CULTIVARS) index.set(cultivarKey(cultivar.name), cultivar);
  for (const cultivar of CULTIVARS) {
    for (const synonym of cultivar.synonyms) {
      const key = cultivarKey(synonym);
      if (!index.has(key)) index.set(key, cultivar);
    }
  }
  return index;
}
