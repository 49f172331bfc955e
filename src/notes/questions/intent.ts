import { type Clause, splitClauses } from '../clauses.ts';
import type { Intent, Setting } from '../contract.ts';
import type { Item } from '../items.ts';
import { type AskIntent, INTENTS } from '../lexicon/intents.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { readMood } from '../mood.ts';
import { compileTable, findMatches } from '../patterns.ts';
import { isQuestion } from '../question-order.ts';
import { asksOutright, isAgain, isInverted, isPast, isTag } from './asks.ts';
import { intentByCues, saysYesOrNo } from './cues.ts';
import { isAboutTrees, isHowTo } from './help.ts';
import { statesFact } from './states.ts';
import { namesTip } from './tipping.ts';

const INDEX = compileTable(INTENTS);

/** Who asks so wants no record. */
const WH = wordSet('what when which');
const DUE_WORDS = wordSet('due overdue next deadline deadlines jobs job todo list coming');
/** "will tip the king tomorrow" tells of a plan. */
const PLANS = wordSet('will gonna going plan planning must hope hoping aim aiming gotta');
/** Who hopes or reckons tells, unless something is asked outright. */
const HOPES = wordSet(
  'hope hoping hopefully should reckon think wonder expecting fingers praying bet betting wish might probably looks',
);
const JOBS = wordSet('deadline deadlines job jobs task tasks chore chores');
const WHO = wordSet('who whos');
const CLUB = wordSet(`
  members member group club everyone everybody anyone anybody who whos others gang crew folks people
  yall lot
`);

/**
 * What a message is for. What it states outweighs what it asks in passing ("4 figs, not bad eh?"); of what is asked
 * outright the club comes first, then the pinch, ripening and what is due; single words decide the rest.
 */
export function intentOf(items: readonly Item[], setting: Setting): Intent {
  const plain = items.filter((item) => item.type !== 'mark');
  const found = intentsOf(plain);
  const howTo = isHowTo(plain);
  const first = plain[0]?.text ?? '';
  if (found.has('record') && !howTo && !WH.has(first)) return 'note';

  const clauses = splitClauses(items);
  const stating = statements(clauses, setting);
  const stated = stating.includes(true);
  if (found.has('help') && (howTo || !stated) && !isAboutTrees(plain, howTo)) return 'help';

  const either = clauses.some((clause) => clause.join === 'or');
  const asking = clauses.filter(
    (clause, c) => asksOutright(clause, either) && !isAside(clause, stating.slice(0, c).includes(true)),
  );
  const asked = askedIn(asking, clauses, found);
  const verdict = found.has('tip-now') && (asking.length > 0 || either);
  if (verdict && !(stated && clauses.length === 1)) return 'tip';
  // "… has rust, what do i spray": news first, the question is for the club.
  const forTheClub = !plain.some((item) => DUE_WORDS.has(item.text));
  if (stated && [...asked].every((intent) => intent === 'roundup' || (intent === 'due' && forTheClub)))
    return 'note';

  const all = asked.size > 0 ? asked : found;
  const named = plain.some((item) => item.mention);
  const ofClub = !named && plain.some((item) => CLUB.has(item.text));
  const due =
    plain.some((item) => item.text === 'due' || item.text === 'overdue') ||
    // "did i miss any jobs"
    (all.has('due') && !ofClub && plain.some((item) => JOBS.has(item.text)));
  if (all.has('roundup') && (ofClub || !all.has('tip')) && !due) return 'roundup';
  if (found.has('roundup') && ofClub && WHO.has(first)) return 'roundup';
  if (all.has('tip') && (asked.has('tip') || proposesTip(clauses, setting))) return 'tip';
  const told = asking.length === 0 && plain.some((item) => HOPES.has(item.text));
  const untimed = all.has('due') && !named && !plain.some((item) => item.classes.has('RIPE'));
  if (all.has('ripe-when') && !untimed && !told && !(all.has('due') && isRatherDue(items)))
    return 'ripe-when';
  if (all.has('due') && !plain.some((item) => item.classes.has('WEATHER'))) return 'due';
  if (found.has('maybe-ripe') && asking.length + Number(either) > 0 && !stated) return 'ripe-when';
  if (saysYesOrNo(items) && clauses.some(namesTip)) return 'tip';

  const marked = items.some((item) => item.text === '?');
  if (!marked && (told || clauses.every((clause) => clause.sub === 'when' && isPast(clause)))) return 'note';
  return intentByCues(items, marked) ?? 'note';
}

function intentsOf(items: readonly Item[]): Set<AskIntent> {
  return new Set(findMatches(items, INDEX).map((match) => match.kind));
}

/** Whether the longest phrase of what is due says more than that of ripening. */
function isRatherDue(items: readonly Item[]): boolean {
  // The longest match comes first.
  const said = findMatches(items, INDEX).filter(({ kind }) => kind === 'due' || kind === 'ripe-when');
  const [due, ripe] = (['due', 'ripe-when'] as const).map(
    (intent) => said.find(({ kind }) => kind === intent)?.at.length ?? 0,
  );
  return (due ?? 0) > (ripe ?? 0);
}

/** Which clauses state a fact. */
function statements(clauses: readonly Clause[], setting: Setting): boolean[] {
  return clauses.map((clause, c) => {
    // "does it want water or feeding": the second goes on asking.
    const before = clauses[c - 1];
    if (clause.join === 'or' && before && isQuestion(before)) return false;
    return statesFact(clause, setting);
  });
}

/** It has the form of a question but tells when, or only looks for applause for what was stated. */
function isAside(clause: Clause, afterStatement: boolean): boolean {
  if (clause.sub === 'when' && isPast(clause)) return true;
  return afterStatement && ((clause.sub === 'when' && !isInverted(clause)) || isTag(clause));
}

/** What the asking clauses ask; where they are too short to say, what the whole message speaks of. */
function askedIn(
  asking: readonly Clause[],
  clauses: readonly Clause[],
  found: ReadonlySet<AskIntent>,
): Set<AskIntent> {
  const asked = new Set<AskIntent>();
  for (const clause of asking)
    for (const intent of intentsOf(clause.items)) if (intent !== 'tip' || namesTip(clause)) asked.add(intent);
  if (asking.length === 0 || asked.size > 0) return asked;
  const ofTips = clauses.some(namesTip) || asking.some(isAgain);
  return new Set([...found].filter((intent) => intent !== 'tip' || ofTips));
}

/** "tip or skip, little kadota": the pinch is named, and is neither planned nor denied nor supposed. */
function proposesTip(clauses: readonly Clause[], setting: Setting): boolean {
  const proposed = clauses.some(
    (clause) =>
      namesTip(clause) &&
      !PLANS.has(clause.items[0]?.text ?? '') &&
      !clause.items.some((item) => item.classes.has('NEG')),
  );
  return proposed && !clauses.some((clause) => readMood(clause, setting.today).unrealFrom !== null);
}
