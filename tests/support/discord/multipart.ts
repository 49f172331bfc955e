import { crc32 } from 'node:zlib';

export interface UploadedFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** A request's body: JSON as it is, or multipart with `payload_json` and `files[n]`. */
export async function readBody(
  contentType: string,
  raw: Buffer,
): Promise<{ json: unknown; files: UploadedFile[]; problems: string[] }> {
  if (raw.length === 0) return { json: undefined, files: [], problems: [] };
  if (contentType.startsWith('application/json')) {
    return { json: JSON.parse(raw.toString('utf8')), files: [], problems: [] };
  }
  if (!contentType.startsWith('multipart/form-data')) {
    return { json: undefined, files: [], problems: [`content type ${contentType || 'missing'}`] };
  }
  const form = await new Response(new Uint8Array(raw), {
    headers: { 'content-type': contentType },
  }).formData();
  const files: UploadedFile[] = [];
  const problems: string[] = [];
  let json: unknown;
  for (const [key, value] of form.entries()) {
    if (typeof value === 'string') {
      if (key === 'payload_json') json = JSON.parse(value);
      else problems.push(`part ${key} is not expected`);
      continue;
    }
    if (!/^files\[\d+\]$/.test(key)) problems.push(`part ${key} is not a file of a message`);
    const bytes = new Uint8Array(await value.arrayBuffer());
    files.push({ name: value.name, type: value.type, bytes });
    if (value.name.endsWith('.png')) problems.push(...checkPng(value.name, bytes));
  }
  return { json, files, problems };
}

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** Walks the chunks of a PNG (W3C PNG specification, sections 5.2–5.3): signature, lengths, CRCs, IHDR to IEND. */
export function checkPng(name: string, bytes: Uint8Array): string[] {
  const data = Buffer.from(bytes);
  if (!data.subarray(0, 8).equals(PNG_SIGNATURE)) return [`${name}: no PNG signature`];
  const types: string[] = [];
  for (let at = 8; at < data.length; ) {
    if (at + 12 > data.length) return [`${name}: cut off`];
    const length = data.readUInt32BE(at);
    if (at + 12 + length > data.length) return [`${name}: cut off`];
    const body = data.subarray(at + 4, at + 8 + length);
    if (crc32(body) !== data.readUInt32BE(at + 8 + length)) return [`${name}: checksum of a chunk`];
    types.push(body.subarray(0, 4).toString('latin1'));
    at += 12 + length;
  }
  const whole = types[0] === 'IHDR' && types.includes('IDAT') && types.at(-1) === 'IEND';
  return whole ? [] : [`${name}: chunks ${types.join(' ')}`];
}
