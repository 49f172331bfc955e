/**
 * Distribution function of Student's t with a whole number of degrees of freedom: the finite series of
 * Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
 */
export function studentTCdf(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees));
  const cosine = Math.cos(angle);
  const squared = cosine * cosine;
  const isOdd = degrees % 2 === 1;
  // Odd: cos θ (1 + 2/3 cos² θ + 2·4/(3·5) cos⁴ θ …); even: 1 + 1/2 cos² θ + 1·3/(2·4) cos⁴ θ …
  let term = isOdd ? cosine : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k < degrees; k += 2) {
    term *= ((k - 1) / k) * squared;
    sum += term;
  }
  const central = isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
  return 0.5 + central / 2;
}

/** The `p` quantile (0–1, both excluded) of Student's t, by halving, to 1e-9. */
export function studentTQuantile(p: number, degrees: number): number {
  let low = -1;
  let high = 1;
  while (studentTCdf(low, degrees) > p) low *= 2;
  while (studentTCdf(high, degrees) < p) high *= 2;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (studentTCdf(middle, degrees) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
