import { useConnectionLost } from '@/api/connection';
import classes from './states.module.css';

/** Said plainly while the server cannot be reached, and gone by itself once it can. */
export function ConnectionLine() {
  const lost = useConnectionLost();
  return (
    <div role="status" className={classes.line} data-lost={lost || undefined}>
      {lost &&
        'The studio’s server cannot be reached. What you see may be out of date, and nothing is changed until it is back. This page tries again by itself.'}
    </div>
  );
}
