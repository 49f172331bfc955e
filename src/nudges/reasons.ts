/** Why a nudge was not sent; kept in its row, and what may still become of it hangs on it. */
export const CANCELLED = {
  /** Its date was past when the tree was added or the season first known. Due again if the date moves ahead. */
  past: 'past when it became known',
  /** Not true any more: fruit came, a tip was logged, it is too late. Due again if that is undone. */
  settled: 'not true any more',
  /** The member has nudges turned off. */
  off: 'nudges are off',
  /** The member answered nothing for a season and was asked; silence since. */
  quiet: 'no answer for a season',
  /** The club has removed the assistant. */
  clubLeft: 'the club has left',
} as const;
