import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind } from '../engine/observation.ts';
import type { Ask, Correction, NoteReading, OpenEvent, ReadEvent, Setting } from './contract.ts';
import { readDates } from './dates/index.ts';
import { readItems } from './items.ts';
import { readNote } from './read-note.ts';
import { findTree } from './trees/match-trees.ts';

/** What was pressed or typed in answer to a question. */
export type Answer =
  | { readonly tree: number | null }
  | { readonly kind: ObservationKind }
  | { readonly on: Day }
  | { readonly crop: Crop };

/** The note with the answer put into every event that waited for it; asks on if something else is missing. */
export function answerAsk(ask: Ask, answer: Answer, setting: Setting): NoteReading {
  const filled = ask.open.map((event): OpenEvent => ({ ...event, ...answerPart(answer) }));
  const logged: ReadEvent[] = [];
  const missing: OpenEvent[] = [];
  for (const event of filled) {
    if (event.tree === undefined || event.kind === undefined) missing.push(event);
    else logged.push({ ...event, tree: event.tree, kind: event.kind, on: event.on ?? setting.today });
  }
  const first = missing[0];
  if (!first) return { logged, ask: null };
  const what = first.tree === undefined ? 'tree' : 'kind';
  return {
    logged,
    ask: {
      what,
      trees: [],
      kinds: what === 'kind' ? (ask.kinds.length > 0 ? ask.kinds : USUAL) : [],
      open: missing,
    },
  };
}

const USUAL: readonly ObservationKind[] = ['fruitlets', 'no-fruitlets', 'tipped', 'ripening', 'remark'];

function answerPart(answer: Answer): OpenEvent {
  if ('tree' in answer) return { tree: answer.tree };
  if ('kind' in answer) return { kind: answer.kind };
  if ('on' in answer) return { on: answer.on };
  return answer.crop === 'breba' ? { crop: 'breba' } : {};
}

const POLITE =
  /^(?:(?:oh|it was|its|it's|that was|that's|thats|the|i meant|i mean|on|sorry|ah|um|erm|yes|yeah|they were|they're|theyre|it is|they are)\s+)+/;

/** The answer a typed message plainly gives to the pending question, or null: a message that stands by itself is not one. */
export function readAnswer(text: string, ask: Ask, setting: Setting): Answer | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/(?<![!.\s])[!.\s]+$/, '')
    .slice(0, 80);
  if (plain === '' || plain.includes('?') || plain.split(/\s+/).length > 7) return null;
  const short = plain.replace(POLITE, '');
  switch (ask.what) {
    case 'tree':
      return treeAnswer(plain, short, setting);
    case 'kind':
      return kindAnswer(short, ask, setting);
    case 'date': {
      const read = readDates(short, { ...setting, lean: 'past' });
      return read && read.on <= setting.today ? { on: read.on } : null;
    }
    case 'crop':
      if (/\bbrebas?\b|\bold wood\b/.test(plain)) return { crop: 'breba' };
      return /\bmain\b|\bnew wood\b/.test(plain) ? { crop: 'main' } : null;
  }
}

function treeAnswer(plain: string, short: string, setting: Setting): Answer | null {
  const items = readItems(plain, setting).filter((item) => item.type !== 'mark');
  const mentions = items.flatMap((item) => item.mention ?? []);
  const rest = items.filter(
    (item) =>
      !item.mention &&
      !item.classes.has('DET') &&
      ![
        'it',
        'was',
        'is',
        'one',
        'tree',
        'fig',
        'i',
        'meant',
        'mean',
        'sorry',
        'oh',
        'on',
        'that',
        'yes',
        'no',
        'are',
        'were',
        'they',
      ].includes(item.text),
  );
  const only = mentions[0];
  if (mentions.length === 1 && only && rest.length === 0)
    return only.ids.length === 1 ? { tree: only.ids[0] ?? null } : null;
  if (mentions.length > 0) return null;
  const found = findTree(short, setting.roster);
  return found.kind === 'one' && short.split(/\s+/).length <= 3 ? { tree: found.id } : null;
}

function kindAnswer(short: string, ask: Ask, setting: Setting): Answer | null {
  if (/^(?:just )?(?:a )?(?:remark|note|nothing|neither)$/.test(short)) return { kind: 'remark' };
  if (/^(?:just )?(?:a )?(?:leaf|leaves|leaf buds?|shoots?)$/.test(short)) return { kind: 'buds-single' };
  const about = ask.open.flatMap((event) => (event.tree == null ? [] : [event.tree]));
  const named = readItems(short, setting).some((item) => item.mention);
  if (named) return null;
  const reading = readNote(short, { ...setting, about: about.length > 0 ? about : [-1] });
  const kinds = new Set(reading.logged.map((event) => event.kind));
  const kind = reading.logged[0]?.kind;
  return reading.ask === null && kinds.size === 1 && kind !== undefined && kind !== 'remark'
    ? { kind }
    : null;
}

const CORRECTING =
  /^(?:(?:no|nope|nah|sorry|oops|whoops|wait|actually|correction|i meant?|i mean|make that|scratch that|that(?:'s| is|s)? (?:was|should be|should have been|should say)|that was|it was|it's|its|they were|should be|should have been|not|ah|oh|my bad|meant|rather|edit|those were|these were|that|was|hang on|er|um)[\s,.:;!-]+)+/;

/** Without one of these, "it was watered" tells something new rather than what the note before should have said. */
const TAKING_BACK =
  /\bnot\b|^(?:no|nope|nah|sorry|oops|whoops|wait|actually|correction|i mean|make that|scratch that|my bad|meant|rather|edit|hang on)\b|\bshould (?:be|have been|say)\b/;

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
  const rest = plain.slice(Math.min(lead[0].length, plain.length)).trim();
  if (rest === '') return null;
  const head = rest.split(/\bnot\b/)[0]?.trim() ?? rest;
  const said = head === '' ? rest : head;
  const items = readItems(said, setting).filter((item) => item.type !== 'mark');
  const filler = (word: string): boolean =>
    [
      'the',
      'it',
      'was',
      'is',
      'on',
      'i',
      'meant',
      'one',
      'tree',
      'fig',
      'a',
      'that',
      'they',
      'were',
      'and',
      'my',
      'of',
      'all',
      'for',
      'actually',
      'only',
      'just',
      'from',
      'about',
    ].includes(word);
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
    else if (item.classes.has('FRUIT') || item.classes.has('SHOOT') || filler(item.text)) continue;
    else left++;
  }
  if (correction.tree === undefined && correction.on === undefined && items.length <= 4) {
    const found = findTree(said, setting.roster);
    if (found.kind === 'one' && left > 0) return { tree: found.id };
  }
  if (left > 0) {
    if (!TAKING_BACK.test(plain)) return null;
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
  return Object.keys(correction).length > 0 ? correction : null;
}
