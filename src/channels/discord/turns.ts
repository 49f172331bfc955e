/**
 * One thing at a time per member, in the order it came: a correction must not overtake the note it corrects.
 * Also knows what is still under way, for a graceful end.
 */
export class Turns {
  readonly #last = new Map<string, Promise<unknown>>();
  readonly #followed = new Set<Promise<void>>();

  take<Result>(key: string, work: () => Promise<Result>): Promise<Result> {
    const before = this.#last.get(key) ?? Promise.resolve();
    const mine = before.then(work, work);
    const settled = mine
      .catch(() => {})
      .then(() => {
        if (this.#last.get(key) === settled) this.#last.delete(key);
      });
    this.#last.set(key, settled);
    return mine;
  }

  /** Work that has no turn yet but must be waited for in the end. It never rejects. */
  follow(work: Promise<void>): void {
    this.#followed.add(work);
    void work.finally(() => this.#followed.delete(work));
  }

  /** Resolves when nothing is under way any more. */
  async idle(): Promise<void> {
    while (this.#last.size + this.#followed.size > 0) {
      await Promise.all([...this.#last.values(), ...this.#followed]);
    }
  }
}
