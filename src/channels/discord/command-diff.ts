import type { CommandBody } from './commands.ts';

/** A command as Discord gives it back: our fields, and others that do not matter here. */
export interface DeployedCommand {
  readonly id: string;
  readonly type: number;
  readonly name: string;
  readonly [field: string]: unknown;
}

export interface CommandDiff {
  readonly create: readonly CommandBody[];
  readonly update: readonly { readonly id: string; readonly body: CommandBody }[];
  readonly remove: readonly DeployedCommand[];
  readonly unchanged: number;
}

/** What must be written so that what is deployed is what is wanted. Contexts count in the global scope only. */
export function diffCommands(
  wanted: readonly CommandBody[],
  deployed: readonly DeployedCommand[],
  scope: 'global' | 'guild',
): CommandDiff {
  const same = (a: { type: number; name: string }, b: { type: number; name: string }) =>
    a.type === b.type && a.name === b.name;
  const pairs = wanted.map((body) => ({ body, old: deployed.find((command) => same(command, body)) }));
  const changed = pairs.filter(({ body, old }) => old !== undefined && differ(body, old, scope));
  return {
    create: pairs.filter(({ old }) => old === undefined).map(({ body }) => body),
    update: changed.flatMap(({ body, old }) => (old === undefined ? [] : [{ id: old.id, body }])),
    remove: deployed.filter((command) => !wanted.some((body) => same(body, command))),
    unchanged: pairs.filter(({ old }) => old !== undefined).length - changed.length,
  };
}

export function isEmptyDiff(diff: CommandDiff): boolean {
  return diff.create.length + diff.update.length + diff.remove.length === 0;
}

function differ(body: CommandBody, old: DeployedCommand, scope: 'global' | 'guild'): boolean {
  return JSON.stringify(normalize(body, scope)) !== JSON.stringify(normalize(old, scope));
}

/** The fields that are ours in one form: what Discord leaves out when it gives a command back is filled in. */
function normalize(command: CommandBody | DeployedCommand, scope: 'global' | 'guild'): unknown {
  const { default_member_permissions: permissions, contexts, integration_types: types } = command;
  return {
    description: command.description ?? '',
    options: normalizeOptions(command.options),
    permissions: permissions === null || permissions === undefined ? null : String(permissions),
    contexts: scope === 'global' && Array.isArray(contexts) ? [...contexts].sort() : null,
    types: scope === 'global' && Array.isArray(types) ? [...types].sort() : null,
  };
}

function normalizeOptions(options: unknown): unknown[] {
  if (!Array.isArray(options)) return [];
  return options.map((option: Record<string, unknown>) => ({
    type: option.type,
    name: option.name,
    description: option.description,
    required: option.required === true,
    autocomplete: option.autocomplete === true,
    max_length: option.max_length ?? null,
    min_value: option.min_value ?? null,
    max_value: option.max_value ?? null,
    choices: Array.isArray(option.choices)
      ? option.choices.map(({ name, value }: { name: string; value: unknown }) => [name, value])
      : [],
    options: normalizeOptions(option.options),
  }));
}
