import { Go } from '@/components/states/go';
import { getRouteApi } from '@tanstack/react-router';
import { SessionView } from './session-view';
import classes from './teach.module.css';

const route = getRouteApi('/inside/teach/sessions/$sessionId');

export function SessionPage() {
  const { sessionId } = route.useParams();
  return (
    <>
      <Go to="/teach/week" className={classes.screen} display="inline-block" mb="sm">
        All my sessions
      </Go>
      <SessionView sessionId={Number(sessionId)} />
    </>
  );
}
