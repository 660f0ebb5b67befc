// What the tests use of a package that comes without types.

declare module 'jstat' {
  const jStat: {
    normal: {
      cdf(x: number, mean: number, standardDeviation: number): number;
      inv(p: number, mean: number, standardDeviation: number): number;
    };
    binomial: { pdf(k: number, n: number, p: number): number };
    beta: { cdf(x: number, alpha: number, beta: number): number };
    models: { ols(endog: number[], exog: number[][]): { coef: number[]; R2: number } };
  };
  export default jStat;
}
