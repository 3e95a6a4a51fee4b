// Figures along a range of one input, before they are worded or drawn.

export interface Run {
  readonly address: string;
  readonly says: string;
  readonly symbol: string;
  /** In the shown unit; NaN where there is no value, Infinity for never. */
  readonly nominal: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly unit: string;
}

export interface Sweep {
  readonly input: { readonly address: string; readonly says: string; readonly unit: string; readonly values: readonly number[] };
  /** Value of the input as it would be written. */
  readonly texts: readonly string[];
  readonly runs: readonly Run[];
}
