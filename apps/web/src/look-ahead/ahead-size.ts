/** How much is played for the screen: shared by the page and its worker. */

/** Three years. */
export const weeksAhead = 156;
/** Weeks taken together for the picture. */
export const weeksTogether = 4;
/** Few futures first, so that something moves while a slider does; then all of them. */
export const roughRuns = 60;
export const fullRuns = 500;
