import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { type Saying, silence } from './sayings.ts';

/** "3 gone, the rest fine": lost, and nobody says that they were eaten. */
export function restIsFine(saying: Saying, next: Saying | undefined): void {
  const [hit] = saying.hits;
  if (hit?.kind !== 'picked' || !next || next.clause.sentence !== saying.clause.sentence) return;
  if (!next.items.some((item) => item.text === 'rest' || item.text === 'others')) return;
  if (!hit.at.every((i) => isGone(saying.items[i]))) return;
  saying.hits = [];
}

function isGone(item: Item | undefined): boolean {
  return (
    item !== undefined &&
    (item.quantity !== undefined || item.text === 'gone' || isAnyOf(item, ['FRUIT', 'SIZE']))
  );
}

const BINNED = new Set(['chucked', 'binned', 'threw', 'dumped', 'ditched', 'tossed', 'composted']);

/** "10 oz picked, all gone by teatime", "sour, chucked the lot": no figs that dropped. */
export function goneOrBinned(saying: Saying, before: Saying | undefined): void {
  const [hit] = saying.hits;
  if (!before || !hit || hit.kind !== 'dropped' || saying.hits.length > 1 || saying.mentions.length > 0)
    return;
  if (before.clause.sentence !== saying.clause.sentence) return;
  const words = hit.at.map((i) => saying.items[i]?.text ?? '');
  const gone =
    before.hits.some((each) => each.kind === 'picked') &&
    words.every((word) => ['all', 'gone'].includes(word));
  const binned =
    before.hits.some((each) => each.kind === 'trouble') && words.some((word) => BINNED.has(word));
  if (!gone && !binned) return;
  silence(saying);
}
