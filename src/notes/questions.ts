import { type Clause, splitClauses } from './clauses.ts';
import type { Intent, QuestionReading, Setting } from './contract.ts';
import { type Item, readItems } from './items.ts';
import { type AskIntent, INTENTS } from './lexicon/intents.ts';
import { wordSet } from './lexicon/word-set.ts';
import { readMood } from './mood.ts';
import { compileTable, findMatches } from './patterns.ts';
import { intentByCues, saysYesOrNo } from './question-cues.ts';
import { isAskedAbout, isQuestion } from './question-order.ts';
import { statesFact } from './question-states.ts';
import { readNoteItems } from './read-note.ts';
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
  if (intent === 'note') return noteReading(text, items, setting);
  return { intent, ...treeFor(intent, items, setting) };
}

const PAST = wordSet('was were had got did came went took gave picked watered fed moved');
const AGAIN = wordSet('again twice off out over');
/** Who asks so wants no record. */
const WH = wordSet('what when which');
const DUE_WORDS = wordSet('due overdue next deadline deadlines jobs job todo list coming');
/** "will tip the king tomorrow" tells of a plan. */
const PLANS = wordSet('will gonna going plan planning must hope hoping aim aiming gotta');
/** Who hopes or reckons tells, unless something is asked outright. */
const HOPES = wordSet(
  'hope hoping hopefully should reckon think wonder expecting fingers praying bet betting wish',
);
const WHO = wordSet('who whos');
const HAVE_FIRST = wordSet('have has dare did was were');
const PERMITTED = wordSet('ok okay safe fine alright wise');
const VERBS_FIRST = wordSet('is are do does did can could will would should shall am');
/** Words that ask by themselves, without a question mark. */
const ASKING = new Set(
  'how hows when whens what whats which who whos why where any anything anyone anybody eta worth yet versus whether wen owt'.split(
    ' ',
  ),
);
const CLUB = wordSet(`
  members member group club everyone everybody anyone anybody who whos others gang crew folks people
  yall lot
`);
/** Ways to begin that announce news rather than ask for it. */
const TAGS = wordSet(`
  happy ok okay right eh huh yeah no typical nice good cool believe coincidence innit save great
`);

function intentOf(items: readonly Item[], setting: Setting): Intent {
  const plain = items.filter((item) => item.type !== 'mark');
  const found = intentsOf(plain);
  const howTo = isHowTo(plain);
  if (found.has('record') && !howTo && !WH.has(plain[0]?.text ?? '')) return 'note';
  const clauses = splitClauses(items);
  const stating = clauses.map((clause) => statesFact(clause, setting));
  clauses.forEach((clause, c) => {
    // "does it want water or feeding": the second goes on asking.
    const before = clauses[c - 1];
    if (clause.join === 'or' && before && isQuestion(before)) stating[c] = false;
  });
  const stated = stating.includes(true);
  if (found.has('help') && (howTo || !stated) && !isAboutTrees(plain, howTo)) return 'help';
  const either = clauses.some((clause) => clause.join === 'or');
  const asking = clauses.filter(
    (clause, c) =>
      asksOutright(clause, either) &&
      !(clause.sub === 'when' && isPast(clause)) &&
      !(stating[c - 1] === true && ((clause.sub === 'when' && !isInverted(clause)) || isTag(clause))),
  );
  const asked = new Set<AskIntent>();
  for (const clause of asking)
    for (const intent of intentsOf(clause.items)) if (intent !== 'tip' || namesTip(clause)) asked.add(intent);
  if (asking.length > 0 && asked.size === 0)
    for (const intent of found)
      if (intent !== 'tip' || clauses.some(namesTip) || asking.some(isAgain)) asked.add(intent);
  // "… has rust, what do i spray": news first, the question is for the club.
  const forTheClub = !plain.some((item) => DUE_WORDS.has(item.text));
  const verdict = found.has('tip-now') && (asking.length > 0 || either);
  if (verdict && !(stated && clauses.length === 1)) return 'tip';
  if (stated && [...asked].every((intent) => intent === 'roundup' || (intent === 'due' && forTheClub)))
    return 'note';
  const all = asked.size > 0 ? asked : found;
  const ofClub = plain.some((item) => CLUB.has(item.text)) && !plain.some((item) => item.mention);
  if (all.has('roundup') && (ofClub || !all.has('tip'))) return 'roundup';
  if (found.has('roundup') && ofClub && WHO.has(plain[0]?.text ?? '')) return 'roundup';
  if (
    all.has('tip') &&
    (asked.has('tip') ||
      (clauses.some(
        (clause) =>
          namesTip(clause) &&
          !PLANS.has(clause.items[0]?.text ?? '') &&
          !clause.items.some((item) => item.classes.has('NEG')),
      ) &&
        !clauses.some((clause) => readMood(clause, setting.today).unrealFrom !== null)))
  )
    return 'tip';
  const untimed = all.has('due') && !plain.some((item) => item.mention || item.classes.has('RIPE'));
  const told = asking.length === 0 && plain.some((item) => HOPES.has(item.text));
  if (all.has('ripe-when') && !untimed && !told) return 'ripe-when';
  if (all.has('due') && !plain.some((item) => item.classes.has('WEATHER'))) return 'due';
  if (saysYesOrNo(items) && clauses.some(namesTip)) return 'tip';
  const marked = items.some((item) => item.text === '?');
  if (!marked && (told || clauses.every((clause) => clause.sub === 'when' && isPast(clause)))) return 'note';
  return intentByCues(items, marked) ?? 'note';
}

