import { Fragment, type ReactNode, useEffect, useRef, useState } from 'react';
import { steadyMilliseconds } from '../clock.ts';
import { Note } from '../paper/Note.tsx';

const lookEveryMilliseconds = 5_000;

/** A form that was begun and then left alone for so long is begun anew, empty: a check restarts, it is not gone on with. */
export function BegunAnew({ minutes, children }: { minutes: number; children: ReactNode }) {
  const [times, setTimes] = useState(0);
  const touched = useRef<number>(undefined);
  useEffect(() => {
    const timer = setInterval(() => {
      if (touched.current === undefined || steadyMilliseconds() - touched.current <= minutes * 60_000) return;
      touched.current = undefined;
      setTimes((before) => before + 1);
    }, lookEveryMilliseconds);
    return () => clearInterval(timer);
  }, [minutes]);
  return (
    <div onInput={() => (touched.current = steadyMilliseconds())}>
      {times > 0 && (
        <Note tone="caution" speaks="politely">
          This was begun and left for more than {minutes} minutes. It is empty again: begin with who it is.
        </Note>
      )}
      <Fragment key={times}>{children}</Fragment>
    </div>
  );
}
