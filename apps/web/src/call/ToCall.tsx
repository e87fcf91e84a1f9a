import { Link } from '@tanstack/react-router';
import { buttonLook } from '../paper/button-look.ts';
import { callHash } from './call-open.ts';

/** On every screen: the telephone rings. On a person's page it is about them. */
export const ToCall = () => (
  <Link to="." search hash={callHash} resetScroll={false} className={`${buttonLook('quiet')} screenOnly`}>
    Advice call
  </Link>
);
