import { LIMITS } from './limits.ts';

/** Of the form of custom ids below. A new form gets a new one, so that old buttons are known as such. */
const VERSION = 'v1';

/** What a button carries. It needs no memory of the message, so it works after any restart. */
export interface ButtonId {
  /** The Discord user who alone may press it; null for anybody in the club. */
  readonly ownerId: string | null;
  /** Our record of the club; null when it is plain from where the button is pressed. */
  readonly clubId: number | null;
  readonly action: string;
}

/** `v1:<owner in base 36>:<club in base 36>:<action>`. Where that grows too long, the bare action. */
export function writeButtonId({ ownerId, clubId, action }: ButtonId): string {
  const owner = ownerId === null ? '' : BigInt(ownerId).toString(36);
  const club = clubId === null ? '' : clubId.toString(36);
  const whole = `${VERSION}:${owner}:${club}:${action}`;
  // Handlers check that the one who presses owns what the action names; the owner here is a courtesy.
  return whole.length <= LIMITS.customId ? whole : `${VERSION}:::${action}`;
}

/** Null when this version of the assistant did not write it. */
export function readButtonId(customId: string): ButtonId | null {
  const match = /^v1:([0-9a-z]{0,14}):([0-9a-z]{0,7}):(.+)$/s.exec(customId);
  if (match === null) return null;
  const [, owner = '', club = '', action = ''] = match;
  return {
    ownerId: owner === '' ? null : fromBase36(owner).toString(),
    clubId: club === '' ? null : Number(fromBase36(club)),
    action,
  };
}

function fromBase36(text: string): bigint {
  let value = 0n;
  for (const digit of text) value = value * 36n + BigInt(Number.parseInt(digit, 36));
  return value;
}
