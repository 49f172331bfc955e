import type { Field } from '../../club/reply.ts';
import type { LongReply } from '../../records/schema.ts';
import { cutText, escapeText, splitText } from './escape.ts';
import { LIMITS } from './limits.ts';

/** What one message shows of a reply, escaped. */
export interface Page {
  readonly text: string;
  readonly fields: readonly Field[];
}

/** More reads badly on a phone. */
const FIELDS_A_PAGE = 12;
const TEXT_A_PAGE = 3000;
/** Leaves room for the title and the footer. */
const CHARACTERS_A_PAGE = LIMITS.embedTotal - LIMITS.embedTitle - 200;

/** A reply in pages that Discord takes, nothing left out; at least one. */
export function pagesOf(reply: Pick<LongReply, 'text' | 'fields'>): Page[] {
  const texts = splitText(escapeText(reply.text), TEXT_A_PAGE);
  const pages: { text: string; fields: Field[] }[] = texts.map((text) => ({ text, fields: [] }));
  let page = pages.at(-1);
  for (const field of reply.fields.flatMap(escapeField)) {
    if (page === undefined || !fits(page, field)) {
      page = { text: '', fields: [] };
      pages.push(page);
    }
    page.fields.push(field);
  }
  return pages.length === 0 ? [{ text: '', fields: [] }] : pages;
}

function fits(page: Page, field: Field): boolean {
  const used = page.fields.reduce(
    (sum, { name, value }) => sum + name.length + value.length,
    page.text.length,
  );
  const more = field.name.length + field.value.length;
  return page.fields.length < FIELDS_A_PAGE && used + more <= CHARACTERS_A_PAGE;
}

/** Discord refuses a field without a name or a value; a long value goes on in another field. */
function escapeField({ name, value }: Field): Field[] {
  const title = cutText(escapeText(name), LIMITS.fieldName).trim() || '\u200b';
  const values = splitText(escapeText(value), LIMITS.fieldValue);
  if (values.every((part) => part.trim() === '')) return [{ name: title, value: '\u200b' }];
  return values.map((part, index) => ({ name: index === 0 ? title : '\u200b', value: part }));
}
