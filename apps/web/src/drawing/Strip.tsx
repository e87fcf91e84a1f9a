import type { Drawing } from '@twelvemonth/charts';
import { memo } from 'react';
import css from './Picture.module.css';

/** A small picture in a list. Its sentence stands beside it in words already, or is said here for those who cannot see it. */
export const Strip = memo(function Strip({ svg, sentence }: { svg: Drawing['svg']; sentence?: string | undefined }) {
  return (
    <>
      <div className={css['strip']} dangerouslySetInnerHTML={{ __html: svg }} />
      {sentence !== undefined && <span className="unseen">{sentence}</span>}
    </>
  );
});
