// Marks that Discord gives a meaning to anywhere in a text; documentation: Message Formatting.
const MARKS = /[\\*_~`|<>[\]@#]/g;
// A channel's link pings nobody, and /club shows them.
const CHANNEL_LINK = /<#\d{15,21}>/g;
// At the start of a line these make headings, small print, quotes and lists.
const LINE_START = /^([^\S\n\r\u2028\u2029]*)(?:([-+])|(\d+)\.)(?=\s)/gm;
// Would be made a link.
const ADDRESS = /:(?=\/\/)/g;
// What no reader sees: control characters other than line ends, and marks that turn the reading direction.
const UNSEEN = /(?!\n)\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/**
 * Text so that Discord shows it as it stands: no formatting, no mentions, no links.
 *
 *     escapeText('*Alma* @everyone') //=> '\\*Alma\\* \\@everyone'
 */
export function escapeText(text: string): string {
  const links = text.match(CHANNEL_LINK) ?? [];
  const parts = text.split(CHANNEL_LINK).map(escapePlain);
  return parts.map((part, index) => part + (links[index] ?? '')).join('');
}

function escapePlain(text: string): string {
  return text
    .replaceAll(UNSEEN, ' ')
    .replaceAll(MARKS, '\\$&')
    .replaceAll(ADDRESS, '\\:')
    .replaceAll(LINE_START, (_, space: string, mark?: string, number?: string) =>
      mark === undefined ? `${space}${number}\\.` : `${space}\\${mark}`,
    );
}

/** The first `limit` characters of an escaped text, with … where it was cut; never inside an escape or a pair. */
export function cutText(escaped: string, limit: number): string {
  return escaped.length <= limit ? escaped : `${sliceSafely(escaped, limit - 1)}…`;
}

/** An escaped text in pieces of at most `limit`, broken at the best place: paragraph, line, word. */
export function splitText(escaped: string, limit: number): string[] {
  const pieces: string[] = [];
  let rest = escaped;
  while (rest.length > limit) {
    const head = sliceSafely(rest, limit);
    const at = breakingPoint(head);
    const piece = head.slice(0, at);
    pieces.push(piece.trimEnd());
    rest = rest.slice(piece.length).trimStart();
  }
  return rest === '' ? pieces : [...pieces, rest];
}

function breakingPoint(head: string): number {
  for (const mark of ['\n\n', '\n', ' ']) {
    const at = head.lastIndexOf(mark);
    if (at >= head.length / 2) return at;
  }
  return head.length;
}

function sliceSafely(text: string, limit: number): string {
  let end = limit;
  const last = text.charCodeAt(end - 1);
  if (last >= 0xd800 && last <= 0xdbff) end--;
  let backslashes = 0;
  while (text[end - 1 - backslashes] === '\\') backslashes++;
  return text.slice(0, backslashes % 2 === 1 ? end - 1 : end);
}
