import type { ChatInputCommandInteraction } from 'discord.js';
import { ApplicationCommandOptionType } from 'discord-api-types/v10';
import type { Input, InputFile, InputValue } from '../../club/feature.ts';
import { UserError } from '../../errors.ts';
import type { AttachmentRules } from './kit.ts';

/** Where Discord keeps what members upload. */
const CDN_ORIGINS = ['https://cdn.discordapp.com', 'https://media.discordapp.net'];

const MAX_BYTES = 10 * 1024 * 1024;

export interface AttachmentInfo {
  readonly name: string;
  readonly url: string;
  readonly size: number;
}

export interface TypedOption {
  readonly name: string;
  readonly type: ApplicationCommandOptionType;
  readonly value: string | number | boolean;
}

/** What was typed, as handlers take it. `fileOf` finds an attachment by its id. */
export async function readInput(
  options: readonly TypedOption[],
  fileOf: (id: string) => AttachmentInfo | null,
  rules: AttachmentRules,
): Promise<Input> {
  const input: Record<string, InputValue> = {};
  for (const option of options) {
    const { name, value } = option;
    if (option.type === ApplicationCommandOptionType.Attachment) {
      const file = fileOf(String(value));
      if (file !== null) input[name] = await fetchAttachment(file, rules);
    } else if (typeof value !== 'string') {
      input[name] = value;
    } else if (value.trim() !== '') {
      input[name] = value.trim();
    }
  }
  return input;
}

/** Fetches what a member uploaded, from where Discord keeps it and nowhere else. Throws UserError. */
export async function fetchAttachment(file: AttachmentInfo, rules: AttachmentRules): Promise<InputFile> {
  const origins = rules.cdn === null ? CDN_ORIGINS : [rules.cdn];
  if (!URL.canParse(file.url) || !origins.includes(new URL(file.url).origin)) {
    throw new UserError('file-elsewhere', `${file.name} does not come from Discord; attach the file itself.`);
  }
  if (file.size > MAX_BYTES) throw tooLarge(file);
  try {
    const response = await fetch(file.url, {
      redirect: 'error',
      signal: AbortSignal.timeout(rules.timeoutMs),
    });
    if (!response.ok || response.body === null) throw unreachable(file);
    return { name: file.name, bytes: await collect(response.body, file) };
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw unreachable(file);
  }
}

/** What is announced need not be what comes, so the bytes are counted as they do. */
async function collect(body: ReadableStream<Uint8Array>, file: AttachmentInfo): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of body as unknown as AsyncIterable<Uint8Array>) {
    size += chunk.length;
    if (size > MAX_BYTES) throw tooLarge(file);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function tooLarge(file: AttachmentInfo): UserError {
  return new UserError(
    'file-too-large',
    `${file.name} is larger than 10 MB; attach fewer years of it. Nothing was changed.`,
  );
}

function unreachable(file: AttachmentInfo): UserError {
  return new UserError(
    'file-not-fetched',
    `${file.name} could not be fetched from Discord; please attach it again. Nothing was changed.`,
  );
}

/** The options of a command as it arrived. */
export function typedOptions(
  interaction: ChatInputCommandInteraction,
  rules: AttachmentRules,
): Promise<Input> {
  const [first] = interaction.options.data;
  const isSub = first?.type === ApplicationCommandOptionType.Subcommand;
  const options = isSub ? (first.options ?? []) : interaction.options.data;
  const typed = options.flatMap(({ name, type, value }) =>
    value === undefined ? [] : [{ name, type, value }],
  );
  const files = new Map(
    options.flatMap(({ attachment }) => (attachment == null ? [] : [[attachment.id, attachment]])),
  );
  return readInput(typed, (id) => files.get(id) ?? null, rules);
}
