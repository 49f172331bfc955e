/**
 * The one string that stands for all of this spelling. Two such strings are compared by address; strings cut from a
 * message are compared letter by letter, and the grammar compares each word some hundred times.
 */
export function intern(text: string): string {
  // The names of properties are the strings an engine keeps once.
  return Object.keys({ [text]: 0 })[0] ?? text;
}
