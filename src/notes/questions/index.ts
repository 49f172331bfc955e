import type { Intent, QuestionReading, Setting } from '../contract.ts';
import { type Item, readItems } from '../items.ts';
import { readNoteItems } from '../read-note.ts';
import { MOST_CANDIDATES } from '../settle.ts';
import { intentOf } from './intent.ts';

/**
 * What a message wants. A statement is a note, question mark or not.
 * `readMessage('should i tip the alma', setting) //=> { intent: 'tip', tree: 3, ask: null, trees: [] }`
 */
export function readMessage(text: string, setting: Setting): QuestionReading {
  const items = readItems(text, setting);
  const intent = intentOf(items, setting);
  if (intent === 'note') return noteReading(text, items, setting);
  return { intent, ...treeFor(intent, items, setting) };
}

function treeFor(
  intent: Exclude<Intent, 'note'>,
  items: readonly Item[],
  setting: Setting,
): Omit<QuestionReading, 'intent'> {
  if (intent === 'roundup' || intent === 'help') return { tree: null, ask: null, trees: [] };
  const mentions = items.flatMap((item) => item.mention ?? []);
  const ids = [...new Set(mentions.flatMap((mention) => mention.ids))];
  const foreign = mentions.some((mention) => mention.ids.length === 0);
  if (ids.length === 1 && !foreign) return { tree: ids[0] ?? null, ask: null, trees: [] };
  const single = mentions.filter((mention) => mention.ids.length === 1);
  if (
    mentions.length > 1 &&
    single.length === 1 &&
    mentions.every((mention) => mention.ids.includes(single[0]?.ids[0] ?? -1))
  ) {
    return { tree: single[0]?.ids[0] ?? null, ask: null, trees: [] };
  }
  if (mentions.length === 0) {
    if (intent === 'due') return { tree: null, ask: null, trees: [] };
    if (setting.about?.length === 1) return { tree: setting.about[0] ?? null, ask: null, trees: [] };
    return { tree: null, ask: 'tree', trees: [] };
  }
  return { tree: null, ask: 'tree', trees: ids.slice(0, MOST_CANDIDATES) };
}

function noteReading(text: string, items: readonly Item[], setting: Setting): QuestionReading {
  const { logged, ask } = readNoteItems(text, items, setting);
  if (ask?.what === 'tree') return { intent: 'note', tree: null, ask: 'tree', trees: ask.trees };
  const tree =
    logged.find((event) => event.tree !== null)?.tree ??
    ask?.open.find((event) => event.tree != null)?.tree ??
    null;
  return { intent: 'note', tree, ask: null, trees: [] };
}
