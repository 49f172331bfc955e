import type { Item } from './items.ts';

/** "it wasnt till the 12th that i tipped it", "wasnt until june 20 the king showed any": told as done, on that day. */
export function straightenClefts(items: readonly Item[]): readonly Item[] {
  const from = items[0]?.text === 'it' ? 1 : 0;
  if (items[from]?.text !== 'was' || items[from + 1]?.text !== 'not' || items[from + 2]?.text !== 'until')
    return items;
  const date = items[from + 3];
  if (date?.type !== 'date') return items;
  const rest = items.slice(items[from + 4]?.text === 'that' ? from + 5 : from + 4);
  const who = rest.find((item) => !item.classes.has('DET'));
  if (!who || !(who.type === 'tree' || ['i', 'we', 'it', 'they'].includes(who.text))) return items;
  return [date, ...rest];
}
