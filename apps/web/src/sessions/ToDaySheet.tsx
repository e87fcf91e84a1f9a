import { Link } from '@tanstack/react-router';
import { buttonLook } from '../paper/button-look.ts';

export const ToDaySheet = ({ session, says = 'Print the day sheet' }: { session: string; says?: string }) => (
  <Link to="/sessions/$session/sheet" params={{ session }} className={buttonLook('quiet')}>
    {says}
  </Link>
);
