import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { Ask, NoteReading, OpenEvent, ReadEvent, Setting } from './contract.ts';
import { guardAsk, withUsual } from './doubt-ask.ts';
import { candidates } from './doubt-candidates.ts';
import { type FoundDoubt, findDoubts } from './doubt-finding.ts';
import { otherThing } from './doubt-objects.ts';
import { belongsToOthers, goesOnAfterOthers, naming } from './doubt-owners.ts';
import { cutPieces, type Piece } from './doubt-pieces.ts';
import { reaches } from './doubt-reach.ts';
import {
  answersDeed,
  isAskedAfter,
  isBroughtDown,
  isDoingNamed,
  isFullOfOther,
  isOrder,
  isTakenBack,
  isUnderCover,
  isUnlikely,
} from './doubt-senses.ts';
import { coreOf, isUnclear } from './doubt-signs.ts';
import {
  deniesCount,
  isAdvice,
  isAtSomeTime,
  isErrand,
  isHaul,
  isHeading,
  isNotFull,
  isOfCuttings,
  isRefused,
  isShareGone,
  isUnderSource,
  unticked,
} from './doubt-thin.ts';
import { harmlessItems } from './harmless.ts';
import { type Item, readItems } from './items.ts';
import type { DoubtWhy } from './lexicon/doubt-words.ts';
import { isEnglish } from './lexicon/ordinary.ts';
import { THINGS } from './lexicon/things.ts';

/** Kinds that cancel or start a nudge, or settle a season: a false one does harm that nobody sees. */
export const DECISIVE = ['fruitlets', 'no-fruitlets', 'tipped', 'dropped', 'picked'] as const;
export type DecisiveKind = (typeof DECISIVE)[number];

export const DECISIVE_KINDS: ReadonlySet<ObservationKind> = new Set(DECISIVE);

/** What stands against an event: a reason found in the text, or that its words were not understood. */
export type Doubt = DoubtWhy | 'unclear';

/**
 * A second look at every decisive event of a reading, by other rules than those that made it: each must have a
 * clause in the text that says it and nothing near that takes it back. An event in doubt becomes a remark (it was
 * planned, denied, told, supposed, asked, another season's or another's tree) or the question what was seen.
 * What is usual every year (feeding, pruning, ripening) is only looked at for other years; all else comes back as it was.
 */
export function guardReading(
  text: string,
  setting: Setting,
  reading: NoteReading,
  items: readonly Item[] = readItems(text, setting),
): NoteReading {
  const waits = reading.ask?.open.some(isDecisive) === true;
  if (!waits && !reading.logged.some((event) => isDecisive(event) || isUsual(event, setting.today)))
    return reading;
  const pieces = cutPieces(items);
  const doubts = [...findDoubts(pieces, setting.today), ...unticked(text)];
  const guarded =
    waits && reading.ask
      ? guardAsk(
          reading.ask,
          (event) => (isDecisive(event) ? doubtOf(event, pieces, doubts, setting.today) : null),
          setting.today,
        )
      : { ask: reading.ask, logged: [] };
  const kept: ReadEvent[] = [];
  const unclear: ReadEvent[] = [];
  const cropless: ReadEvent[] = [];
  let changed = guarded.ask !== reading.ask;
  for (const event of reading.logged) {
    const doubt = isDecisive(event)
      ? doubtOf(event, pieces, doubts, setting.today)
      : isUsual(event, setting.today) && doubtOf(event, pieces, doubts, setting.today) === 'past'
        ? 'past'
        : null;
    if (doubt === null && event.crop === 'breba' && !saysBreba(event, pieces, setting.today)) {
      changed = true;
      if (guarded.ask === null) cropless.push(event);
      else kept.push({ tree: event.tree, kind: 'remark', on: setting.today });
      continue;
    }
    if (doubt === null) {
      kept.push(event);
      continue;
    }
    changed = true;
    if (doubt === 'unclear' && guarded.ask === null) unclear.push(event);
    else kept.push({ tree: doubt === 'other' ? null : event.tree, kind: 'remark', on: setting.today });
  }
  if (!changed) return reading;
  const ask = unclear.length > 0 ? askWhatItWas(unclear) : (guarded.ask ?? askWhichCrop(cropless));
  return { logged: tidy([...kept, ...guarded.logged], ask), ask };
}

