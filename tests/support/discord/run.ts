import { parseArgs } from 'node:util';
import { startStandIn } from './stand-in.ts';

/** Runs the stand-in in a process of its own; see the head of stand-in.ts. */
const { values } = parseArgs({
  options: {
    port: { type: 'string', default: '0' },
    channels: { type: 'string', default: '1' },
    'global-per-second': { type: 'string' },
    'nonce-window-ms': { type: 'string' },
  },
});

const discord = await startStandIn({
  port: Number(values.port),
  ...(values['global-per-second'] && { globalPerSecond: Number(values['global-per-second']) }),
  ...(values['nonce-window-ms'] && { nonceWindowMs: Number(values['nonce-window-ms']) }),
});
const names = Array.from({ length: Number(values.channels) }, (_, index) => `figs-${index + 1}`);
const guild = discord.addGuild('Fig club', names);
const { api, cdn, control, token } = discord;
process.stdout.write(
  `${JSON.stringify({ api, cdn, control, token, guild: guild.id, channels: guild.channelIds })}\n`,
);
