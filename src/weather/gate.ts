/** Lets at most so many pieces of work run at once; the others wait their turn. */
export class Gate {
  #free: number;
  #waiting: (() => void)[] = [];

  constructor(most: number) {
    this.#free = most;
  }

  async through<T>(work: () => Promise<T>): Promise<T> {
    if (this.#free > 0) this.#free--;
    else await new Promise<void>((resolve) => this.#waiting.push(resolve));
    try {
      return await work();
    } finally {
      const next = this.#waiting.shift();
      if (next) next();
      else this.#free++;
    }
  }
}

/** What a piece of shared work tells of its progress, and to whom. */
export type Progress = (text: string) => void;

interface Running<T> {
  readonly result: Promise<T>;
  readonly listeners: Set<Progress>;
}

/** One run a key: who asks while it runs shares it and hears of its progress. */
export class SharedWork<T> {
  #running = new Map<string, Running<T>>();

  run(key: string, listener: Progress, work: (progress: Progress) => Promise<T>): Promise<T> {
    const known = this.#running.get(key);
    if (known) {
      known.listeners.add(listener);
      return known.result;
    }
    const listeners = new Set([listener]);
    const tell = (text: string) => {
      for (const listen of listeners) listen(text);
    };
    const result = work(tell).finally(() => this.#running.delete(key));
    this.#running.set(key, { result, listeners });
    return result;
  }
}
