import { splitClauses } from './clauses.ts';
import type { Intent, QuestionReading, Setting } from './contract.ts';
import { type Item, readItems } from './items.ts';
import { type AskIntent, INTENTS } from './lexicon/intents.ts';
import { readMood } from './mood.ts';
import { compileTable, findMatches } from './patterns.ts';
import { readNote } from './read-note.ts';
import { readSaying } from './sayings.ts';
import { MOST_CANDIDATES } from './settle.ts';
import type { Mention } from './trees/mentions.ts';

const INDEX = compileTable(INTENTS);

/**
 * What a message wants. A statement is a note, question mark or not.
 * `readMessage('should i tip the alma', setting) //=> { intent: 'tip', tree: 3, ask: null, trees: [] }`
 */
export function readMessage(text: string, setting: Setting): QuestionReading {
  const items = readItems(text, setting);
  const intent = intentOf(items, setting);
  if (intent === 'note') return noteReading(text, setting);
  return { intent, ...treeFor(intent, items, setting) };
}

const QUESTION_WORDS = new Set(
  'should shall do does did can could will would is are am how when what whats which why who where any anything anyone anybody need needs worth ok okay safe right too late early soon yet still or time ready necessary must again best good long many eta versus skip now please gonna going whens hows roughly rough guess another wait leave'.split(
    ' ',
  ),
);

function intentOf(items: readonly Item[], setting: Setting): Intent {
  const plain = items.filter((item) => item.type !== 'mark');
  const marked = items.some((item) => item.text === '?');
  const found = new Set<AskIntent>(findMatches(plain, INDEX).map((match) => match.kind));
  const asking = marked || plain.some((item) => QUESTION_WORDS.has(item.text));
  if (found.has('record') && !isHowTo(plain)) return 'note';
  if (found.has('help') && (isHowTo(plain) || !found.has('tip') || plain.length <= 3)) {
    if (!(plain.length > 4 && onlyHelpWord(plain)) && (isHowTo(plain) || !states(items, setting)))
      return isTipHowTo(plain) ? 'tip' : 'help';
  }
  const stated = states(items, setting);
  if (found.has('tip') && asking && asksToTip(items, plain, marked, setting, stated)) return 'tip';
  if (stated) return 'note';
  if (found.has('roundup')) return 'roundup';
  if (found.has('ripe-when') && (asking || found.has('ripe-when')) && !onlyStatesRipe(plain, marked))
    return 'ripe-when';
  if (found.has('due')) return 'due';
  return 'note';
}

function isHowTo(plain: readonly Item[]): boolean {
  const words = plain.slice(0, 12).map((item) => item.text);
  return (
    words.some(
      (word, i) =>
        word === 'how' &&
        ['do', 'does', 'can', 'to', 'could', 'should', 'would'].includes(words[i + 1] ?? ''),
    ) ||
    words.some(
      (word, i) =>
        word === 'what' &&
        ['do', 'can'].includes(words[i + 1] ?? '') &&
        ['i', 'you'].includes(words[i + 2] ?? ''),
    ) ||
    (['can', 'could'].includes(words[0] ?? '') && words[1] === 'i') ||
    words.includes('commands') ||
    (words[0] === 'where' && ['do', 'can', 'is'].includes(words[1] ?? ''))
  );
}

function isTipHowTo(plain: readonly Item[]): boolean {
  return (
    plain.some((item) => item.classes.has('TIP') || item.classes.has('TIPPING')) &&
    !plain.some((item) =>
      [
        'log',
        'record',
        'note',
        'reminders',
        'reminder',
        'nudges',
        'pings',
        'delete',
        'undo',
        'edit',
        'change',
        'add',
        'command',
        'type',
      ].includes(item.text),
    )
  );
}

function onlyHelpWord(plain: readonly Item[]): boolean {
  return (
    plain.some((item) => item.text === 'help') &&
    !plain.some((item) => ['commands', 'manual', 'instructions', 'command'].includes(item.text))
  );
}

