import type { RawFile } from 'discord.js';
import {
  type APIActionRowComponent,
  type APIAllowedMentions,
  type APIButtonComponent,
  type APIEmbed,
  ButtonStyle,
  ComponentType,
} from 'discord-api-types/v10';
import type { Button, Reply, ReplyFile } from '../../club/reply.ts';
import type { LongReply } from '../../records/schema.ts';
import { writeButtonId } from './custom-id.ts';
import { cutText, escapeText } from './escape.ts';
import { LIMITS } from './limits.ts';
import { type Page, pagesOf } from './pages.ts';

/** A message as Discord's REST interface takes it. */
export interface Payload {
  readonly body: PayloadBody;
  readonly files: RawFile[];
}

export interface PayloadBody {
  content?: string;
  embeds: APIEmbed[];
  components: APIActionRowComponent<APIButtonComponent>[];
  allowed_mentions: APIAllowedMentions;
  attachments?: { id: string; filename: string; description?: string }[];
}

export interface RenderOptions {
  /** The Discord user whose buttons these are; null for anybody's. */
  readonly ownerId: string | null;
  /** Our record of the club. */
  readonly clubId: number | null;
  /** Where the reply is kept when it takes more than one page, and which to show. */
  readonly paging?: { readonly id: number; readonly page: number };
  /** An instant, shown in each reader's own zone. */
  readonly at?: Date;
  /** Whom the message may ping; nobody unless given. */
  readonly pings?: string;
}

/** Names the channel's own button that turns to another page. */
export const PAGE_VERB = 'page';

/** A leaf's green and a dry leaf's brown. They only repeat what the title says. */
const COLOURS = { done: 0x5b7f4b, notDone: 0xa5673f } as const;

const NOBODY: APIAllowedMentions = { parse: [] };

/** Whether a reply fits one message. */
export function isLong(reply: Reply): boolean {
  return pagesOf(reply).length > 1;
}

/** A reply as one message: an embed, its buttons, its files; of a long one the page asked for. */
export function renderReply(reply: Reply, options: RenderOptions): Payload {
  const payload = renderPage(reply, options);
  const files = reply.files.slice(0, LIMITS.files);
  if (files.length === 0) return payload;
  const picture = files.find(isPicture);
  const [embed, ...rest] = payload.body.embeds;
  const illustrated =
    picture === undefined ? embed : { ...embed, image: { url: `attachment://${fileName(picture)}` } };
  return {
    files: files.map((file) => ({ name: fileName(file), data: Buffer.from(file.bytes) })),
    body: {
      ...payload.body,
      embeds: illustrated === undefined ? [] : [illustrated, ...rest],
      attachments: files.map((file, index) => ({
        id: String(index),
        filename: fileName(file),
        ...(file.alt !== undefined && { description: file.alt.slice(0, LIMITS.altText) }),
      })),
    },
  };
}

/** One page of a reply, without files. */
export function renderPage(reply: LongReply, options: RenderOptions): Payload {
  const pages = pagesOf(reply);
  const index = Math.min(Math.max(options.paging?.page ?? 0, 0), pages.length - 1);
  const page = pages[index] ?? { text: '', fields: [] };
  const embed: APIEmbed = {
    title: cutText(escapeText(reply.title), LIMITS.embedTitle),
    color: reply.ok ? COLOURS.done : COLOURS.notDone,
    ...bodyOf(page),
    ...(pages.length > 1 && { footer: { text: `Page ${index + 1} of ${pages.length}` } }),
    ...(options.at !== undefined && { timestamp: options.at.toISOString() }),
  };
  return {
    files: [],
    body: {
      ...(options.pings !== undefined && { content: `<@${options.pings}>` }),
      embeds: [embed],
      components: [
        ...pagingRow(options, index, pages.length),
        ...buttonRows(reply.buttons, options, pages.length > 1 ? LIMITS.rows - 1 : LIMITS.rows),
      ],
      allowed_mentions: options.pings === undefined ? NOBODY : { parse: [], users: [options.pings] },
    },
  };
}

/** The one line that acknowledges a plain note, and its buttons. */
export function renderBrief(reply: Reply & { readonly brief: string }, options: RenderOptions): Payload {
  return {
    files: [],
    body: {
      content: cutText(escapeText(reply.brief), LIMITS.content),
      embeds: [],
      components: buttonRows(reply.buttons, options, LIMITS.rows),
      allowed_mentions: NOBODY,
    },
  };
}

/** A sentence and nothing else. */
export function renderSentence(text: string): Payload {
  const content = cutText(escapeText(text), LIMITS.content);
  return { files: [], body: { content, embeds: [], components: [], allowed_mentions: NOBODY } };
}

function bodyOf(page: Page): Pick<APIEmbed, 'description' | 'fields'> {
  return {
    ...(page.text !== '' && { description: page.text }),
    ...(page.fields.length > 0 && { fields: page.fields.map((field) => ({ ...field })) }),
  };
}

type Row = APIActionRowComponent<APIButtonComponent>;

function pagingRow(options: RenderOptions, index: number, pages: number): Row[] {
  const { paging, ownerId, clubId } = options;
  if (paging === undefined || pages < 2) return [];
  const turn = (label: string, to: number): APIButtonComponent => ({
    type: ComponentType.Button,
    style: ButtonStyle.Secondary,
    label,
    custom_id: writeButtonId({ ownerId, clubId, action: `${PAGE_VERB}:${paging.id}:${to}` }),
    ...((to < 0 || to >= pages) && { disabled: true }),
  });
  return [
    {
      type: ComponentType.ActionRow,
      components: [turn('Earlier page', index - 1), turn('Next page', index + 1)],
    },
  ];
}

function buttonRows(buttons: readonly Button[], options: RenderOptions, maxRows: number): Row[] {
  const { ownerId, clubId } = options;
  const unlike = new Map<string, APIButtonComponent>();
  for (const { label, action } of buttons) {
    const custom_id = writeButtonId({ ownerId, clubId, action });
    const shown = [...label.replaceAll(/\s+/g, ' ').trim()].length === 0 ? '…' : cutLabel(label);
    // Discord refuses a message in which a custom id stands twice.
    if (!unlike.has(custom_id) && custom_id.length <= LIMITS.customId) {
      unlike.set(custom_id, {
        type: ComponentType.Button,
        style: ButtonStyle.Secondary,
        label: shown,
        custom_id,
      });
    }
  }
  const all = [...unlike.values()].slice(0, maxRows * LIMITS.buttonsInRow);
  const rows: Row[] = [];
  for (let at = 0; at < all.length; at += LIMITS.buttonsInRow) {
    rows.push({ type: ComponentType.ActionRow, components: all.slice(at, at + LIMITS.buttonsInRow) });
  }
  return rows;
}

/** Labels are shown as they stand, so they need no escapes. */
function cutLabel(label: string): string {
  const plain = label.replaceAll(/\s+/g, ' ').trim();
  if (plain.length <= LIMITS.buttonLabel) return plain;
  return `${plain.slice(0, LIMITS.buttonLabel - 1).replace(/[\ud800-\udbff]$/, '')}…`;
}

function isPicture(file: ReplyFile): boolean {
  return file.name.toLowerCase().endsWith('.png');
}

/** `attachment://` addresses take only these. */
function fileName(file: ReplyFile): string {
  return file.name.replaceAll(/[^A-Za-z0-9._-]/g, '-').slice(-100);
}
