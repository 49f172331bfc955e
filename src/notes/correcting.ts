import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind } from '../engine/observation.ts';
import type { Correction, ReadEvent, Setting } from './contract.ts';
import { speaksPlainly } from './doubt-finding.ts';
import { readItems } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { readNote } from './read-note.ts';
import { findTree } from './trees/match-trees.ts';

const CORRECTING =
  /^(?:(?:no|nope|nah|sorry|oops|whoops|wait|actually|correction|i meant?|i mean|make that|scratch that|that(?:'s| is|s)? (?:was|should be|should have been|should say)|that was|it was|it's|its|they were|should be|should have been|not|ah|oh|my bad|meant|rather|edit|those were|these were|that|was|hang on|er|um)[\s,.:;!-]+)+/;

const SHOULD = /\bshould (?:be|have been)\b/;
/** After a "no" without a comma: the right one. */
const BACK = /^(?:the|it|that|those|these|they) /;

/** Without one of these, "it was watered" tells something new rather than what the note before should have said. */
const TAKING_BACK =
  /\bnot\b|^(?:no|nope|nah|sorry|oops|whoops|wait|actually|correction|i mean|make that|scratch that|my bad|meant|rather|edit|hang on)\b|\bshould (?:be|have been|say)\b/;

/** Words between what is put right that add nothing. */
const FILLING = wordSet(`
  the it was is on i meant one tree fig a that they were and my of all for actually only just from about
`);

/** What a message puts right of the note before, or null when it is no correction. */
export function readCorrection(
  text: string,
  setting: Setting,
  last: readonly ReadEvent[],
): Correction | null {
  const plain = text.trim().toLowerCase().replace(/[’‘]/g, "'").slice(0, 120);
  // "no figs on the alma" is a note, "no, the tall one" is not.
  if (/^(?:no|not|nope) (?!the |it |that |i |wait |sorry |not |those |these |they )/.test(plain)) return null;
  // "not the oak" says only which it was not; "not the oak, the ash" would say which it was.
  if (/^wait for |^not [^,;.–-]*$/.test(plain) && !/\bbut\b/.test(plain)) return null;
  // What it was not does not say what it was.
  if (/^not /.test(plain)) return null;
  const lead = CORRECTING.exec(`${plain} `);
  if (!lead || last.length === 0 || plain.includes('?')) return null;
  // "oops, not brebas", "no, not the tall one", "wait no figs": what it was not.
  const rest = plain.slice(Math.min(lead[0].length, plain.length)).trim();
  if (/\bnot\W*$/.test(lead[0])) return /^brebas?$/.test(rest) ? { crop: 'main' } : null;
  if (/(?:^|\s)(?:no|nope) $/.test(lead[0]) && !BACK.test(rest)) return null;
  if (rest === '') return null;
  const [head = '', ...tail] = rest.split(/\bnot\b/).map((part) => part.trim());
  if (head !== '' && tail.some((part) => !isNamed(part, setting))) return null;
  const said = head === '' ? rest : head;
  const items = readItems(said, setting).filter((item) => item.type !== 'mark');
  const correction: { tree?: number; on?: Day; count?: number; kind?: ObservationKind; crop?: Crop } = {};
  let left = 0;
  for (const item of items) {
    if (item.mention) {
      if (item.mention.ids.length !== 1 || correction.tree !== undefined) return null;
      const id = item.mention.ids[0];
      if (id !== undefined) correction.tree = id;
    } else if (item.date) {
      if (item.date.problem || item.date.on > setting.today) return null;
      correction.on = item.date.on;
    } else if (item.quantity) {
      if (item.quantity.unit) return null;
      correction.count = item.quantity.value;
    } else if (item.classes.has('BREBA')) correction.crop = 'breba';
    else if (item.text === 'main') correction.crop = 'main';
    else if (item.classes.has('FRUIT') || item.classes.has('SHOOT') || FILLING.has(item.text)) continue;
    else left++;
  }
  if (correction.tree === undefined && correction.on === undefined && items.length <= 4) {
    const found = findTree(said, setting.roster);
    if (found.kind === 'one' && left > 0 && speaksPlainly(items, setting.today)) return { tree: found.id };
  }
  if (left > 0) {
    // "it should have been tipped": a wish as soon as a correction.
    if (!TAKING_BACK.test(plain) || SHOULD.test(lead[0])) return null;
    const reading = readNote(said, {
      ...setting,
      about: last.flatMap((event) => (event.tree === null ? [] : [event.tree])).slice(0, 1),
    });
    const only = reading.logged[0];
    if (
      reading.ask !== null ||
      reading.logged.length !== 1 ||
      !only ||
      only.kind === 'remark' ||
      items.length > 6
    )
      return null;
    return {
      ...correction,
      kind: only.kind,
      ...(only.count === undefined ? {} : { count: only.count }),
      ...(only.crop === undefined ? {} : { crop: only.crop }),
    };
  }
  if (!speaksPlainly(items, setting.today)) return null;
  return Object.keys(correction).length > 0 ? correction : null;
}

/** "…, not the little one", "… not 3": nothing but what is put right; "the tall one was not tipped" is another matter. */
function isNamed(text: string, setting: Setting): boolean {
  return (
    text !== '' &&
    readItems(text, setting).every(
      ({ type, text: word, classes }) =>
        type !== 'word' || FILLING.has(word) || classes.has('DET') || classes.has('BREBA') || word === 'main',
    )
  );
}