/** Whether some clause states something as a fact, and so is worth recording. */
function states(items: readonly Item[], setting: Setting): boolean {
  const clauses = splitClauses(items);
  return clauses.some((clause, c) => {
    const saying = readSaying(clause, setting.today);
    const mood = readMood(clause, setting.today);
    if (saying.hits.length === 0) return false;
    if (mood.unrealFrom !== null || clause.sub === 'if' || clause.sub === 'whether') return false;
    const first = clause.items[0]?.text ?? '';
    if (
      [
        'should',
        'shall',
        'do',
        'does',
        'did',
        'can',
        'could',
        'will',
        'would',
        'is',
        'are',
        'am',
        'how',
        'when',
        'what',
        'which',
        'why',
        'who',
        'where',
        'any',
        'anything',
        'anyone',
        'anybody',
        'too',
        'worth',
        'eta',
        'time',
      ].includes(first)
    )
      return false;
    if (
      clause.items.some((item) =>
        ['when', 'how', 'eta', 'when', 'should', 'anyone', 'anything'].includes(item.text),
      )
    )
      return false;
    if (
      clause.sub === 'when' ||
      clause.sub === 'until' ||
      clause.sub === 'before' ||
      clause.sub === 'which' ||
      clause.sub === 'who'
    )
      return false;
    if (!mood.asks)
      return c === 0 || !['or'].includes(clause.join) || saying.hits.some((hit) => hit.kind !== 'ripening');
    // "5 figs picked ok?" states; "ronde ready by august?" asks.
    return (
      saying.hits.some(
        (hit) =>
          !['ripening', 'ask-kind', 'tipped', 'fruitlets'].includes(hit.kind) ||
          clause.items.some((item) => item.type === 'quantity'),
      ) && !clause.items.some((item) => ['yet', 'by', 'ready', 'or', 'soon'].includes(item.text))
    );
  });
}

function asksToTip(
  items: readonly Item[],
  plain: readonly Item[],
  marked: boolean,
  setting: Setting,
  stated: boolean,
): boolean {
  const clauses = splitClauses(items);
  for (const clause of clauses) {
    const tipping = clause.items.some(
      (item) =>
        item.classes.has('TIP') ||
        item.classes.has('TIPPING') ||
        (item.classes.has('APEX') &&
          clause.items.some((each) =>
            ['take', 'cut', 'snip', 'remove', 'come', 'off', 'lop', 'chop', 'clip', 'out'].includes(
              each.text,
            ),
          )),
    );
    const again =
      clause.items.some((item) => item.classes.has('TIPPED')) &&
      clause.items.some((item) =>
        ['should', 'get', 'be', 'need', 'needs', 'want', 'wants', 'do'].includes(item.text),
      );
    if (!tipping && !again) continue;
    const asks =
      clause.asked ||
      clause.items.some((item) => QUESTION_WORDS.has(item.text)) ||
      (marked && clauses.length <= 2) ||
      clauses.some((each) => each.join === 'or');
    const real =
      readSaying(clause, setting.today).hits.some((hit) => hit.kind === 'tipped') &&
      !readMood(clause, setting.today).asks &&
      !again;
    if (asks && !real)
      return (
        !stated ||
        clause.asked ||
        clause.items.some((item) =>
          [
            'should',
            'shall',
            'do',
            'can',
            'is',
            'how',
            'when',
            'which',
            'ok',
            'or',
            'need',
            'worth',
            'yet',
            'too',
            'time',
            'whats',
          ].includes(item.text),
        )
      );
  }
  void plain;
  return false;
}

/** "alma figs gone soft" tells; "alma ripe by august?" asks. */
function onlyStatesRipe(plain: readonly Item[], marked: boolean): boolean {
  if (marked) return false;
  return !plain.some((item) =>
    [
      'when',
      'how',
      'eta',
      'will',
      'long',
      'whens',
      'what',
      'roughly',
      'expect',
      'date',
      'window',
      'guess',
      'until',
      'countdown',
      'is',
      'are',
      'far',
      'soon',
      'or',
      'which',
      'going',
      'can',
      'gonna',
      'ripe',
    ].includes(item.text),
  );
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

function noteReading(text: string, setting: Setting): QuestionReading {
  const { logged, ask } = readNote(text, setting);
  if (ask?.what === 'tree') return { intent: 'note', tree: null, ask: 'tree', trees: ask.trees };
  const tree =
    logged.find((event) => event.tree !== null)?.tree ??
    ask?.open.find((event) => event.tree != null)?.tree ??
    null;
  return { intent: 'note', tree, ask: null, trees: [] };
}

/** For tests and the module's readers: what a mention says of the roster. */
export type { Mention };
