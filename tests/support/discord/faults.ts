import { type ApiFailure, SERVER_ERROR } from './errors.ts';

/** What can go wrong with a request, on top of what Discord itself would refuse. */
export type Fault =
  /** An answer that is an error, before anything is done. */
  | { readonly kind: 'error'; readonly failure: ApiFailure }
  | {
      readonly kind: 'rate-limit';
      readonly retryAfterSeconds: number;
      readonly scope?: 'user' | 'global' | 'shared';
      readonly code?: number;
    }
  /** Does what was asked, and then never answers. */
  | { readonly kind: 'stall' }
  /** Does what was asked, and then answers 500. */
  | { readonly kind: 'error-after' }
  /** Never does it and never answers. */
  | { readonly kind: 'hang' }
  /** Closes the connection before anything is done. */
  | { readonly kind: 'reset' }
  /** Waits first. */
  | { readonly kind: 'delay'; readonly ms: number };

interface Rule {
  readonly method: string;
  readonly path: RegExp;
  readonly fault: Fault;
  times: number;
}

export class Faults {
  #rules: Rule[] = [];

  /** The next `times` requests that match fare like this. `path` is matched against `/channels/1/messages` … */
  add(method: string, path: RegExp, fault: Fault, times = 1): void {
    this.#rules.push({ method, path, fault, times });
  }

  serverErrors(method: string, path: RegExp, times: number): void {
    this.add(method, path, { kind: 'error', failure: SERVER_ERROR }, times);
  }

  clear(): void {
    this.#rules = [];
  }

  take(method: string, path: string): Fault | null {
    const rule = this.#rules.find((r) => r.times > 0 && r.method === method && r.path.test(path));
    if (rule === undefined) return null;
    rule.times--;
    return rule.fault;
  }
}
