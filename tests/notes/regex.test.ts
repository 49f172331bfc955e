import { readdirSync, readFileSync } from 'node:fs';
import { checkSync } from 'recheck';
import { describe, expect, it } from 'vitest';
import { parseAst } from 'vitest/node';

interface Found {
  readonly place: string;
  readonly pattern: string;
  readonly flags: string;
}

/** Every literal of a regular expression in a module, by the parser and not by the look of slashes. */
function regexesOf(file: string): Found[] {
  const source = readFileSync(file, 'utf8');
  const found: Found[] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    if ('regex' in node && 'start' in node) {
      const { pattern, flags } = node.regex as { pattern: string; flags: string };
      const line = source.slice(0, Number(node.start)).split('\n').length;
      found.push({ place: `${file}:${line}`, pattern, flags });
      return;
    }
    for (const part of Object.values(node)) walk(part);
  };
  walk(parseAst(source, { lang: 'ts' }));
  return found;
}

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => `src/${file}`);
const regexes = new Map(files.flatMap(regexesOf).map((each) => [`/${each.pattern}/${each.flags}`, each]));

describe('no regular expression of the source', () => {
  // recheck proves an expression safe by its automaton (Sugiyama, Minamide: "Checking Time Linearity of Regular
  // Expression Matching Based on Backtracking", 2014), or else searches for a text that makes it slow.
  it('takes more than linear time for any text', () => {
    const slow = [...regexes.values()].flatMap(({ place, pattern, flags }) => {
      const checked = checkSync(pattern, flags);
      if (checked.status === 'safe') return [];
      const why = checked.status === 'vulnerable' ? checked.attack.pattern : checked.error.kind;
      return [`${place} /${pattern}/${flags}: ${why}`];
    });
    expect(slow).toEqual([]);
  }, 120_000);

  it('escapes the check, which knows a slow one', () => {
    expect(regexes.size).toBeGreaterThan(100);
    expect(checkSync('^(a+)+$', '')).toMatchObject({ status: 'vulnerable' });
    expect(checkSync(String.raw`\s+$`, '')).toMatchObject({ status: 'vulnerable' });
  });
});
