import type { Verdict as VerdictWord } from '@twelvemonth/clinical';
import type { ReactNode } from 'react';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { VerdictMark } from './VerdictMark.tsx';
import css from './Verdict.module.css';

const verdictTone = {
  ready: css['ready'],
  'not ready': css['notReady'],
  'cannot say': css['cannotSay'],
  'does not apply': css['doesNotApply'],
} as const satisfies Record<VerdictWord, string | undefined>;

/** A verdict is its word and its shape; the colour comes third. `children` replaces the bare word with a sentence that holds it. */
export function Verdict({ is, large = false, children }: { is: VerdictWord; large?: boolean; children?: ReactNode }) {
  return (
    <span className={`${css['verdict']} ${verdictTone[is]} ${large ? css['large'] : ''}`}>
      <VerdictMark is={is} />
      <span>{children === undefined ? is : <InUnitWords>{children}</InUnitWords>}</span>
    </span>
  );
}
