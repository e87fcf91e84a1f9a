/** One dose on its way: the sample it has, the place it has, what happened to it. */
import type { YearAssumptions } from './assumptions.ts';
import type { DoseToGive } from './dose-to-give.ts';

export type TurnedAway = { readonly on: number; readonly foreseeable: boolean };

/** The rules of samples that both ways of working keep to. */
export type SampleRules = { readonly validDays: number; readonly resultDays: number; readonly given: YearAssumptions };

const never = Number.POSITIVE_INFINITY;

export class CourseOfDose {
  readonly dose: DoseToGive;
  readonly #rules: SampleRules;
  /** The days on which the sample there is may be used; none yet. */
  usableFrom = never;
  usableUntil = -never;
  /** Samples taken. */
  readonly drawnOn: number[] = [];
  asked = 0;
  /** Until then asking for a sample makes no sense: a result is awaited, or a bad one is being settled. */
  awaitsUntil = -never;
  /** From when a bad result is known, while it is not settled and drawn again. */
  badKnownFrom = never;
  #settledOn = -never;
  #visits = 0;
  session: number | undefined;
  /** The session a sample was last asked for. */
  askedFor: number | undefined;
  /** Known a week before the visit, or at booking if that was later, that it would come to nothing. */
  wasKnown = false;
  givenOn: number | undefined;
  readonly turnedAway: TurnedAway[] = [];
  readonly didNotCome: number[] = [];

  constructor(dose: DoseToGive, rules: SampleRules) {
    this.dose = dose;
    this.#rules = rules;
  }

  /** Asked for on a day: never taken, out of limits, or good. */
  draw(on: number): void {
    const { validDays, resultDays, given } = this.#rules;
    const time = this.asked;
    this.asked += 1;
    this.askedFor = this.session;
    this.awaitsUntil = on + resultDays;
    if (this.dose.chance('misses', time) < given.missesDraw) return;
    this.drawnOn.push(on);
    this.badKnownFrom = never;
    this.usableFrom = on + resultDays;
    this.usableUntil = on + validDays;
    if (this.dose.chance('bad', time) >= given.badResult) return;
    this.badKnownFrom = this.usableFrom;
    this.awaitsUntil = this.usableFrom + given.settlesDays;
    this.#settledOn = this.awaitsUntil + resultDays;
    this.usableUntil = -never;
  }

  /** The first day on which nothing but bloods is in the way. */
  get unheldFrom(): number {
    return Math.max(this.dose.due, this.dose.loadedOn, this.dose.teethSeenOn, this.#settledOn);
  }

  hasBloodsOn = (on: number): boolean => this.usableFrom <= on && on <= this.usableUntil;
  isReadyOn = (on: number): boolean => this.unheldFrom <= on && this.hasBloodsOn(on);

  /** The visit, on its day. */
  comes(on: number): void {
    const { given } = this.#rules;
    const time = this.#visits;
    this.#visits += 1;
    this.session = undefined;
    if (this.dose.chance('comes', time) < given.doesNotCome) this.didNotCome.push(on);
    else if (!this.isReadyOn(on)) this.turnedAway.push({ on, foreseeable: this.wasKnown });
    else if (this.dose.chance('unwell', time) < given.unwell) {
      this.turnedAway.push({ on, foreseeable: false });
      this.#settledOn = on + given.recoversDays;
      // Ill since the sample: it no longer counts.
      this.usableUntil = on;
    } else this.givenOn = on;
  }

  isSeenTo = (share: number): boolean => this.dose.chance('seenTo', this.#visits) < share;
}
