import { reword } from './item.ts';
import type { Item } from './items.ts';

const PLACES = new Set(['node', 'nodes', 'joint', 'joints', 'axil', 'axils']);
const SEPARATORS = new Set([',', 'and', '&', '+', '/']);

/** "node 4, node 6 and node 9": the places as one item that knows how many they are. */
export function joinPlaces(items: readonly Item[]): readonly Item[] {
  if (!items.some((item) => PLACES.has(item.text))) return items;
  const out: Item[] = [];
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    const run = PLACES.has(item.text) ? runAt(items, i) : null;
    if (!run) {
      out.push(item);
      continue;
    }
    const last = items[run.end - 1] ?? item;
    out.push({ ...reword(item, 'nodes', item.classes), end: last.end, places: run.count });
    i = run.end - 1;
  }
  return out;
}

function runAt(items: readonly Item[], i: number): { count: number; end: number } | null {
  let count = 0;
  let end = i;
  for (let k = i; k < items.length; ) {
    if (PLACES.has(items[k]?.text ?? '')) k++;
    if (!isNumber(items[k])) break;
    count++;
    end = k + 1;
    k = end;
    while (SEPARATORS.has(items[k]?.text ?? '')) k++;
    if (k === end) break;
  }
  return count > 1 ? { count, end } : null;
}

function isNumber(item: Item | undefined): boolean {
  return item?.text === 'measure' || (item?.quantity !== undefined && item.quantity.unit === null);
}
