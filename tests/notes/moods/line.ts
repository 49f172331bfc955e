/** A note, and what is read from it: events as "Alma tipped 3", with a day that is not today, `ask kind` for a question. */
export type MoodLine = readonly [text: string, said: string];
