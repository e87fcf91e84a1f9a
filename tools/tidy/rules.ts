/** Our style, one rule a file. */
import type { Rule } from './rule.ts';
import { clockAndChance } from './rules/clock-and-chance.ts';
import { fileLength } from './rules/file-length.ts';
import { hazardsAreShown } from './rules/hazards-are-shown.ts';
import { importArrows } from './rules/import-arrows.ts';
import { linksLeadSomewhere } from './rules/links-lead-somewhere.ts';
import { noDrawers } from './rules/no-drawers.ts';
import { noMachinePaths } from './rules/no-machine-paths.ts';
import { noRegistryHosts } from './rules/no-registry-hosts.ts';
import { noSafeVerdict } from './rules/no-safe-verdict.ts';
import { noThresholdLiterals } from './rules/no-threshold-literals.ts';
import { nothingPutOff } from './rules/nothing-put-off.ts';
import { purePackages } from './rules/pure-packages.ts';
import { retiredWords } from './rules/retired-words.ts';
import { sqlInStore } from './rules/sql-in-store.ts';
import { testsRun } from './rules/tests-run.ts';

export const rules: readonly Rule[] = [
  importArrows,
  purePackages,
  clockAndChance,
  sqlInStore,
  noThresholdLiterals,
  noSafeVerdict,
  retiredWords,
  noDrawers,
  fileLength,
  testsRun,
  nothingPutOff,
  linksLeadSomewhere,
  hazardsAreShown,
  noMachinePaths,
  noRegistryHosts,
];
