// The part of the library that the tests use; it comes without types.
declare module 'jstat' {
  export const jStat: {
    readonly triangular: {
      cdf(x: number, least: number, most: number, likely: number): number;
      mean(least: number, most: number, likely: number): number;
      variance(least: number, most: number, likely: number): number;
    };
    readonly beta: {
      cdf(x: number, alpha: number, beta: number): number;
    };
  };
}
