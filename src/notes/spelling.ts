/**
 * Mends slips of the thumb: an unknown word becomes the known word nearest to it.
 *
 * Nearest = fewest letters inserted, left out, changed or swapped with their neighbour (one such slip in words
 * of 4–5 letters, two from 6 on), or, for words typed without vowels ("pnchd"), the same consonants. Candidates
 * come from an index of words with one or two letters left out, so the cost does not grow with the lexicon.
 */
export interface SpellingIndex {
  readonly words: ReadonlySet<string>;
  readonly byDeletion: ReadonlyMap<string, readonly string[]>;
  readonly bySkeleton: ReadonlyMap<string, string>;
}

const LONGEST = 16;

/** Slips allowed in a word of this many letters. */
export function slipsAllowed(letters: number): number {
  if (letters < 3) return 0;
  return letters < 6 ? 1 : 2;
}

export function buildSpellingIndex(words: Iterable<string>): SpellingIndex {
  const set = new Set<string>();
  const byDeletion = new Map<string, string[]>();
  const bySkeleton = new Map<string, string>();
  for (const word of words) {
    if (set.has(word) || word.length < 3 || word.length > LONGEST) continue;
    set.add(word);
    for (const form of deletions(word, slipsAllowed(word.length))) {
      const at = byDeletion.get(form);
      if (at) at.push(word);
      else byDeletion.set(form, [word]);
    }
    const bones = skeleton(word);
    if (bones.length >= 3 && bones.length < word.length && !bySkeleton.has(bones))
      bySkeleton.set(bones, word);
  }
  return { words: set, byDeletion, bySkeleton };
}

/** The nearest known word and its distance, or null. Ties go to the same first letter, then to the lexicon's order. */
export function nearest(index: SpellingIndex, word: string): { word: string; slips: number } | null {
  if (word.length < 3 || word.length > LONGEST) return null;
  const allowed = slipsAllowed(word.length);
  let best: string | null = null;
  let bestScore = Number.POSITIVE_INFINITY;
  let bestSlips = 0;
  const seen = new Set<string>();
  for (const form of deletions(word, allowed)) {
    for (const candidate of index.byDeletion.get(form) ?? []) {
      if (seen.has(candidate)) continue;
      seen.add(candidate);
      const slips = countSlips(word, candidate, allowed);
      if (slips > Math.min(allowed, slipsAllowed(candidate.length))) continue;
      // Three letters leave too little to go by, but for a swap.
      if (word.length === 3 && !isSwap(word, candidate)) continue;
      // The first letter is seldom mistyped, and a swap keeps all letters.
      const score =
        slips + (candidate[0] === word[0] ? 0 : 0.6) + Math.abs(candidate.length - word.length) * 0.1;
      if (score < bestScore) {
        best = candidate;
        bestScore = score;
        bestSlips = slips;
      }
    }
  }
  if (best !== null) return { word: best, slips: bestSlips };
  if (!/[aeiou]/.test(word)) {
    const full = index.bySkeleton.get(word);
    if (full !== undefined) return { word: full, slips: full.length - word.length };
  }
  return null;
}

/** The same letters in another order. */
export function isSwap(a: string, b: string): boolean {
  return [...a].sort().join('') === [...b].sort().join('');
}

/** A word without its vowels. */
export function skeleton(word: string): string {
  return word.replace(/[aeiou]/g, '');
}

function deletions(word: string, slips: number): Set<string> {
  const forms = new Set([word]);
  let frontier = [word];
  for (let n = 0; n < slips; n++) {
    const next: string[] = [];
    for (const form of frontier) {
      for (let i = 0; i < form.length; i++) {
        const shorter = form.slice(0, i) + form.slice(i + 1);
        if (!forms.has(shorter)) {
          forms.add(shorter);
          next.push(shorter);
        }
      }
    }
    frontier = next;
  }
  return forms;
}

/** Damerau–Levenshtein distance in its restricted form (a swapped pair is not edited again); `limit + 1` when above `limit`. */
export function countSlips(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let above: number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      }
      row.push(cost);
      if (cost < least) least = cost;
    }
    if (least > limit) return limit + 1;
    before = above;
    above = row;
  }
  return Math.min(above[b.length] ?? 0, limit + 1);
}
