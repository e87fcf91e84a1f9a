/** What may go otherwise than planned, as the unit's settings. */

export type Chances = {
  /** Spread of the minutes a step takes (sigma of a log-normal with the planned mean), by what it needs of a nurse. */
  readonly spread: { readonly whole: number; readonly shared: number; readonly none: number; readonly dose: number };
  /** Minutes between the time told and the time of coming: mean and standard deviation. Brought people share nothing here. */
  readonly lateness: { readonly mean: number; readonly deviation: number };
  readonly doesNotCome: number;
  /** Sent home after what comes before the chair: something was found. */
  readonly putOff: number;
  readonly cannulaFails: { readonly probability: number; readonly moreMinutes: number };
  readonly reaction: { readonly probability: number; readonly moreMinutes: number };
  /** One nurse fewer for the whole day. */
  readonly nurseMissing: number;
};

/**
 * Starting values. No-show 6 %, cancelled on the day 8 %, a second cannula tried in 28 %: the figures of the worked example of
 * a day unit with 4 chairs and 2 nurses. Spreads and lateness: common practice, no source. A unit learns its own.
 */
export const usualChances: Chances = {
  spread: { whole: 0.3, shared: 0.05, none: 0, dose: 0.3 },
  lateness: { mean: -2, deviation: 8 },
  doesNotCome: 0.06,
  putOff: 0.08,
  cannulaFails: { probability: 0.28, moreMinutes: 7 },
  reaction: { probability: 0.005, moreMinutes: 30 },
  nurseMissing: 0,
};

/** Nothing goes otherwise: the day as planned. */
export const noChances: Chances = {
  spread: { whole: 0, shared: 0, none: 0, dose: 0 },
  lateness: { mean: 0, deviation: 0 },
  doesNotCome: 0,
  putOff: 0,
  cannulaFails: { probability: 0, moreMinutes: 0 },
  reaction: { probability: 0, moreMinutes: 0 },
  nurseMissing: 0,
};
