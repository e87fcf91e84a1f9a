/** What has happened of a visit by now, whoever reads it from the notes. Times are HH:MM on the unit's wall. */
export type SoFar = {
  /** As the day's visits are called. */
  readonly name: string;
  readonly state: 'expected' | 'here' | 'gone' | 'put off';
  readonly arrived?: string | undefined;
  /** The chair that was written down at the arrival. */
  readonly chair?: number | undefined;
  /** Steps of the chain that are done, by name. */
  readonly done: readonly string[];
  /** A step that is under way, and when it ends at best where that is known. */
  readonly runs?:
    | {
        readonly step: string;
        readonly since: string;
        readonly until?: string | undefined;
        readonly paused: boolean;
      }
    | undefined;
  readonly prepared?: string | undefined;
  readonly checked?: string | undefined;
};

/** What is known of the rest of the day and stands in no entry. */
export type DayChanges = {
  /** How many there are from now on; as the day has them where nothing is said. */
  readonly nurses?: number | undefined;
  readonly chairs?: number | undefined;
  readonly preparers?: number | undefined;
  readonly checkers?: number | undefined;
  /** By name: who is late and comes at HH:MM. */
  readonly comes: ReadonlyMap<string, string>;
  /** By name: minutes an infusion runs longer than was planned. */
  readonly runsLonger: ReadonlyMap<string, number>;
};

export const noDayChanges: DayChanges = { comes: new Map(), runsLonger: new Map() };