/** Why an event cannot be taken from this text, or null. Exported for tests and for telling why. */
export function whyDoubtful(text: string, setting: Setting, event: ReadEvent): Doubt | null {
  const pieces = cutPieces(readItems(text, setting));
  return doubtOf(event, pieces, findDoubts(pieces, setting.today), setting.today);
}

function isDecisive(event: OpenEvent): boolean {
  return (event.kind !== undefined && DECISIVE_KINDS.has(event.kind)) || event.crop === 'breba';
}

/** What is done to trees every year is told of other years too. */
function isUsual(event: ReadEvent, today: Day): boolean {
  return event.on === today && USUAL.has(event.kind);
}

const USUAL: ReadonlySet<ObservationKind> = new Set([
  'care',
  'pruned',
  'cuttings',
  'rooted',
  'ripening',
  'leafed-out',
  'dormant',
]);

function askWhatItWas(events: readonly ReadEvent[]): Ask {
  return {
    what: 'kind',
    trees: [],
    kinds: withUsual(events.map((event) => event.kind)),
    open: events.map(({ kind: _, ...open }) => open),
  };
}

function askWhichCrop(events: readonly ReadEvent[]): Ask | null {
  if (events.length === 0) return null;
  return { what: 'crop', trees: [], kinds: [], open: events.map(({ crop: _, ...open }) => open) };
}

/** Whether the sentence of an event speaks of brebas or old wood, and does not deny them. */
function saysBreba(event: ReadEvent, pieces: readonly Piece[], today: Day): boolean {
  return candidates(event, pieces, today).some((p) =>
    pieces.some(
      (piece) =>
        piece.sentence === pieces[p]?.sentence &&
        piece.items.some((item) => item.classes.has('BREBA')) &&
        (event.kind === 'no-fruitlets' ||
          piece === pieces[p] ||
          !piece.items.some((item) => item.classes.has('NEG'))),
    ),
  );
}

