import type { Reply } from '../club/reply.ts';
import type { Club, Member } from '../records/schema.ts';

/** A message that the assistant sends by itself. */
export interface Outgoing {
  readonly club: Club;
  /** Whom it is for; null for the club as a whole (a roundup). */
  readonly member: Member | null;
  readonly way: 'channel' | 'direct';
  readonly reply: Reply;
  /** At most 25 characters; the same for every attempt at the same message. */
  readonly nonce: string;
}

/** What became of one attempt. */
export type DeliveryOutcome =
  | { readonly kind: 'sent'; readonly channelId: string; readonly messageId: string }
  /** Worth trying again: a fault of the network, the platform or its limits. */
  | { readonly kind: 'retry'; readonly reason: string; readonly afterMs?: number }
  /** Never going to work, neither this way nor round it: channel gone, no access, direct messages closed. */
  | { readonly kind: 'dead'; readonly reason: string }
  /** The assistant itself is refused (401): stop everything. */
  | { readonly kind: 'stop'; readonly reason: string };

/**
 * How a channel sends. The one thing deliveries need of it. Where the chosen way is closed for good it takes the
 * other by itself, and says `dead` only when both are.
 */
export interface Messenger {
  send(message: Outgoing): Promise<DeliveryOutcome>;
}
