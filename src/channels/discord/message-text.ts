import type { Message } from 'discord.js';

/** What a message says: without the assistant's mention, other mentions and emoji by their names. */
export function readMessageText(message: Pick<Message, 'content' | 'mentions'>, assistantId: string): string {
  return message.content
    .replaceAll(new RegExp(`<@!?${assistantId}>`, 'g'), ' ')
    .replaceAll(/<@!?(\d+)>/g, (_, id: string) => {
      const user = message.mentions.users.get(id);
      return user === undefined ? 'somebody' : `@${user.displayName}`;
    })
    .replaceAll(/<a?(:\w+:)\d+>/g, '$1')
    .replaceAll(/[ \t]+/g, ' ')
    .trim();
}