/** One remark a tree, and none of no tree beside anything else. */
function tidy(events: readonly ReadEvent[], ask: Ask | null): ReadEvent[] {
  const seen = new Set<string>();
  const out = events.filter((event) => {
    if (event.kind !== 'remark') return true;
    const key = `${event.tree}|${event.on}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  const others = ask !== null || out.some((event) => event.kind !== 'remark' || event.tree !== null);
  return others ? out.filter((event) => event.kind !== 'remark' || event.tree !== null) : out;
}

function doubtOf(
  event: ReadEvent,
  pieces: readonly Piece[],
  doubts: readonly FoundDoubt[],
  today: Day,
): Doubt | null {
  const kind = event.kind as DecisiveKind;
  const { tree } = event;
  if (
    tree !== null &&
    kind !== 'no-fruitlets' &&
    pieces.some((piece) => piece.own.includes(tree) && isRefused(piece))
  )
    return 'denied';
  for (const p of candidates(event, pieces, today)) {
    const piece = pieces[p];
    if (!piece) continue;
    const doubt = doubtOfPiece(kind, event, piece, p, pieces, doubts, today);
    if (doubt !== null) return doubt;
  }
  return null;
}

function doubtOfPiece(
  kind: DecisiveKind,
  event: ReadEvent,
  piece: Piece,
  p: number,
  pieces: readonly Piece[],
  doubts: readonly FoundDoubt[],
  today: Day,
): Doubt | null {
  const core = coreOf(kind, piece);
  const coreStart = core >= 0 ? (piece.items[core]?.start ?? piece.end) : piece.end;
  for (const doubt of doubts) {
    // "false alarm on the alma, no figs" has none, "no figs on pot 3 - ignore that" says nothing.
    if (doubt.why === 'denied' && kind === 'no-fruitlets' && (doubt.reach !== 'text' || doubt.piece <= p))
      continue;
    // "jealous of your figs, my king has none"
    if (doubt.why === 'other' && doubt.piece < p && piece.own.length > 0 && piece.items[0]?.text === 'my')
      continue;
    if (reaches(doubt, piece, p, coreStart, pieces, kind)) return doubt.why;
  }
  if (kind !== 'no-fruitlets' && isDenied(piece, core, event)) return 'denied';
  // "mission cuttings sulking, nothing yet"
  if (kind === 'no-fruitlets' && isOfCuttings(piece, pieces)) return 'figure';
  if (kind === 'fruitlets' && isBroughtDown(piece.items)) return 'denied';
  if (kind === 'fruitlets' && (isFullOfOther(piece, pieces[p + 1]) || isUnderCover(piece, pieces)))
    return 'figure';
  if (kind === 'tipped' && (isErrand(piece, pieces[p + 1]) || isAdvice(piece, pieces[p + 1])))
    return 'figure';
  if (kind === 'picked' && isShareGone(piece)) return 'denied';
  if (kind !== 'no-fruitlets' && isAtSomeTime(event, piece, today)) return 'unclear';
  // "nah 2 figs on it": two, and not none.
  if (kind === 'no-fruitlets' && deniesCount(piece)) return 'unclear';
  if (isUnderSource(piece, pieces[p - 1])) return 'told';
  if (piece.asked || isAskedAfter(piece, pieces[p + 1])) return 'asked';
  if ((kind === 'picked' || kind === 'tipped') && (isOrder(piece) || isDoingNamed(piece))) return 'unclear';
  if (kind !== 'no-fruitlets' && isTakenBack(piece, pieces, p)) return 'denied';
  if (kind === 'no-fruitlets' && (answersDeed(piece, pieces[p - 1]) || isNotFull(piece))) return 'denied';
  if (isUnlikely(event)) return 'unclear';
  if ((kind === 'picked' || kind === 'tipped') && goesOnAfterOthers(piece, pieces[p - 1])) return 'other';
  if (belongsToOthers(event, piece) || (!isMine(piece) && belongsToOthers(event, naming(event, p, pieces))))
    return 'other';
  const other = kind === 'no-fruitlets' ? null : otherThing(event, piece, core);
  if (other) return isEnglish(other.text) || THINGS.has(other.text) ? 'figure' : 'unclear';
  // "king figs: …" only says what is spoken of.
  if (kind === 'fruitlets' && event.count === undefined && isHeading(piece, pieces[p + 1])) return 'unclear';
  if (kind === 'picked' && isHaul(piece, pieces[p + 1])) return null;
  return DECISIVE_KINDS.has(kind) && isUnclear(kind, event, piece, core, pieces[p - 1]) ? 'unclear' : null;
}

/** A word of denial before what it denies, or after it with the event's own tree: "tipped the alma, not the ronde". */
function isDenied(piece: Piece, core: number, event: ReadEvent): boolean {
  const { items } = piece;
  const harmless = harmlessItems(items);
  if (
    items.some((item) => /^un|^non/.test(item.typed) && !/^un|^non/.test(item.text) && item.type === 'word')
  )
    return true;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item?.classes.has('NEG') || harmless.has(i)) continue;
    if (items.some((each) => each.text === 'until')) continue;
    if (core < 0 || i <= core) {
      // "all gone, none left": what is left of a crop that dropped.
      if (event.kind === 'dropped' && (item.classes.has('NONE') || items[i + 1]?.text === 'one')) continue;
      return true;
    }
    const relative = items.slice(core, i).some((each) => each.text === 'that');
    if (i === items.length - 1 && !relative && (item.text === 'not' || item.text === 'never')) return true;
    const after = items.slice(i + 1, i + 4).find((each) => each.mention !== undefined);
    if (after?.mention && event.tree !== null && after.mention.ids.includes(event.tree)) return true;
  }
  return false;
}

/** "…, mine has none" */
function isMine({ items }: Piece): boolean {
  return items.slice(0, 2).some(({ text }) => text === 'mine' || text === 'ours');
}
