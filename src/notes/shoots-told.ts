import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

const OF_SHOOTS: ReadonlySet<string> = new Set(['tipped', 'pruned', 'cuttings']);

/** "took the secateurs to the king but chickened out": it was not done. */
export function backedOut(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.hits.length > 0 || saying.items.length > 6) return;
  if (!before.hits.some((hit) => OF_SHOOTS.has(hit.kind))) return;
  if (
    !saying.items.some(
      (item, i) =>
        BACKED.has(item.text) &&
        (OUT.has(saying.items[i + 1]?.text ?? '') || NERVE.has(saying.items[i + 2]?.text ?? '')),
    )
  )
    return;
  before.hits = [];
  silence(saying);
}

const BACKED = wordSet('chickened backed bottled wimped bailed copped left lost talked thought changed');
const OUT = wordSet('out it alone better');
const NERVE = wordSet('nerve mind bottle');

/** "took the snips to pot 3, every tip gone": tipped, not pruned. */
export function tipsGone(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || !saying.hits.some((hit) => hit.kind === 'tipped')) return;
  const [hit] = before.hits;
  if (hit?.kind !== 'pruned' || before.hits.length > 1 || !isFact(before.mood)) return;
  if (!before.items.some((item) => TOOLS.has(item.text))) return;
  saying.mentions = before.mentions;
  saying.date ??= before.date;
  silence(before);
}

const TOOLS = wordSet('snips secateurs scissors pruners shears clippers knife blade');
