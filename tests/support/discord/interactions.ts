import type { Deliveries } from './deliveries.ts';
import { FAILURES, Refusal } from './errors.ts';
import type { UploadedFile } from './multipart.ts';
import type { StandInChannel, StandInInteraction, StandInMessage, World } from './world.ts';

// Documentation: Interactions, Receiving and Responding: an answer within 3 s, a token good for 15 min.
const ACKNOWLEDGE_WITHIN_MS = 3000;
const TOKEN_LASTS_MS = 15 * 60_000;

const EPHEMERAL = 64;

type Body = Record<string, unknown>;

/** POST /interactions/:id/:token/callback */
export function acknowledge(
  world: World,
  deliveries: Deliveries,
  id: string,
  token: string,
  body: Body,
  files: UploadedFile[],
): StandInMessage | null {
  const interaction = world.interactions.get(id);
  const now = world.clock.now();
  if (interaction === undefined || interaction.token !== token) throw new Refusal(FAILURES[10062]);
  if (interaction.acknowledged !== null) throw new Refusal(FAILURES[40060]);
  if (now - interaction.at > ACKNOWLEDGE_WITHIN_MS) throw new Refusal(FAILURES[10062]);
  const data = (body.data ?? {}) as Body;
  const flags = Number(data.flags ?? 0);
  const ephemeral = (flags & EPHEMERAL) !== 0;
  switch (body.type) {
    case 4:
      interaction.original = deliveries.store(channelOf(world, interaction), data, files, { ephemeral });
      break;
    case 5:
      interaction.placeholder = 'waiting';
      break;
    case 6:
      interaction.original = interaction.message;
      break;
    case 7:
      if (interaction.message === null) throw new Refusal(FAILURES[10008]);
      deliveries.edit(interaction.message, data, files);
      interaction.original = interaction.message;
      break;
    case 8:
      interaction.choices = (data.choices ?? []) as { name: string; value: string }[];
      break;
    default:
      throw new Refusal(FAILURES[10062]);
  }
  interaction.acknowledged = { type: Number(body.type), flags, at: now };
  return interaction.original;
}

export function byToken(world: World, token: string): StandInInteraction {
  const interaction = [...world.interactions.values()].find((candidate) => candidate.token === token);
  if (interaction === undefined || interaction.acknowledged === null) throw new Refusal(FAILURES[10015]);
  if (world.clock.now() - interaction.at > TOKEN_LASTS_MS) throw new Refusal(FAILURES[50027]);
  return interaction;
}

/** PATCH /webhooks/:app/:token/messages/@original */
export function editOriginal(
  world: World,
  deliveries: Deliveries,
  token: string,
  body: Body,
  files: UploadedFile[],
): StandInMessage {
  const interaction = byToken(world, token);
  if (interaction.original !== null) {
    deliveries.edit(interaction.original, body, files);
    return interaction.original;
  }
  if (interaction.placeholder !== 'waiting') throw new Refusal(FAILURES[10008]);
  return fillPlaceholder(world, deliveries, interaction, body, files);
}

/** DELETE of the same. */
export function deleteOriginal(world: World, token: string): void {
  const interaction = byToken(world, token);
  if (interaction.original !== null && !interaction.original.deleted) interaction.original.deleted = true;
  else if (interaction.placeholder === 'waiting') interaction.placeholder = 'deleted';
  else throw new Refusal(FAILURES[10008]);
}

/**
 * POST /webhooks/:app/:token. The first follow-up of a deferred interaction fills its placeholder and takes over the
 * placeholder's visibility, whatever its own flags say.
 */
export function followUp(
  world: World,
  deliveries: Deliveries,
  token: string,
  body: Body,
  files: UploadedFile[],
): StandInMessage {
  const interaction = byToken(world, token);
  if (interaction.placeholder === 'waiting') {
    return fillPlaceholder(world, deliveries, interaction, body, files);
  }
  const ephemeral = (Number(body.flags ?? 0) & EPHEMERAL) !== 0;
  const stored = deliveries.store(channelOf(world, interaction), body, files, { ephemeral });
  interaction.followUps.push(stored);
  return stored;
}

function fillPlaceholder(
  world: World,
  deliveries: Deliveries,
  interaction: StandInInteraction,
  body: Body,
  files: UploadedFile[],
): StandInMessage {
  const ephemeral = ((interaction.acknowledged?.flags ?? 0) & EPHEMERAL) !== 0;
  interaction.original = deliveries.store(channelOf(world, interaction), body, files, { ephemeral });
  interaction.placeholder = 'filled';
  return interaction.original;
}

function channelOf(world: World, interaction: StandInInteraction): StandInChannel {
  const channel = world.channels.get(interaction.channelId);
  if (channel === undefined) throw new Refusal(FAILURES[10003]);
  return channel;
}
