import {
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  PermissionFlagsBits,
} from 'discord-api-types/v10';
import type { CommandDefinition, OptionDefinition } from '../../club/feature.ts';
import { LIMITS } from './limits.ts';

/** A command as it is deployed. Text may be joined by `*_localizations` one day; none are made yet. */
export interface CommandBody {
  readonly type: ApplicationCommandType;
  readonly name: string;
  readonly description?: string;
  readonly options?: readonly OptionBody[];
  /** A number, as Discord's API description has it; what is read back is text. */
  readonly default_member_permissions?: number | null;
  /** Of commands everywhere; those of one server know neither. */
  readonly contexts?: readonly InteractionContextType[];
  readonly integration_types?: readonly ApplicationIntegrationType[];
}

export interface OptionBody {
  readonly type: ApplicationCommandOptionType;
  readonly name: string;
  readonly description: string;
  readonly required?: boolean;
  readonly autocomplete?: boolean;
  readonly max_length?: number;
  readonly min_value?: number;
  readonly max_value?: number;
  readonly choices?: readonly { readonly name: string; readonly value: string }[];
  readonly options?: readonly OptionBody[];
}

/** The command on a message of one's own. */
export const LOG_AS_NOTE = 'Log as a note';

/** What a group of sub-commands says of itself. Discord shows it nowhere that matters, but wants it. */
const GROUP_DESCRIPTIONS: Readonly<Record<string, string>> = {
  garden: 'Where you garden and its season',
  tree: 'Your trees',
  mydata: 'Your records: take them out, or erase them',
};

/** All commands: those of the features, and "Log as a note". */
export function commandBodies(definitions: readonly CommandDefinition[]): CommandBody[] {
  const groups = new Map<string, CommandDefinition[]>();
  for (const definition of definitions) {
    const [name = ''] = definition.name.split(' ');
    groups.set(name, [...(groups.get(name) ?? []), definition]);
  }
  const commands = [...groups].map(([name, members]) => commandBody(name, members));
  return [...commands, { ...everywhere(), type: ApplicationCommandType.Message, name: LOG_AS_NOTE }];
}

function commandBody(name: string, definitions: readonly CommandDefinition[]): CommandBody {
  const [only] = definitions;
  const managersOnly = definitions.every((definition) => definition.managersOnly === true);
  const shared = {
    ...(managersOnly ? inGuilds() : everywhere()),
    type: ApplicationCommandType.ChatInput,
    name,
    default_member_permissions: managersOnly ? Number(PermissionFlagsBits.ManageGuild) : null,
  };
  if (only !== undefined && definitions.length === 1 && only.name === name) {
    return { ...shared, description: describe(only.description), options: only.options.map(optionBody) };
  }
  return {
    ...shared,
    description: describe(GROUP_DESCRIPTIONS[name] ?? name),
    options: definitions.map((definition) => ({
      type: ApplicationCommandOptionType.Subcommand,
      name: definition.name.slice(name.length + 1),
      description: describe(definition.description),
      options: definition.options.map(optionBody),
    })),
  };
}

function everywhere() {
  return {
    contexts: [InteractionContextType.Guild, InteractionContextType.BotDM],
    integration_types: [ApplicationIntegrationType.GuildInstall],
  };
}

function inGuilds() {
  return { ...everywhere(), contexts: [InteractionContextType.Guild] };
}

function optionBody(option: OptionDefinition): OptionBody {
  const base = {
    name: option.name,
    description: describe(option.description),
    ...(option.required === true && { required: true }),
  };
  switch (option.type) {
    case 'text':
      return {
        ...base,
        type: ApplicationCommandOptionType.String,
        ...(option.complete !== undefined && { autocomplete: true }),
        ...(option.maxLength !== undefined && { max_length: option.maxLength }),
      };
    case 'integer':
    case 'number':
      return {
        ...base,
        type:
          option.type === 'integer'
            ? ApplicationCommandOptionType.Integer
            : ApplicationCommandOptionType.Number,
        ...(option.min !== undefined && { min_value: option.min }),
        ...(option.max !== undefined && { max_value: option.max }),
      };
    case 'choice':
      return {
        ...base,
        type: ApplicationCommandOptionType.String,
        choices: option.choices.map(({ value, label }) => ({ name: label, value })),
      };
    case 'file':
      return { ...base, type: ApplicationCommandOptionType.Attachment };
  }
}

function describe(text: string): string {
  return text.length <= LIMITS.commandDescription ? text : `${text.slice(0, LIMITS.commandDescription - 1)}…`;
}
