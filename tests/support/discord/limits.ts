import type { APIActionRowComponent, APIComponentInMessageActionRow, APIEmbed } from 'discord-api-types/v10';

interface MessageBody {
  readonly content?: string | null;
  readonly embeds?: APIEmbed[] | null;
  readonly components?: APIActionRowComponent<APIComponentInMessageActionRow>[] | null;
}

/**
 * Limits that Discord enforces and its API description does not state: documentation of Message ("content" 2,000
 * characters for bots), Embed limits (6,000 in all, 256 / 4,096 / 256 / 1,024 / 2,048) and Component (five rows of
 * five buttons, a custom id once per message).
 */
export function checkMessage(body: MessageBody): string[] {
  const problems: string[] = [];
  if ((body.content ?? '').length > 2000) problems.push('content: must be 2000 or fewer in length');
  let total = 0;
  for (const embed of body.embeds ?? []) {
    const texts: [string, string | undefined, number][] = [
      ['title', embed.title, 256],
      ['description', embed.description, 4096],
      ['footer', embed.footer?.text, 2048],
      ['author', embed.author?.name, 256],
    ];
    for (const field of embed.fields ?? []) {
      texts.push(['field name', field.name, 256], ['field value', field.value, 1024]);
      if (field.name.trim() === '' || field.value.trim() === '') problems.push('embed field: required');
    }
    if ((embed.fields ?? []).length > 25) problems.push('embed: more than 25 fields');
    for (const [name, text, limit] of texts) {
      if (text === undefined) continue;
      total += text.length;
      if (text.length > limit) problems.push(`embed ${name}: must be ${limit} or fewer in length`);
    }
  }
  if (total > 6000) problems.push('embeds: more than 6000 characters in all');
  return [...problems, ...checkComponents(body.components ?? [])];
}

function checkComponents(rows: readonly APIActionRowComponent<APIComponentInMessageActionRow>[]): string[] {
  const problems: string[] = [];
  if (rows.length > 5) problems.push('components: more than 5 rows');
  const ids = new Set<string>();
  for (const row of rows) {
    if (row.components.length > 5) problems.push('components: more than 5 in a row');
    for (const component of row.components) {
      if (!('custom_id' in component)) continue;
      if (component.custom_id.length > 100) problems.push('custom_id: must be 100 or fewer in length');
      if (ids.has(component.custom_id)) problems.push('custom_id: duplicated');
      ids.add(component.custom_id);
      if ('label' in component && (component.label ?? '').trim() === '') problems.push('button: no label');
    }
  }
  return problems;
}

interface CommandOption {
  readonly name: string;
  readonly description?: string;
  readonly required?: boolean;
  readonly options?: readonly CommandOption[];
  readonly choices?: readonly { name: string; value: string | number }[];
}

interface CommandBody extends CommandOption {
  readonly type?: number | null;
}

/**
 * What Discord's documentation of Application Commands asks beyond its API description: names in lower case,
 * descriptions of 1–100 characters, required options first, at most 8,000 characters in all.
 */
export function checkCommand(command: CommandBody): string[] {
  if ((command.type ?? 1) !== 1) return [];
  const problems: string[] = [];
  const walk = (option: CommandOption) => {
    if (!/^[-_'\p{L}\p{N}]{1,32}$/u.test(option.name) || option.name !== option.name.toLowerCase()) {
      problems.push(`${option.name}: not a valid name`);
    }
    const described = option.description?.length ?? 0;
    if (described < 1 || described > 100) problems.push(`${option.name}: description must be 1 to 100 long`);
    if ((option.choices ?? []).length > 25) problems.push(`${option.name}: more than 25 choices`);
    const inner = option.options ?? [];
    if (inner.length > 25) problems.push(`${option.name}: more than 25 options`);
    if (new Set(inner.map((o) => o.name)).size < inner.length) problems.push(`${option.name}: options alike`);
    const firstOptional = inner.findIndex((o) => !o.required);
    if (firstOptional >= 0 && inner.slice(firstOptional).some((o) => o.required)) {
      problems.push(`${option.name}: required options must come first`);
    }
    inner.forEach(walk);
  };
  walk(command);
  if (lengthOf(command) > 8000) problems.push('command exceeds maximum size (8000)');
  return problems;
}

function lengthOf(option: CommandOption): number {
  const own = option.name.length + (option.description?.length ?? 0);
  const choices = (option.choices ?? []).reduce((sum, c) => sum + c.name.length + String(c.value).length, 0);
  return own + choices + (option.options ?? []).reduce((sum, inner) => sum + lengthOf(inner), 0);
}
