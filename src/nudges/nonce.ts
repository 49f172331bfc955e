import type { Day } from '../engine/day.ts';

/**
 * The nonce of a member's message of one morning, at most 25 characters as Discord wants it. Every attempt at
 * that message carries it, so that Discord stores it once.
 */
export function nonceOf(memberId: number, morning: Day): string {
  return `n${memberId}-${morning.replaceAll('-', '')}`;
}
