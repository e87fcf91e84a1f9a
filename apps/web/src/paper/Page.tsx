import { type ReactNode, useEffect } from 'react';
import { deviceTimeInWords } from '../clock.ts';
import css from './Page.module.css';
import { callScreen } from './screen-name.ts';
import { usePrinting } from './use-printing.ts';

type Props = {
  readonly title: string;
  /** The title without the person's name, for the browser's tab and history. */
  readonly tab?: string;
  /** Quiet words under the title. */
  readonly sub?: ReactNode;
  readonly acts?: ReactNode;
  readonly children: ReactNode;
};

/** One screen: its name, what it is about, its acts, then the sheet. On paper it says when it was printed. */
export function Page({ title, tab = title, sub, acts, children }: Props) {
  const printing = usePrinting();
  useEffect(() => {
    callScreen(title, tab);
  }, [title, tab]);
  return (
    <>
      <header className={css['head']}>
        <div className={css['words']}>
          <h1 tabIndex={-1} id="title">
            {title}
          </h1>
          {sub !== undefined && <div className={css['sub']}>{sub}</div>}
        </div>
        {acts !== undefined && <div className={`${css['acts']} screenOnly`}>{acts}</div>}
      </header>
      {printing && (
        <p className="small">
          printed {deviceTimeInWords()} by this machine's clock; the screen may have moved on since
        </p>
      )}
      {children}
    </>
  );
}
