import { hitBehind } from './hits.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

const LISTED: ReadonlySet<string> = new Set(['care', 'tipped', 'pruned']);
const BEHIND_LIST = wordSet(`
  in one go at once the same time afternoon morning evening day too together as well all this with using
  down over
`);

/** "dusted ronde, pot 3 and the alma with sulphur": the last of a list, and what is said of them all. */
export function withWhat(saying: Saying, before: Saying): void {
  const [hit] = before.hits;
  if (!hit || !LISTED.has(hit.kind) || saying.hits.length > 0 || saying.mentions.length === 0) return;
  if (saying.clause.join !== 'and' && saying.clause.join !== 'comma') return;
  if (before.items.length > 0 && hit.first > before.mentionAt && hit.first < before.items.length) return;
  if (!isFact(saying.mood) || saying.mentionAt > 1) return;
  const behind = saying.items.slice(saying.mentionAt + 1).filter((item) => item.type === 'word');
  const using = behind[0]?.text === 'with' || behind[0]?.text === 'using';
  if (
    behind.length === 0 ||
    !(using ? hit.kind === 'care' : behind.every((item) => BEHIND_LIST.has(item.text)))
  )
    return;
  saying.hits = [hitBehind(hit.kind, saying.items)];
  saying.date ??= before.date;
}

/** "tip off the radio: epsom salts. gave the alma some": the stuff itself was no care. */
export function stuffOf(before: Saying, saying: Saying): void {
  if (before.mentions.length > 0 || !before.hits.every((hit) => hit.kind === 'care' && hit.at.length <= 2))
    return;
  if (
    before.items.length > 3 ||
    !saying.hits.some((hit) => hit.kind === 'care') ||
    saying.mentions.length === 0
  )
    return;
  silence(before);
}
