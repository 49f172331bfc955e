import type { Day } from '../engine/day.ts';
import { DECISIVE_KINDS } from './doubt.ts';
import { complete, type Draft } from './draft.ts';
import { harmlessItems } from './harmless.ts';
import type { Item } from './items.ts';
import type { Subject } from './subjects.ts';

/**
 * "loads in the freezer, all off the little kadota", "ditched its entire crop, the celeste did": what was told without
 * a tree is of the one tree the message names. What was told of that tree already is not told twice.
 */
export function attachToOnlyTree(
  draft: Draft,
  items: readonly Item[],
  subjects: readonly Subject[],
  today: Day,
): Draft {
  const only = onlyTree(items);
  if (only === null || subjects.some(({ others, unknown }) => others || unknown)) return draft;
  const logged = [...draft.logged];
  const pending = draft.pending.flatMap((each) => {
    if (each.what !== 'tree' || each.trees.length > 0) return [each];
    const { kind, on } = each.open;
    if (kind === undefined) return [{ ...each, what: 'kind' as const, open: { ...each.open, tree: only } }];
    const told = logged.some(
      (event) =>
        event.tree === only && (event.kind === kind || (kind === 'fruitlets' && event.kind !== 'remark')),
    );
    if (told) return [];
    // What decides something is of that tree only where nothing else is told of it, nor denied, planned or asked.
    const other = logged.some((event) => event.tree === only && event.kind !== 'remark');
    if (DECISIVE_KINDS.has(kind) && kind !== 'no-fruitlets') {
      // "tipped or not, which is better for the alma": the remark on the tree says it.
      if (asksWhich(items) && logged.some((event) => event.tree === only)) return [];
      if (other || isUnsure(items)) return [each];
    }
    logged.push(complete(each.open, only, kind, on ?? today));
    return [];
  });
  // What only named the tree adds nothing to what is told of it now.
  const grown = logged.length > draft.logged.length;
  return { logged: grown ? logged.filter(({ kind }) => kind !== 'remark') : logged, pending };
}

function asksWhich(items: readonly Item[]): boolean {
  return items.some((item) => item.text === 'which' || item.text === 'better');
}

/** It denies, plans or asks something. */
function isUnsure(items: readonly Item[]): boolean {
  const harmless = harmlessItems(items);
  return items.some(
    (item, i) =>
      item.text === '?' || (!harmless.has(i) && (item.classes.has('NEG') || item.classes.has('WILL'))),
  );
}

/** The one tree of the roster that a message names, or null. */
function onlyTree(items: readonly Item[]): number | null {
  const ids = new Set<number>();
  for (const { mention } of items) {
    if (!mention) continue;
    const [id, ...more] = mention.ids;
    if (id === undefined || more.length > 0) return null;
    ids.add(id);
  }
  const [only] = ids;
  return ids.size === 1 && only !== undefined ? only : null;
}
