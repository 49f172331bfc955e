/**
 * The `p` quantile (0–1) of values in ascending order by linear interpolation between order statistics at
 * (n−1)p: Hyndman & Fan 1996 type 7, the definition of WMO-No. 1203 for quintiles. Throws RangeError for an
 * empty list.
 */
export function quantile(ascending: readonly number[], p: number): number {
  const position = (ascending.length - 1) * p;
  const below = Math.floor(position);
  const low = ascending[below];
  const high = ascending[Math.ceil(position)];
  if (low === undefined || high === undefined) throw new RangeError('a quantile of nothing');
  return low + (position - below) * (high - low);
}
