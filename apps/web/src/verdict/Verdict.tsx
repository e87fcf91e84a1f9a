import type { Verdict as VerdictWord } from '@twelvemonth/clinical';
import { Children, type ReactNode } from 'react';
import { useUnitWords } from '../words/american.ts';
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
  const words = useUnitWords();
  const inUnitWords = (child: ReactNode): ReactNode => (typeof child === 'string' ? words(child) : child);
  return (
    <span className={`${css['verdict']} ${verdictTone[is]} ${large ? css['large'] : ''}`}>
      <VerdictMark is={is} />
      <span>{children === undefined ? is : Children.map(children, inUnitWords)}</span>
    </span>
  );
}
