/** Which files a rule is about. */

const code = /\.(?:ts|tsx|mjs|js)$/;

export const isCode = (path: string): boolean => code.test(path);

/** The sources of the packages and the apps, without their tests. */
export const isProductCode = (path: string): boolean => /^(?:packages|apps)\/[^/]+\/src\//.test(path) && isCode(path);

/** The packages that have no clock, no randomness, no files and no process. */
export const isPureCode = (path: string): boolean => isProductCode(path) && /^packages\/(?!store\/)/.test(path);

export const isTest = (path: string): boolean => /\.test\.tsx?$/.test(path);

/** The rules themselves quote what they forbid. */
export const isRuleOfStyle = (path: string): boolean => path.startsWith('tools/tidy/rules/');

export const isInOwnWords = (path: string): boolean => path.endsWith('.md');
