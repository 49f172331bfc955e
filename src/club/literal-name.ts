import type { Setting } from '../notes/contract.ts';
import { readMessage } from '../notes/index.ts';

/** Words that a tree's name stands after, so that "fruitlets on Late" is no fruitlets late in the day. */
const LEADS =
  /(?:^|\b(?:on|of|from|off|for|at|my|the|tip|tipped|pinch|pinched|is|are|was|will|did|does|do|has|have|had))\s*$/i;

/**
 * The one tree that a text names letter by letter where the language makes no tree of it: an emoji, a sign, an
 * everyday word ("Late"). Empty when it needs no help or the name could be something else.
 */
export function literallyAbout(text: string, setting: Setting): Pick<Setting, 'about'> {
  if (setting.about !== undefined) return {};
  const named = setting.roster.filter(({ name }) => isNamed(text, name));
  const longest = named.filter(({ name }) => !named.some((other) => isPartOf(name, other.name)));
  const [only] = longest;
  if (only === undefined || longest.length > 1 || !needsHelp(text, setting)) return {};
  return { about: [only.id] };
}

function needsHelp(text: string, setting: Setting): boolean {
  const reading = readMessage(text, setting);
  return reading.tree === null && reading.trees.length === 0;
}

function isPartOf(name: string, other: string): boolean {
  return name !== other && other.toLowerCase().includes(name.toLowerCase());
}

function isNamed(text: string, name: string): boolean {
  // A bare number is a count.
  if (/^[\d\s.,]*$/.test(name)) return false;
  const isWords = /^[\p{L}\p{M}\d\s]+$/u.test(name);
  const lower = text.toLowerCase();
  const wanted = name.toLowerCase();
  for (let at = lower.indexOf(wanted); at >= 0; at = lower.indexOf(wanted, at + 1)) {
    const before = lower.slice(0, at);
    const after = lower.slice(at + wanted.length);
    if (/[\p{L}\p{N}]$/u.test(before) && /^[\p{L}\p{N}]/u.test(wanted)) continue;
    if (/^[\p{L}\p{N}]/u.test(after) && /[\p{L}\p{N}]$/u.test(wanted)) continue;
    if (!isWords || LEADS.test(before)) return true;
  }
  return false;
}
