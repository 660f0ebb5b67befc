/**
 * The logit of a share.
 *
 * @param share Above 0 and below 1.
 * @returns ln(share / (1 - share)).
 * @example logit(0.5) // => 0
 */
export const logit = (share: number): number => Math.log(share / (1 - share));

/**
 * The share whose logit is a value.
 *
 * @param value Any number.
 * @returns 1 / (1 + e^-value), 0 to 1.
 * @example logistic(0) // => 0.5
 */
export const logistic = (value: number): number => 1 / (1 + Math.exp(-value));
