/** What of jStat the tests use; it brings no types of its own. */
declare module "jstat" {
  const jstat: {
    readonly normal: { readonly inv: (chance: number, mean: number, deviation: number) => number };
    readonly chisquare: { readonly cdf: (value: number, freedom: number) => number };
    readonly binomial: { readonly cdf: (value: number, trials: number, chance: number) => number };
  };
  export default jstat;
}
