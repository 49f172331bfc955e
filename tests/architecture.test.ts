import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../src', import.meta.url));

/** Lower layers never import higher ones; folders of one layer may know each other, but for engine and notes. */
const LAYERS: readonly (readonly string[])[] = [
  ['engine'],
  ['notes', 'weather', 'records', 'pictures'],
  ['club', 'nudges'],
  ['channels', 'demo'],
];

interface SourceFile {
  readonly path: string;
  readonly folder: string | null;
  readonly text: string;
  readonly imports: readonly string[];
}

const IMPORT = /^(?:import|export)\b[^;]*?\bfrom\s+'([^']+)'|^import\s+'([^']+)'|\bimport\('([^']+)'\)/gm;

const files: SourceFile[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
  .map((path) => {
    const text = readFileSync(join(SRC, path), 'utf8');
    const imports = [...text.matchAll(IMPORT)].map((match) => match[1] ?? match[2] ?? match[3] ?? '');
    const [folder, ...rest] = path.split(/[\\/]/);
    return { path, folder: rest.length > 0 ? (folder ?? null) : null, text, imports };
  });

const layerOf = (folder: string) => LAYERS.findIndex((layer) => layer.includes(folder));

/** Folder under src/ that a file's relative import leads to; null for a file of src/ itself. */
function folderOf(file: SourceFile, specifier: string): string | null {
  const path = relative(SRC, resolve(SRC, dirname(file.path), specifier));
  const [folder, ...rest] = path.split(/[\\/]/);
  return rest.length > 0 ? (folder ?? null) : null;
}

const localImports = (file: SourceFile) => file.imports.filter((specifier) => specifier.startsWith('.'));

describe('the arrows between folders', () => {
  it('only point down', () => {
    const wrong = files.flatMap((file) =>
      localImports(file).flatMap((specifier) => {
        const to = folderOf(file, specifier);
        if (file.folder === null || to === null) return [];
        return layerOf(to) > layerOf(file.folder) ? [`${file.path} → ${specifier}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('leave the engine alone with itself', () => {
    const wrong = files
      .filter(({ folder }) => folder === 'engine')
      .flatMap((file) =>
        file.imports.filter((specifier) => !specifier.startsWith('./')).map((to) => `${file.path} → ${to}`),
      );
    expect(wrong).toEqual([]);
  });

  it('let the language of notes know the engine only', () => {
    const wrong = files
      .filter(({ folder }) => folder === 'notes')
      .flatMap((file) =>
        localImports(file)
          .filter((specifier) => !['notes', 'engine'].includes(folderOf(file, specifier) ?? ''))
          .map((to) => `${file.path} → ${to}`),
      );
    expect(wrong).toEqual([]);
  });

  it('keep Discord’s library in its own channel', () => {
    const wrong = files.filter(
      ({ path, imports }) =>
        imports.some((specifier) => /^(discord\.js|@discordjs\/|discord-api-types)/.test(specifier)) &&
        !path.startsWith(join('channels', 'discord')),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });
});

describe('time', () => {
  it('is read from the host in clock.ts alone', () => {
    const wrong = files.filter(
      ({ path, text }) => path !== 'clock.ts' && /Date\.now\(|new Date\(\s*\)/.test(text),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });

  it('is never resolved in a zone by the database', () => {
    expect(files.filter(({ text }) => /at time zone/i.test(text)).map(({ path }) => path)).toEqual([]);
  });
});

it('has files of a size that can be read: data apart, none over 500 lines', () => {
  const data = /(cultivar-data|cultivar-names|lexicon[\\/].*|southern-zones)\.ts$/;
  const long = files.filter(({ path, text }) => !data.test(path) && text.split('\n').length > 500);
  expect(long.map(({ path }) => path)).toEqual([]);
});
