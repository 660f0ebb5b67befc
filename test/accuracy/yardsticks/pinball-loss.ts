/**
 * The loss of a quantile: small where what comes lies as often below it as it should.
 *
 * @param quantile What was said, in any unit.
 * @param share    Of what comes, so much should lie below it, 0 to 1.
 * @param observed What came, in the same unit.
 * @returns The loss, in the same unit; the less the better.
 * @throws never.
 *
 * Formula: τ (y - q) where y >= q, else (1 - τ) (q - y)
 * Source: Koenker, Bassett (1978). Regression quantiles. Econometrica 46: 33-50.
 * @example pinballLoss(12, 0.9, 15) // => 2.7
 */
export const pinballLoss = (quantile: number, share: number, observed: number): number =>
  observed >= quantile ? share * (observed - quantile) : (1 - share) * (quantile - observed);
