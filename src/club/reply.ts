/** What a handler answers: plain data that every channel can show. */
export interface Reply {
  readonly ok: boolean;
  readonly title: string;
  /** Paragraphs parted by an empty line; no markup. Days read well as they stand ("7 July 2026"). */
  readonly text: string;
  readonly fields: readonly Field[];
  readonly buttons: readonly Button[];
  readonly files: readonly ReplyFile[];
  readonly visibility: Visibility;
  /** The same facts for machines. */
  readonly data: Readonly<Record<string, unknown>>;
  /** A plain acknowledgement that a busy channel may show as one line: the whole answer in one sentence. */
  readonly brief?: string;
  /** The note this reply answers, so that a reply to it can be understood. */
  readonly noteId?: number;
}

/** Who sees a reply: the channel, or only the member who asked. */
export type Visibility = 'everyone' | 'only-you';

export interface Field {
  readonly name: string;
  readonly value: string;
}

export interface Button {
  readonly label: string;
  /** `verb:argument:…`, at most 90 characters; whoever presses it is checked to own what it names. */
  readonly action: string;
}

export interface ReplyFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** For a picture: what it shows, in words. */
  readonly alt?: string;
}

/** A reply from its parts, with nothing for the parts left out. */
export function reply(parts: Partial<Reply> & Pick<Reply, 'title'>): Reply {
  return {
    ok: true,
    text: '',
    fields: [],
    buttons: [],
    files: [],
    visibility: 'everyone',
    data: {},
    ...parts,
  };
}
