import { problem, type WeatherFileProblem } from './file-types.ts';

export const MAX_FILE_BYTES = 10 * 1024 * 1024;

const ASK = 'Send a table as text (CSV): a date, a high and a low on every line.';

/** The first bytes of files that are often sent instead of a table. */
const SIGNATURES: readonly (readonly [prefix: readonly number[], what: string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], 'a spreadsheet or a zip file'],
  [[0x1f, 0x8b], 'a compressed file'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF'],
  [[0x89, 0x50, 0x4e, 0x47], 'a picture'],
  [[0xff, 0xd8, 0xff], 'a picture'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'an old spreadsheet'],
];

/**
 * The text of a file, with `\n` line ends and no byte order mark. UTF-8 and UTF-16 are told apart by their
 * bytes; what is neither is read as Windows-1252, in which every sequence of bytes is some text.
 */
export function decodeFile(bytes: Uint8Array): string | WeatherFileProblem {
  if (bytes.length === 0) return problem('empty', `The file is empty. ${ASK}`);
  if (bytes.length > MAX_FILE_BYTES) {
    const size = (bytes.length / 1024 / 1024).toFixed(1);
    return problem('too-large', `The file has ${size} MB; I take up to 10 MB. Keep the date, high and low.`);
  }
  for (const [prefix, what] of SIGNATURES) {
    if (prefix.every((byte, i) => bytes[i] === byte)) return problem('not-text', `That is ${what}. ${ASK}`);
  }
  const text = decode(bytes);
  if (text === null || hasControls(text)) {
    return problem('not-text', `The file holds bytes that are no text. ${ASK}`);
  }
  const start = text.slice(0, 200).trimStart();
  if (start === '' && text.trim() === '') return problem('empty', `The file has no text in it. ${ASK}`);
  if (start.startsWith('<')) return problem('not-a-table', `That is a web page or XML. ${ASK}`);
  if (/^(\{|\[\s*[[{"\]])/.test(start)) return problem('not-a-table', `That is JSON. ${ASK}`);
  return text.replace(/\r\n?/g, '\n');
}

function decode(bytes: Uint8Array): string | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return utf16(bytes, 'utf-16le');
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return utf16(bytes, 'utf-16be');
  // UTF-16 of Latin text without its mark: every second byte is nought.
  const head = bytes.subarray(0, 400);
  const noughts = [0, 0];
  head.forEach((byte, i) => {
    if (byte === 0) noughts[i % 2] = (noughts[i % 2] ?? 0) + 1;
  });
  const most = head.length * 0.4;
  if (head.length >= 4 && (noughts[1] ?? 0) > most) return utf16(bytes, 'utf-16le');
  if (head.length >= 4 && (noughts[0] ?? 0) > most) return utf16(bytes, 'utf-16be');
  if (bytes.includes(0)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function utf16(bytes: Uint8Array, encoding: 'utf-16le' | 'utf-16be'): string {
  return new TextDecoder(encoding).decode(bytes);
}

/** More than a few control characters other than tab, line ends and form feed: no text anybody wrote. */
function hasControls(text: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const found = text.slice(0, 20_000).match(/[\u0000-\u0008\u000b\u000e-\u001f\ufffd]/g);
  return (found?.length ?? 0) > 2;
}
