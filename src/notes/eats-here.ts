import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';

/** "dad scoffed 3", "gran had two", "auntie got her hands on 4 off pot 3", "grandma took a colander home from the alma". */
export function eatsHere(items: readonly Item[], who: number): boolean {
  const verb = items[who + 1];
  if (verb?.classes.has('EATEN')) return true;
  if (verb?.text === 'had' && items.slice(who + 2, who + 4).some((each) => each.quantity)) return true;
  if (!verb || !isAnyOf(verb, ['GOT', 'TAKEN', 'HAVE'])) return false;
  const from = items.findIndex((item, i) => i > who && (item.text === 'off' || item.text === 'from'));
  const tree = items.slice(from + 1).find((item) => !item.classes.has('DET'));
  if (from < 0 || tree?.type !== 'tree' || OWNERS.has(items[from + 1]?.text ?? '')) return false;
  const between = items.slice(who + 2, from);
  return between.some((item) => ['home', 'hands', 'away', 'paws', 'mitts'].includes(item.text));
}

const OWNERS = new Set(['his', 'her', 'their', 'your']);
