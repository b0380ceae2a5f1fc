/** Two published saturation lines of water, as outside references for the short formulas of `air/humidity`. */

/** IAPWS-IF97 (release of 2007), region 4, equation 30 and table 34; coefficients from memory, held by table 35. */
const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

/** Saturation pressure in pascal, 273.15 to 647.096 kelvin. */
export function saturationIf97Pa(kelvin: number): number {
  const theta = kelvin + N[8] / (kelvin - N[9]);
  const a = theta ** 2 + N[0] * theta + N[1];
  const b = N[2] * theta ** 2 + N[3] * theta + N[4];
  const c = N[5] * theta ** 2 + N[6] * theta + N[7];
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4;
}

/** IAPWS SR1-86(1992), equation 1: pairs of coefficient and exponent, from memory, held by HU-06. */
const TERMS = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
] as const;
const CRITICAL_K = 647.096;
const CRITICAL_PA = 22.064e6;

/** Saturation pressure in pascal, 273.16 to 647.096 kelvin. */
export function saturationSr186Pa(kelvin: number): number {
  const tau = 1 - kelvin / CRITICAL_K;
  const sum = TERMS.reduce((total, [factor, power]) => total + factor * tau ** power, 0);
  return CRITICAL_PA * Math.exp((CRITICAL_K / kelvin) * sum);
}
