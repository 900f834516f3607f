import { Button, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { moveQueries } from '@/api/moves';
import type { Move } from '@/api/types';
import { MoveSteps, useMoving } from '@/components/moves/move-steps';
import { Refused } from '@/components/states/asked';
import { MoveTape } from '@/components/tape/move-tape';
import { longDay } from '@/components/time/days';
import classes from './my.module.css';

/** Where her bookings may go that fall behind her next stage; nothing at all when none do. */
export function MyMoves({ clientId }: { clientId: number }) {
  const { data: moves = [] } = useQuery(moveQueries.list());
  return moves
    .filter((move) => move.clientId === clientId)
    .map((move) => <MyMove key={move.id} move={move} />);
}

function MyMove({ move }: { move: Move }) {
  const accept = useMoving((moved) => `${moved} moved.`);
  const movable = move.steps.filter(({ to }) => to != null).length;
  return (
    <section className={classes.ask} aria-labelledby={`move-${move.id}`}>
      <Title order={2} id={`move-${move.id}`}>
        {move.crossesToName} from {longDay(move.crossesOn)}
      </Title>
      <Text mb="sm">
        From then on some of what you have booked suits you no longer. This would take its place:
      </Text>
      <MoveTape move={move} />
      <MoveSteps move={move} />
      <Refused error={accept.error} />
      <Button mt="md" loading={accept.isPending} onClick={() => accept.run(move)}>
        {movable === 1 ? 'Move this booking' : `Move these ${movable}`}
      </Button>
    </section>
  );
}
