/** A message that may put the last note right, its words of correction taken off. */
export interface MarkedText {
  /** What it should have been. */
  readonly right: string;
  /** What it was not, where that is said: "alma, not king". */
  readonly wrong: string | null;
  /** How plainly it says that something is put right: "sorry, …" does, "it was …" may, "monday" does not. */
  readonly mark: 'plain' | 'faint' | 'none';
  /** Such a word opens the message. */
  readonly leads: boolean;
}

/** "no figs" denies, "no, the tall one" and "no it was 4" put right. */
const PLAIN =
  /^(?:\*+\s*|no(?:[,.:;!–]+\s*|\s+-+\s+|\s+(?=(?:the|it|that|i|wait|sorry|those|these|they|my|make|\d+)\b))|(?:nope|nah|sorry|oops|oop|whoops|ugh|argh|damn|wait|correction|typo|autocorrect|i meant?|i mean|i meant to (?:say|put|write|type)|make(?: it| that)?|change (?:it|that) to|call it|scratch that|strike that|that(?:'s| is|s)? (?:should be|should have been|should say)|should be|should have been|should say|my bad|my mistake|meant|meaning|rather|edit|hang on|hold on|i lied|tell a lie|miscounted|recounted|misremembered|(?:got |had )?(?:the )?wrong (?:tree|one|day|date|number|count|way round|kind|kadota|pot|variety))(?:[\s,.:;!–-]+|$))/;

const FAINT =
  /^(?:(?:actually|(?:that|it|those|these|they) (?:was|were|are|is)|it's|its|that's|thats|they're|theyre|not|ah|oh|that|was(?! (?:it|that)\b)|er|um|of course)(?:[\s,.:;!–-]+|$))/;

/** The same behind what is put right; "actually" alone is a way of talking. */
const PLAIN_BEHIND =
  /[\s,.:;!–-]+(?:i mean|i meant|sorry|oops|whoops|instead|that was|it should be|that should be|that should have been|my bad|my mistake|typo|autocorrect|rather|duh|doh|correction)[\s.!]*$/;
const FAINT_BEHIND = /[\s,.:;!–-]+(?:actually|of course|come to think of it|now i think of it)[\s.!]*$/;

/** "not king, alma", "not the king but the alma", "not king, it was the alma" */
const WRONG_FIRST =
  /^not ([^,;.–]+?)\s*(?:[,;.–]+\s*(?:but\s+)?|\s-\s|\s(?=it was\s)|\sbut\s)(?:it was |that was |it's |its )?(\S.*)$/;
/** "not the tall one the little one" */
const WRONG_ONE_FIRST = /^not (the \S+ one) (the \S+ one)$/;
/** "alma, not king", "monday rather than sunday" */
const WRONG_BEHIND = /^(\S.*?)[\s,;.–-]+(?:and not|not|rather than|instead of)\s+([^,;]+)$/;

const AUXILIARY =
  /(?:^|\s)(?:is|are|was|were|am|has|have|had|do|does|did|been|be|will|would|could|should|might|must|may|can|cannot|probably|maybe|still|just|only|why|if)$/;

/** Takes the words of correction off; null where it only says what it was not, or asks. */
export function readMarks(text: string): MarkedText | null {
  let rest = text.trim();
  let mark: MarkedText['mark'] = 'none';
  for (;;) {
    const said = rest.startsWith('not ') ? contrast(rest) : null;
    if (said) return { ...said, mark: 'plain', leads: true };
    const plain = PLAIN.exec(rest);
    const faint = plain ? null : FAINT.exec(rest);
    const lead = plain?.[0] ?? faint?.[0];
    if (lead === undefined) break;
    rest = rest.slice(lead.length);
    if (plain) mark = 'plain';
    else if (mark === 'none') mark = 'faint';
    // "sorry, not brebas" tells what it was not.
    if (/^not\b/.test(lead)) return rest === '' ? null : { right: '', wrong: rest, mark, leads: true };
  }
  const leads = mark === 'plain';
  for (;;) {
    const plain = PLAIN_BEHIND.exec(rest);
    const behind = plain ?? FAINT_BEHIND.exec(rest);
    if (!behind || behind.index === 0) break;
    rest = rest.slice(0, behind.index);
    if (plain) mark = 'plain';
    else if (mark === 'none') mark = 'faint';
  }
  if (rest === '') return null;
  const [, right, wrong] = WRONG_BEHIND.exec(rest) ?? [];
  // "the tall one was not tipped" denies.
  return right !== undefined && wrong !== undefined && !AUXILIARY.test(right)
    ? { right, wrong, mark: 'plain', leads }
    : { right: rest, wrong: null, mark, leads };
}

function contrast(text: string): { right: string; wrong: string } | null {
  const [, wrong, right] = WRONG_ONE_FIRST.exec(text) ?? WRONG_FIRST.exec(text) ?? [];
  return wrong !== undefined && right !== undefined ? { right, wrong } : null;
}
