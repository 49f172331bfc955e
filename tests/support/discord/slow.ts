import { setTimeout as wait } from 'node:timers/promises';
import type { OpenedDatabase } from '../../../src/records/database.ts';

/** The same database, every statement of which takes `ms` longer. */
export function slowed(opened: OpenedDatabase, ms: number): OpenedDatabase {
  return { ...opened, db: slowedBuilder(opened.db, ms) };
}

function slowedBuilder<Target extends object>(target: Target, ms: number): Target {
  return new Proxy(target, {
    get(of, key) {
      const value = Reflect.get(of, key, of) as unknown;
      if (typeof value === 'function') {
        if (key === 'then') {
          return (...handlers: [never, never]) =>
            wait(ms).then(() => (value as (...args: unknown[]) => unknown).apply(of, handlers));
        }
        return (...args: unknown[]) => {
          const result = (value as (...args: unknown[]) => unknown).apply(of, args);
          return typeof result === 'object' && result !== null ? slowedBuilder(result, ms) : result;
        };
      }
      return typeof value === 'object' && value !== null && key === 'query'
        ? slowedQueries(value, ms)
        : value;
    },
  });
}

function slowedQueries(queries: object, ms: number): object {
  return new Proxy(queries, {
    get: (of, key) => slowedBuilder(Reflect.get(of, key, of) as object, ms),
  });
}

/** The same database, out of order while `broken()` says so. */
export function failing(opened: OpenedDatabase, broken: () => boolean): OpenedDatabase {
  const db = new Proxy(opened.db, {
    get(of, key) {
      if (
        broken() &&
        ['select', 'insert', 'update', 'delete', 'transaction', 'query'].includes(String(key))
      ) {
        throw Object.assign(new Error('connection lost: params secret-words-of-a-member'), {
          code: 'ECONNRESET',
        });
      }
      const value = Reflect.get(of, key, of) as unknown;
      return typeof value === 'function' ? value.bind(of) : value;
    },
  });
  return { ...opened, db };
}
