/** What a decision needs beside the ledger: the unit's protocol versions and calendar. Today is always an argument. */
import type { UnitCalendar } from '../calendar/unit-calendar.ts';
import type { ProtocolTimeline } from '../protocol/protocol.ts';

export type DecisionContext = { readonly protocols: ProtocolTimeline; readonly calendar: UnitCalendar };

/** Longest look ahead for a window, in days: three years and a margin. Printed where it bites. */
export const HORIZON_DAYS = 1200;

/** How long a prescription is taken to last where one is assumed, to tell a window "if settled" (docs/readiness.md A4). */
export const ASSUMED_PRESCRIPTION_MONTHS = 12;
