import type { Token } from './tokens.ts';

/**
 * Pasts too vague to place (RULES §7): the note reader asks for the day. One row a phrase, words as `tokenize`
 * gives them; `#` stands for a unit ("weeks", "month").
 */
const ROWS = `
a while back|a while ago|while back|while ago|a bit ago|a bit back|a good while ago|a good while back|quite a while ago
quite a while back|awhile ago|awhile back|a little while ago|a little while back|a little bit ago|a long while ago
ages ago|ages back|moons ago|many moons ago|moons back|yonks back|eons back|aeons back|forever and a day ago|donkeys ago|years and years ago|yonks ago|donkeys years ago|eons ago|aeons ago|forever ago|long ago|a long time ago|long time ago|long since|in the dim and distant|in the dim and distant past|in the distant past|in the mists of time
some time ago|sometime ago|some time back|sometime back|a short time ago|not long ago|not too long ago|not so long ago|a time ago
the other #|the other morning|the other night|the other evening|the other weekend|other #|one of these #
a # or two ago|a # or two back|# or two ago|a # or three ago|a few # ago|few # ago|a few # back|few # back|some # ago|some # back|several # ago|several # back|many # ago|many # back
# ago|# back|# and # ago|at some point|back in the day|once upon a time|recently|way back|way back when|lately|earlier this #
earlier in the #|earlier in the season|earlier this season|last time|a handful of # ago|a number of # ago|so many # ago
whenever it was|whenever that was|no clue when|cant recall when|couldnt tell you when|cant remember what day|forget what day|not sure what day
god knows when|who knows when|cant remember when|dont remember when|forget when|forgot when|dont know when|do not know when|couldnt say when|cant say when|not sure when|no idea when|dunno when
sometime last #|sometime in the past|sometime lately|sometime recently|some point last #|a few # before|before i went away
sometime in spring|some day in spring|some day in the spring|someday in spring|one day in spring|some point in spring|some point in the spring|some point over winter|at some point in spring|sometime in the spring|sometime in winter|sometime over winter|sometime this spring|spring sometime|winter sometime|some time in spring|some time in the spring|spring some time
`;

interface Node {
  readonly next: Map<string, Node>;
  ends: boolean;
}

const root: Node = { next: new Map(), ends: false };
for (const row of ROWS.split(/[\n|]/)) {
  if (!row) continue;
  let node = root;
  for (const word of row.split(' ')) {
    let next = node.next.get(word);
    if (!next) {
      next = { next: new Map(), ends: false };
      node.next.set(word, next);
    }
    node = next;
  }
  node.ends = true;
}

/** Token index after the longest vague past at `i`, or −1. */
export function vagueEndAt(tokens: readonly Token[], i: number): number {
  // "3 weeks ago" is not "weeks ago".
  const before = tokens[i - 1];
  if (before?.text === 'every') return -1;
  let node: Node | undefined = root;
  let end = -1;
  for (let j = i; node && j < tokens.length; j++) {
    const token = tokens[j];
    if (!token) break;
    const direct: Node | undefined = node.next.get(token.text);
    node = direct ?? (token.unit ? node.next.get('#') : undefined);
    if (node?.ends) end = j + 1;
  }
  if (
    end > 0 &&
    tokens[i]?.unit &&
    (before?.number != null || before?.text === 'of' || tokens[i]?.text !== `${tokens[i]?.unit}s`)
  )
    return -1;
  return end;
}
