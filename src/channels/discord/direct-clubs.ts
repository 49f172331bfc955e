import type { Clock } from '../../clock.ts';

const REMEMBERED_MS = 60 * 60_000;

/**
 * Which club a member of several means in direct messages, for an hour after they last said or used it. Kept in
 * memory only: whoever is forgotten is asked again.
 */
export class DirectClubs {
  readonly #clock: Clock;
  readonly #chosen = new Map<string, { clubId: number; at: number }>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  choose(userId: string, clubId: number): void {
    this.#chosen.set(userId, { clubId, at: this.#clock.now().getTime() });
  }

  of(userId: string): number | null {
    const chosen = this.#chosen.get(userId);
    if (chosen === undefined) return null;
    if (this.#clock.now().getTime() - chosen.at > REMEMBERED_MS) {
      this.#chosen.delete(userId);
      return null;
    }
    this.choose(userId, chosen.clubId);
    return chosen.clubId;
  }
}
