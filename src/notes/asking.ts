import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind } from '../engine/observation.ts';
import type { Ask, NoteReading, OpenEvent, ReadEvent, Setting } from './contract.ts';
import { readDates } from './dates/index.ts';
import { speaksPlainly } from './doubt-finding.ts';
import { readItems } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
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

/** A day that is not quite sure is still the day to write down. */
const HEDGED = /^(?:(?:maybe|probably|perhaps|i think|i guess|possibly|must have been|think) )+/;
const NOT_BREBA = /^not (?:a |the )?brebas?$/;

/** The answer a typed message plainly gives to the pending question, or null: a message that stands by itself is not one. */
export function readAnswer(text: string, ask: Ask, setting: Setting): Answer | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/(?<![!.\s])[!.\s]+$/, '')
    .slice(0, 80);
  if (plain === '' || plain.includes('?') || plain.split(/\s+/).length > 7) return null;
  const short = plain.replace(POLITE, '');
  // "not the tall one" says only which it was not, "breba, dave says" what another thinks.
  const sure = ask.what === 'date' ? short.replace(HEDGED, '') : short;
  if (ask.what !== 'kind' && !speaksPlainly(readItems(sure, setting), setting.today))
    return ask.what === 'crop' && NOT_BREBA.test(short) ? { crop: 'main' } : null;
  switch (ask.what) {
    case 'tree':
      return treeAnswer(plain, short, setting);
    case 'kind':
      return kindAnswer(short, ask, setting);
    case 'date': {
      const read = readDates(sure, { ...setting, lean: 'past' });
      return read && read.on <= setting.today ? { on: read.on } : null;
    }
    case 'crop':
      if (/\bbrebas?\b|\bold wood\b/.test(plain)) return { crop: 'breba' };
      return /\bmain\b|\bnew wood\b/.test(plain) ? { crop: 'main' } : null;
  }
}

/** What may stand beside the tree in an answer. */
const BESIDE = wordSet(`
  it was is one tree fig i meant mean sorry oh on that yes no are were they
`);

function treeAnswer(plain: string, short: string, setting: Setting): Answer | null {
  const items = readItems(plain, setting).filter((item) => item.type !== 'mark');
  const mentions = items.flatMap((item) => item.mention ?? []);
  const rest = items.filter((item) => !item.mention && !item.classes.has('DET') && !BESIDE.has(item.text));
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
  // That the bumps are no figs does not say that there are none.
  if (/^not (?:a |the )?(?:figs?|fruits?|figlets?|fruitlets?)$/.test(short)) return { kind: 'remark' };
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
