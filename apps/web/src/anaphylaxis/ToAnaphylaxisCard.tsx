import { Link } from '@tanstack/react-router';
import { buttonLook } from '../paper/button-look.ts';
import css from './AnaphylaxisCard.module.css';
import { cardHash } from './card-open.ts';

/** Always in the same corner, over every screen and the sign-in, however far one has scrolled. */
export const ToAnaphylaxisCard = () => (
  <aside aria-label="Emergency" className={`${css['corner']} screenOnly`}>
    <Link to="." search hash={cardHash} resetScroll={false} className={`${buttonLook()} ${css['opens']}`}>
      Anaphylaxis card
    </Link>
  </aside>
);
