import { isZone } from '../clock.ts';
import { UserError } from '../errors.ts';
import { replanMember } from '../nudges/plan.ts';
import { lockClub } from '../nudges/plan-learned.ts';
import { membersOfClub, updateClub } from '../records/clubs.ts';
import type { Club } from '../records/schema.ts';
import type { Context } from './context.ts';
import type { Feature, Input } from './feature.ts';
import { type Field, reply } from './reply.ts';
import { countWords } from './words.ts';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

export const clubFeature: Feature = {
  command: {
    name: 'club',
    description: 'Settings of the club: its channel, roundups, time zone',
    visibility: 'only-you',
    managersOnly: true,
    options: [
      { name: 'channel', type: 'text', maxLength: 60, description: 'where nudges and roundups go' },
      { name: 'log_channel', type: 'text', maxLength: 60, description: 'a channel read as notes, or "off"' },
      {
        name: 'roundup_day',
        type: 'choice',
        description: 'day of the weekly roundup',
        choices: [
          ...WEEKDAYS.map((label) => ({ value: label.toLowerCase(), label })),
          { value: 'off', label: 'off' },
        ],
      },
      { name: 'roundup_hour', type: 'integer', min: 0, max: 23, description: 'its hour, 0 to 23' },
      {
        name: 'zone',
        type: 'text',
        maxLength: 60,
        description: 'the club’s time zone, such as Europe/London',
      },
    ],
  },
  async handle(context, input) {
    const change = readChange(context, input);
    const club = Object.keys(change).length === 0 ? context.club : await save(context, change);
    const members = await membersOfClub(context.db, club.id);
    return reply({
      title: club.name,
      text:
        club.trouble === null
          ? ''
          : `The last message to the club’s channel did not arrive: ${club.trouble}. Choose another with channel:, or let the assistant write there.`,
      fields: fieldsOf(club, members.length),
      visibility: 'only-you',
      data: {
        channel: club.channelId,
        logChannel: club.logChannelId,
        roundupDay: club.roundupDay,
        roundupHour: club.roundupHour,
        zone: club.zone,
        members: members.length,
        trouble: club.trouble,
      },
    });
  },
};

function readChange({ club }: Context, input: Input): Partial<Club> {
  const change: Partial<Club> = {};
  if (typeof input.channel === 'string') {
    change.channelId = readChannel(club, input.channel);
    change.trouble = null;
  }
  if (typeof input.log_channel === 'string') {
    change.logChannelId = /^(off|none)$/i.test(input.log_channel)
      ? null
      : readChannel(club, input.log_channel);
  }
  if (typeof input.roundup_day === 'string') {
    const day = WEEKDAYS.findIndex((weekday) => weekday.toLowerCase() === input.roundup_day);
    change.roundupDay = day < 0 ? null : day;
  }
  if (typeof input.roundup_hour === 'number') change.roundupHour = input.roundup_hour;
  if (typeof input.zone === 'string') {
    if (!isZone(input.zone)) {
      throw new UserError(
        'no-such-zone',
        `"${input.zone}" is not a time zone; type one such as America/New_York or Europe/London. Nothing was changed.`,
      );
    }
    change.zone = new Intl.DateTimeFormat('en', { timeZone: input.zone }).resolvedOptions().timeZone;
  }
  return change;
}

/** On Discord a mention of the channel (`<#123…>`) or its id; in the terminal there is only one. */
function readChannel(club: Club, text: string): string {
  if (club.platform === 'terminal') {
    throw new UserError('one-channel', 'The terminal is the only channel of this club. Nothing was changed.');
  }
  const id = /^(?:<#)?(\d{15,21})>?$/.exec(text.trim())?.[1];
  if (id === undefined) {
    throw new UserError(
      'no-such-channel',
      `"${text}" is not a channel; type # and choose it from the list, or paste its id. Nothing was changed.`,
    );
  }
  return id;
}

/** Members without a zone of their own live by the club's, so that their mornings move with it. */
function save(context: Context, change: Partial<Club>): Promise<Club> {
  return context.db.transaction(async (tx) => {
    if (change.zone !== undefined) await lockClub(tx, context.club.id);
    const club = await updateClub(tx, context.club.id, change);
    if (change.zone !== undefined) {
      for (const member of await membersOfClub(tx, club.id)) {
        if (member.zone === null) await replanMember(tx, member.id, context.clock);
      }
    }
    return club;
  });
}

function fieldsOf(club: Club, members: number): Field[] {
  const day = club.roundupDay === null ? undefined : WEEKDAYS[club.roundupDay];
  const hour = `${String(club.roundupHour).padStart(2, '0')}:00`;
  const channel = (id: string | null, none: string) => (id === null ? none : `<#${id}>`);
  return [
    ...(club.platform === 'terminal'
      ? []
      : [
          { name: 'Channel', value: channel(club.channelId, 'not chosen yet; type /club channel:') },
          { name: 'Log channel', value: channel(club.logChannelId, 'none') },
        ]),
    {
      name: 'Roundups',
      value:
        day === undefined
          ? 'the season only; the weekly one is off'
          : `${day} at ${hour} in the growing season, and the season at its end`,
    },
    { name: 'Time zone', value: club.zone },
    { name: 'Members', value: countWords(members, 'member') },
  ];
}
