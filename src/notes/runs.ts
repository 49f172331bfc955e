import type { Clause } from './clauses.ts';
import { rawHits } from './hits.ts';
import type { Item } from './items.ts';

/** Cuts a clause that tells of several trees in a row: "rdb 4 figs gh mission 2". */
export function cutRuns(clauses: readonly Clause[]): Clause[] {
  const out: Clause[] = [];
  for (const clause of clauses) for (const part of cutAlready(clause)) out.push(...cutAtTrees(part));
  return out;
}

function cutAtTrees(clause: Clause): Clause[] {
  const trees: number[] = [];
  clause.items.forEach((item, i) => {
    if (item.type === 'tree') trees.push(i);
  });
  if (trees.length < 2) return [clause];
  const tail = trees.at(-1) ?? 0;
  const last = clause.items.at(-1)?.text;
  const denied = last === 'not' || (last === 'yet' && clause.items.at(-2)?.text === 'not');
  if (denied && tail > 0 && clause.items.length - tail <= 4) {
    const [head, ...rest] = cutAt(clause, [withArticle(clause, tail)]);
    return [...cutRuns(head ? [head] : []), ...rest];
  }
  const not = clause.items.findIndex(
    (item, i) =>
      item.text === 'not' &&
      i > (trees[0] ?? 0) &&
      i < (trees[1] ?? 0) &&
      ['on', 'the', 'off', 'tree'].includes(clause.items[i + 1]?.text ?? ''),
  );
  if (not > 0) return cutAt(clause, [not]);
  // "leaf spot on the alma now its the ronde"
  const now = clause.items.findIndex(
    (item, i) =>
      item.text === 'now' &&
      i > (trees[0] ?? 0) &&
      i < tail &&
      tail - i <= 5 &&
      tail === clause.items.length - 1,
  );
  // "picked 3 ronde 2 celeste 11 mission": each tree with the number before it.
  if (trees.every((at) => clause.items[at - 1]?.quantity)) {
    return cutAt(
      clause,
      trees.slice(1).map((at) => at - 1),
    );
  }
  // "harvest today alma 5 king 3 ronde 2": or the number behind it.
  if (trees.every((at) => clause.items[at + 1]?.quantity || isNil(clause.items[at + 1]))) {
    return cutAt(
      clause,
      trees.slice(1).map((at) => withArticle(clause, at)),
    );
  }
  const hits = rawHits(clause);
  if (now > 0 && hits.length === 1) return cutAt(clause, [now]);
  if (hits.length < 2) return [clause];
  const cuts: number[] = [];
  const treeFirst = (trees[0] ?? 0) <= (hits[0]?.first ?? 0);
  for (let t = 1; t < trees.length; t++) {
    const from = trees[t - 1] ?? 0;
    const to = trees[t] ?? 0;
    const until = trees[t + 1] ?? clause.items.length;
    if (treeFirst) {
      if (
        hits.some((hit) => hit.core >= from && hit.last < to) &&
        hits.some((hit) => hit.first >= to && hit.core <= until)
      )
        cuts.push(withArticle(clause, to));
    } else {
      const next = hits.find((hit) => hit.first > from && hit.first < to);
      if (next) cuts.push(next.first);
    }
  }
  return cutAt(clause, cuts);
}

/** The parts of a clause, cut before each of these items; without cuts the clause itself. */
function cutAt(clause: Clause, cuts: readonly number[]): Clause[] {
  if (cuts.length === 0) return [clause];
  return [0, ...cuts].map((from, k) => ({
    ...clause,
    items: clause.items.slice(from, cuts[k]),
    join: k === 0 ? clause.join : ('comma' as const),
    sub: k === 0 ? clause.sub : null,
  }));
}

/** "adriatic 4 figs kadota 0": a number too. */
function isNil(item: Item | undefined): boolean {
  return item !== undefined && ['zero', 'nil', 'none', 'nought'].includes(item.text);
}

function withArticle(clause: Clause, at: number): number {
  return ['the', 'my'].includes(clause.items[at - 1]?.text ?? '') ? at - 1 : at;
}

/** "when i fed it monday | it already had 5 figs": a second thing told without a mark between. */
function cutAlready(clause: Clause): Clause[] {
  const { items } = clause;
  const at = items.findIndex(
    (item, i) =>
      i >= 3 &&
      (item.text === 'it' || item.text === 'they') &&
      items[i + 1]?.text === 'already' &&
      items[i + 2]?.classes.has('HAVE') === true,
  );
  return cutAt(clause, at < 0 ? [] : [at]);
}