function intentsOf(items: readonly Item[]): Set<AskIntent> {
  return new Set(findMatches(items, INDEX).map((match) => match.kind));
}

function asksOutright(clause: Clause, either: boolean): boolean {
  if (clause.asked || isQuestion(clause)) return true;
  if (clause.sub === 'when' || clause.sub === 'which' || clause.sub === 'who' || clause.sub === 'whether')
    return true;
  if (either && clause.items.some((item) => item.classes.has('TIP') || item.classes.has('TIPPING')))
    return true;
  const [first, second] = clause.items;
  if (first?.text === 'should' || first?.text === 'shall') return true;
  if (second?.text === 'to' && PERMITTED.has(first?.text ?? '')) return true;
  if (
    HAVE_FIRST.has(first?.text ?? '') &&
    (second?.type === 'tree' || second?.text === 'i' || second?.text === 'we')
  )
    return true;
  if (clause.items.some((item, i) => VERBS_FIRST.has(item.text) && isAskedAbout(clause.items[i + 1])))
    return true;
  return clause.items.some(
    (item) =>
      ASKING.has(item.text) && !(item.text === 'yet' && clause.items.some((each) => each.text === 'not')),
  );
}

/** "go again?", "take em off?", said of tips named before. */
function isAgain({ items }: Clause): boolean {
  return items.some((item) => AGAIN.has(item.text));
}

/** "when do i eat" asks, "when it had 6 leaves" tells when. */
function isInverted({ items }: Clause): boolean {
  return VERBS_FIRST.has(items[0]?.text ?? '');
}

/** "when i tipped it", "when it had 6 leaves": a time, not a question. */
function isPast(clause: Clause): boolean {
  return (
    !isInverted(clause) && clause.items.some((item) => item.classes.has('TIPPED') || PAST.has(item.text))
  );
}

function isTag(clause: Clause): boolean {
  return clause.items.length <= 5 && clause.items.some((item) => TAGS.has(item.text));
}

/** It speaks of tipping as of something to do: "pinch", "tipping", "take the tips off", "tipped again". */
function namesTip(clause: Clause): boolean {
  const { items } = clause;
  const has = (words: readonly string[]): boolean => items.some((item) => words.includes(item.text));
  if (
    items.some(
      (item) =>
        item.text === 'tip' ||
        item.text === 'pinch' ||
        item.text === 'nip' ||
        item.text === 'snip' ||
        item.text === 'stop' ||
        item.text === 'top' ||
        item.text === 'pinches' ||
        item.classes.has('TIPPING'),
    )
  )
    return true;
  if (
    items.some((item) => item.classes.has('APEX')) &&
    has([
      'secateurs',
      'snips',
      'take',
      'cut',
      'snip',
      'remove',
      'come',
      'off',
      'lop',
      'chop',
      'clip',
      'out',
      'back',
    ])
  )
    return true;
  return (
    items.some((item) => item.classes.has('TIPPED')) &&
    has(['should', 'get', 'be', 'need', 'needs', 'want', 'wants', 'do', 'again', 'does'])
  );
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
      (word, i) => word === 'what' && ['do', 'can', 'sort', 'kind', 'else'].includes(words[i + 1] ?? ''),
    ) ||
    (['can', 'could', 'do'].includes(words[0] ?? '') && ['i', 'you'].includes(words[1] ?? '')) ||
    words.includes('commands') ||
    words.some((word, i) => word === 'where' && ['do', 'can', 'is'].includes(words[i + 1] ?? '')) ||
    (words[0] === 'what' && words[1] === 'is' && words.includes('way'))
  );
}

const ASSISTANT = wordSet(`
  log record note notes reminders reminder nudges pings delete undo edit change add command commands
  type tell see help bot work works say write units celsius fahrenheit zone photos photo sheet manual
  mean means ask export rename enter set join leave remove correct thing start turn menu you use
`);

/** "how do i pinch it" wants a verdict on a tree, not a page of help. */
function isAboutTrees(plain: readonly Item[], howTo: boolean): boolean {
  if (plain.some((item) => item.text === 'mean' || item.text === 'means')) return false;
  const tip =
    plain.some((item) => item.classes.has('TIP') || item.classes.has('TIPPING')) &&
    !plain.some(
      (item) =>
        item.text === 'stop' &&
        plain.some((each) =>
          ['reminders', 'pings', 'nudges', 'messages', 'notifications', 'pinging'].includes(each.text),
        ),
    );
  const assistant = plain.some(
    (item) => ASSISTANT.has(item.text) && item.text !== 'you' && item.text !== 'see' && item.text !== 'start',
  );
  if (tip) return !assistant || (!howTo && plain.length > 4);
  if (plain.some((item) => item.mention)) return !assistant;
  return plain.length > 5 && !howTo && !assistant;
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

/** For tests and the module's readers: what a mention says of the roster. */
export type { Mention };
