import type { Item } from '../items.ts';
import { isShortName } from './abbreviations.ts';
import { namesBeginning } from './cultivar-names.ts';
import { beginsPhrase } from './name-phrases.ts';
import { NUMBER_LEADS, type RosterIndex } from './roster-index.ts';

/** Words met, by whether a tree's name or anything that stands for one may begin with them; bounded. */
const beginnings = new WeakMap<RosterIndex, Map<string, boolean>>();
const MOST_WORDS = 2000;

/** Most words of a message begin no name: whether this one may, looked up before all the ways to name a tree. */
export function mayBegin(items: readonly Item[], i: number, index: RosterIndex): boolean {
  const item = items[i];
  // "miss. ripening": with a full stop any beginning of a name is one.
  if (!item || item.text !== item.typed || items[i + 1]?.text === '.') return true;
  let known = beginnings.get(index);
  if (!known) {
    known = new Map();
    beginnings.set(index, known);
  }
  const before = known.get(item.text);
  if (before !== undefined) return before;
  const begins = beginsName(item, index);
  if (known.size >= MOST_WORDS) known.clear();
  known.set(item.text, begins);
  return begins;
}

function beginsName(item: Item, index: RosterIndex): boolean {
  const { text } = item;
  return (
    NUMBER_LEADS.has(text) ||
    index.numberedBegin.has(text) ||
    index.any.has(text) ||
    namesBeginning(text).length > 0 ||
    beginsPhrase(text) ||
    isShortName(item, index)
  );
}
