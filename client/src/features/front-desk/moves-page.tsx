import { Title, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { moveQueries } from '@/api/moves';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { SuggestedMove } from './suggested-move';
import classes from './desk.module.css';

export function MovesPage() {
  const moves = useQuery(moveQueries.list());
  return (
    <>
      <Title>Suggested moves</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        These clients enter a new stage, and bookings of theirs no longer suit from that day.
        Accepting moves all of one client’s bookings together, or none.
      </Text>
      <Asked query={moves} waiting={<Lines count={3} height={150} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No moves to look at">
              They are worked out each night for the weeks ahead.
            </Empty>
          ) : (
            <ul className={classes.list}>
              {list.map((move) => (
                <SuggestedMove key={move.id} move={move} />
              ))}
            </ul>
          )
        }
      </Asked>
    </>
  );
}
